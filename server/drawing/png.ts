/**
 * Prints a drawing as PNG, from its SVG, with the bundled open font and no other, so that the picture is the same on
 * every machine. The only file that knows the renderer.
 */
import { say } from '../../grammar/say';
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { bundledFont, nearest } from './bundled';

export interface PngOptions {
  /** Width of the picture in pixels; wins over `dpi`. */
  readonly width?: number;
  /** Pixels an inch of the pattern. */
  readonly dpi?: number;
  /** Pixels that the picture may have at most. */
  readonly mostPixels?: number;
  /** The font's file, where it is not found beside the program. */
  readonly fontFile?: string;
  /** Use the renderer in WebAssembly even where a native one fits. */
  readonly portable?: boolean;
}

export interface PngResult {
  readonly value: Uint8Array | undefined;
  /** Sentences for the person who asked for the picture. */
  readonly problems: readonly string[];
}

export const DEFAULT_DPI = 96;

/**
 * Pixels of the largest picture. Four bytes each are held twice while rendering: 64 million take half a gigabyte,
 * about what an office computer can spare; a cloak of 3 m by 1.6 m still gets 93 dpi. Larger drawings are printed
 * coarser and said so, never refused.
 */
export const MOST_PIXELS = 64_000_000;

const MM_PER_INCH = 25.4;
const FAMILY = 'Noto Sans';
/** Where the renderer lies: beside the bundled program, or in the packages of the project. */
const WASM_PLACES = ['resvg.wasm', 'node_modules/@resvg/resvg-wasm/index_bg.wasm'];

/** Renders an SVG document of ours. Errors of the renderer come back as problems. */
export async function toPng(svg: string, options: PngOptions = {}): Promise<PngResult> {
  const problems: string[] = [];
  const fontFile = options.fontFile ?? bundledFont();
  if (!fontFile) problems.push(say`The font for the picture was not found, so its words are missing.`);
  try {
    const width = widthFor(sizeMm(svg), options, problems);
    const render = await (options.portable ? portableRenderer() : renderer());
    return { value: render(svg, width, fontFile), problems };
  } catch (error) {
    problems.push(
      say`The picture could not be made: ${error instanceof Error ? error.message : String(error)}`,
    );
    return { value: undefined, problems };
  }
}

type Render = (svg: string, width: number, fontFile: string | undefined) => Uint8Array;

/** The native renderer; its twin in WebAssembly, with the same pixels, where no native one fits the machine. */
async function renderer(): Promise<Render> {
  const native = await import('@resvg/resvg-js').catch(() => undefined);
  if (!native) return portableRenderer();
  return (svg, width, fontFile) => {
    const font = { loadSystemFonts: false, fontFiles: fontFile ? [fontFile] : [], defaultFontFamily: FAMILY };
    return new native.Resvg(svg, { ...settings(width), font }).render().asPng();
  };
}

let started: Promise<void> | undefined;

async function portableRenderer(): Promise<Render> {
  const wasm = await import('@resvg/resvg-wasm');
  await (started ??= wasm.initWasm(await readFile(nearest(WASM_PLACES) ?? WASM_PLACES[0]!)));
  return (svg, width, fontFile) => {
    const font = {
      loadSystemFonts: false,
      fontBuffers: fontFile ? [readFileSync(fontFile)] : [],
      defaultFontFamily: FAMILY,
    };
    return new wasm.Resvg(svg, { ...settings(width), font }).render().asPng();
  };
}

function settings(width: number) {
  return { fitTo: { mode: 'width', value: width }, background: '#fff' } as const;
}

interface SizeMm {
  readonly width: number;
  readonly height: number;
}

function sizeMm(svg: string): SizeMm {
  const found = /<svg [^>]*?width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg);
  if (!found) throw new Error(say`the drawing has no size in millimetres.`);
  return { width: Number(found[1]), height: Number(found[2]) };
}

/** Pixels across that were asked for, or as many as the largest picture allows. */
function widthFor(size: SizeMm, options: PngOptions, problems: string[]): number {
  const dpi = positive(options.dpi, DEFAULT_DPI);
  const asked = Math.max(1, Math.round(positive(options.width, (size.width / MM_PER_INCH) * dpi)));
  const most = Math.max(
    1,
    Math.floor(Math.sqrt((positive(options.mostPixels, MOST_PIXELS) * size.width) / size.height)),
  );
  if (asked <= most) return asked;
  const reached = Math.round((most / size.width) * MM_PER_INCH);
  problems.push(
    say`The picture would be too large, so it was made ${most} pixels wide (${reached} dpi) instead of ${asked}.`,
  );
  return most;
}

function positive(value: number | undefined, otherwise: number): number {
  return value !== undefined && Number.isFinite(value) && value > 0 ? value : otherwise;
}
