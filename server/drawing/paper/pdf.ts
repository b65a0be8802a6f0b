/**
 * Prints a drawing as PDF in full size: cut into papers that are taped together, on a roll, or whole on one sheet. The
 * drawing is written once and shown on every paper through its frame.
 */
import { say } from '../../../grammar/say';
import type { Drawing } from '../model';
import { titleOf } from '../told';
import { arranged, EDGE_MM, edged, onRoll, onSheets, type Turn } from './arrange';
import { drawingContent, number } from './content';
import { PaperDocument, type Form } from './document';
import { firstContent } from './first-sheet';
import { quarterTurned } from './mapped';
import { settled, type Off } from './on-sheets';
import { turned, type Paper, type Roll } from './papers';
import { headingContent, headingHigh, headingWide, tileContent, type Told } from './sheet-content';
import { MARGIN_MM, tilingFor, type Tiling } from './tiles';

export interface PdfOptions extends Told {
  /** Undefined: one sheet as large as the drawing, for a plotter. */
  readonly paper?: Paper | Roll;
  /** Keep the pieces where the drawing has them. */
  readonly asLaid?: boolean;
  /** These sheets alone, by their names on the map. */
  readonly only?: readonly string[];
  /** How a piece is drawn that lies a quarter turned. */
  readonly turn?: Turn;
  /** How a piece is lettered off the edges of its sheets. */
  readonly off?: Off;
  /** Called before each page; what it throws ends the printing. */
  readonly tick?: (page: number, of: number) => Promise<void> | void;
}

export interface PdfResult {
  readonly value: Uint8Array;
  readonly sheets: number;
  readonly tiling?: Tiling;
  /** The drawing as it was laid on the papers; of a roll its first length. */
  readonly drawing: Drawing;
  /** Pieces that fit on no length of the roll, and were left out. */
  readonly tooLarge: readonly string[];
}

/** The same drawing gives the same bytes. */
export async function toPdf(drawing: Drawing, options: PdfOptions = {}): Promise<PdfResult> {
  const document = await PaperDocument.start(titleOf(drawing));
  document.startLayers(drawing.sizes ?? []);
  const printer = new Printer(document, options);
  const { paper, turn = quarterTurned } = options;
  if (paper === undefined) return printer.lengths([drawing]);
  if ('roll' in paper) return printer.lengths(onRoll(drawing, paper, turn), drawing, paper);
  const apart = options.asLaid === true ? undefined : printer.sheetsOf(drawing, paper, turn);
  if (apart !== undefined) return printer.lengths(apart.sheets, drawing, apart.paper);
  const asLaid = (): { drawing: Drawing; tiling: Tiling } => {
    const laid = edged(drawing);
    return { drawing: laid, tiling: tilingFor(laid, paper) };
  };
  const { drawing: laid, tiling } = options.asLaid === true ? asLaid() : arranged(drawing, paper, turn);
  const ready = settled(laid, tiling, options.off);
  return printer.tiles(ready.drawing, ready.tiling);
}

/** Between two pieces of a small print, mm: nothing is cut there. */
const SMALL_GAP_MM = 5;

/** One document in the making. */
class Printer {
  constructor(
    private readonly document: PaperDocument,
    private readonly options: PdfOptions,
  ) {}

  /**
   * A small print wants no taping: sheets with whole pieces on each, upright or on their side; undefined in full size, and
   * where a piece fits on none.
   */
  sheetsOf(
    drawing: Drawing,
    paper: Paper,
    turn: Turn,
  ): { paper: Paper; sheets: readonly Drawing[] } | undefined {
    if ((this.options.scale ?? 1) === 1) return undefined;
    const ways = [paper, turned(paper)].map((one) => {
      const wide = one.width - 2 * MARGIN_MM;
      const below = headingHigh(drawing, this.options, wide, this.document.font) + SMALL_GAP_MM;
      const room = { wide: wide - 2 * EDGE_MM, high: one.height - 2 * MARGIN_MM - 2 * EDGE_MM - below };
      return { paper: one, sheets: onSheets(drawing, room, turn, SMALL_GAP_MM) };
    });
    const whole = ways.filter(
      ({ sheets }) => sheets.flatMap(({ pieces }) => pieces).length === drawing.pieces.length,
    );
    return whole.sort((a, b) => a.sheets.length - b.sheets.length)[0];
  }

  /** Sheets as large as what lies on them, or of one size; the test square below it. */
  async lengths(lengths: readonly Drawing[], all = lengths[0]!, paper?: Paper | Roll): Promise<PdfResult> {
    for (const [i, drawing] of lengths.entries()) {
      await this.options.tick?.(i + 1, lengths.length);
      this.length(drawing, paper, lengths.length > 1 ? say`sheet ${i + 1} of ${lengths.length}` : '');
    }
    const laid = new Set(lengths.flatMap(({ pieces }) => pieces.map(({ name }) => name)));
    const tooLarge = all.pieces.map(({ name }) => name).filter((name) => !laid.has(name));
    const value = await this.document.end();
    return { value, sheets: lengths.length, drawing: lengths[0] ?? all, tooLarge };
  }

  private length(drawing: Drawing, paper: Paper | Roll | undefined, which: string): void {
    const { left, top, bottom } = drawing.frame;
    const { font } = this.document;
    const below = bottom - top + 2 * MARGIN_MM;
    const wide = paper === undefined ? headingWide(drawing, this.options) : paper.width - 2 * MARGIN_MM;
    const heading = headingHigh(drawing, this.options, wide, font);
    const fixed = paper !== undefined && 'height' in paper;
    const high = fixed ? paper.height : below + heading + MARGIN_MM;
    const y = fixed ? high - MARGIN_MM - heading : below;
    const form = this.form(drawing);
    const shift = `1 0 0 1 ${number(MARGIN_MM - left)} ${number(MARGIN_MM - top)} cm`;
    const words = headingContent(drawing, this.options, { x: MARGIN_MM, y, wide, which }, font);
    this.document.page(wide + 2 * MARGIN_MM, high, `q ${shift} /${form.name} Do Q\n${words}`, [form]);
  }

  async tiles(drawing: Drawing, tiling: Tiling): Promise<PdfResult> {
    const { only } = this.options;
    const { width, height } = tiling.paper;
    const { font } = this.document;
    const wanted = tiling.tiles.filter(({ name }) => only === undefined || only.includes(name));
    const form = this.form(drawing);
    const first = only === undefined;
    if (first) this.document.page(width, height, firstContent(drawing, tiling, this.options, font));
    for (const [i, tile] of wanted.entries()) {
      await this.options.tick?.(i + 1, wanted.length);
      const { left, top, right, bottom } = tile.frame;
      const clip = `${[MARGIN_MM, MARGIN_MM, right - left, bottom - top].map(number).join(' ')} re W n`;
      const shift = `1 0 0 1 ${number(MARGIN_MM - left)} ${number(MARGIN_MM - top)} cm`;
      const own = tileContent(drawing, tiling, tile, this.options, font);
      const content = `q ${clip} ${shift} /${form.name} Do Q\n${own}`;
      this.document.page(width, height, content, [form]);
    }
    const value = await this.document.end();
    return { value, sheets: wanted.length + (first ? 1 : 0), tiling, drawing, tooLarge: [] };
  }

  private form(drawing: Drawing): Form {
    return this.document.form(drawingContent(drawing, this.document.font), drawing.frame);
  }
}
