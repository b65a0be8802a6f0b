/**
 * Prints a drawing as PDF in full size: cut into papers that are taped together, or whole on one. The drawing is written
 * once and shown on every paper through its frame. The only file that knows the PDF library.
 */
import { PDFDocument, PDFName, type PDFPage, type PDFRef } from '@cantoo/pdf-lib';
import * as fontkit from 'fontkit';
import type { Drawing } from '../model';
import { readBundledFont } from '../bundled';
import { arranged } from './arrange';
import { drawingContent, number, type Font } from './content';
import type { Paper } from './papers';
import { firstContent, SQUARE_MM, squareContent, tileContent } from './sheet-content';
import { MARGIN_MM, tilingFor, type Tiling } from './tiles';

export interface PdfOptions {
  /** Undefined: one paper as large as the drawing, for a plotter. */
  readonly paper?: Paper;
  /** Keep the pieces where the drawing has them. */
  readonly asLaid?: boolean;
}

export interface PdfResult {
  readonly value: Uint8Array;
  readonly sheets: number;
  readonly tiling?: Tiling;
}

const POINTS_PER_MM = 72 / 25.4;

/** The same drawing gives the same bytes: no date, no number drawn by lot. */
export async function toPdf(
  drawing: Drawing,
  { paper, asLaid = false }: PdfOptions = {},
): Promise<PdfResult> {
  const printer = await Printer.start(drawing);
  if (paper === undefined) {
    printer.whole(drawing);
    return { value: await printer.end(), sheets: 1 };
  }
  const { drawing: laid, tiling } = asLaid
    ? { drawing, tiling: tilingFor(drawing, paper) }
    : arranged(drawing, paper);
  printer.tiles(laid, tiling);
  return { value: await printer.end(), sheets: tiling.tiles.length + 1, tiling };
}

/** One document in the making. */
class Printer {
  private constructor(
    private readonly document: PDFDocument,
    private readonly font: Font,
    private readonly fontRef: PDFRef,
  ) {}

  static async start({ title, body }: Drawing): Promise<Printer> {
    const document = await PDFDocument.create({ updateMetadata: false });
    document.setTitle([title || 'Pattern', body && `for ${body}`].filter(Boolean).join(', '));
    document.setProducer('Draftwright');
    document.registerFontkit(fontkit);
    const bytes = readBundledFont();
    if (bytes === undefined) throw new Error('the font for the words was not found.');
    const font = await document.embedFont(bytes, { subset: true });
    const glyphs = (text: string): string => font.encodeText(text).toString();
    const widthOf = (text: string): number => font.widthOfTextAtSize(text, 1);
    return new Printer(document, { glyphs, widthOf }, font.ref);
  }

  /** One page as large as the drawing, the test square below it. */
  whole(drawing: Drawing): void {
    const { left, top, right, bottom } = drawing.frame;
    const below = bottom - top + 2 * MARGIN_MM;
    const wide = Math.max(right - left, SQUARE_MM) + 2 * MARGIN_MM;
    const high = below + SQUARE_MM + MARGIN_MM;
    const page = this.page(wide, high);
    const shift = `1 0 0 1 ${number(MARGIN_MM - left)} ${number(MARGIN_MM - top)} cm`;
    const square = squareContent(MARGIN_MM, below, this.font);
    this.show(page, high, `q ${shift} /Drawing Do Q\n${square}`, this.form(drawing));
  }

  tiles(drawing: Drawing, tiling: Tiling): void {
    const { width, height } = tiling.paper;
    const form = this.form(drawing);
    this.show(this.page(width, height), height, firstContent(drawing, tiling, this.font));
    for (const tile of tiling.tiles) {
      const { left, top, right, bottom } = tile.frame;
      const clip = `${[MARGIN_MM, MARGIN_MM, right - left, bottom - top].map(number).join(' ')} re W n`;
      const shift = `1 0 0 1 ${number(MARGIN_MM - left)} ${number(MARGIN_MM - top)} cm`;
      const own = tileContent(drawing, tiling, tile, this.font);
      this.show(this.page(width, height), height, `q ${clip} ${shift} /Drawing Do Q\n${own}`, form);
    }
  }

  async end(): Promise<Uint8Array> {
    return this.document.save();
  }

  private page(wide: number, high: number): PDFPage {
    return this.document.addPage([wide * POINTS_PER_MM, high * POINTS_PER_MM]);
  }

  /** The drawing as an object of its own, in millimetres. */
  private form(drawing: Drawing): PDFRef {
    const { left, top, right, bottom } = drawing.frame;
    const room = 50;
    const { context } = this.document;
    return context.register(
      context.flateStream(drawingContent(drawing, this.font), {
        Type: 'XObject',
        Subtype: 'Form',
        BBox: [left - room, top - room, right + room, bottom + room],
        Resources: { Font: { F: this.fontRef } },
      }),
    );
  }

  /** Content in millimetres from the upper left corner of a page. */
  private show(page: PDFPage, high: number, content: string, form?: PDFRef): void {
    const { context } = this.document;
    const k = POINTS_PER_MM;
    const scaled = `q ${k} 0 0 ${-k} 0 ${high * k} cm\n${content}\nQ`;
    const { node } = page;
    node.addContentStream(context.register(context.flateStream(scaled)));
    node.setFontDictionary(PDFName.of('F'), this.fontRef);
    if (form !== undefined) node.setXObject(PDFName.of('Drawing'), form);
  }
}
