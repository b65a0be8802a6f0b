/**
 * A PDF in the making: pages in millimetres with y down, and drawings that are written once and shown on many pages.
 * The same content gives the same bytes: no date, no number drawn by lot.
 */
import { say } from '../../../grammar/say';
import { PDFDocument, PDFHexString, PDFName, type PDFPage, type PDFRef } from '@cantoo/pdf-lib';
import type { Frame } from '../model';
import { layerName, number, type Font } from './content';
import { fontBytes, metrics, openedFont, printable } from './font';

const POINTS_PER_MM = 72 / 25.4;
/** Beyond the frame of a drawing, mm: arrow heads and the halves of lines. */
const ROOM_MM = 50;

/** A drawing that is shown by its name. */
export interface Form {
  readonly name: string;
  readonly ref: PDFRef;
}

export class PaperDocument {
  private forms = 0;
  private layers: readonly PDFRef[] = [];

  private constructor(
    private readonly document: PDFDocument,
    readonly font: Font,
    private readonly fontRef: PDFRef,
  ) {}

  static async start(title: string): Promise<PaperDocument> {
    const document = await PDFDocument.create({ updateMetadata: false });
    document.setTitle(title);
    document.setProducer('Draftwright');
    document.registerFontkit({ create: openedFont } as unknown as Parameters<
      typeof document.registerFontkit
    >[0]);
    const font = await document.embedFont(fontBytes(), { subset: true });
    const glyphs = (text: string): string => font.encodeText(printable(text)).toString();
    const { widthOf } = metrics();
    return new PaperDocument(document, { glyphs, widthOf: (text) => widthOf(printable(text)) }, font.ref);
  }

  /** A layer for each size, which a reader can show and hide (ISO 32000-1, 8.11: optional content). All begin shown. */
  startLayers(names: readonly string[]): void {
    if (names.length === 0) return;
    const { context } = this.document;
    this.layers = names.map((name) => {
      const told = PDFHexString.fromText(say`size ${printable(name)}`);
      return context.register(context.obj({ Type: 'OCG', Name: told }));
    });
    const order = [...this.layers];
    const shown = { Name: PDFHexString.fromText(say`Sizes`), BaseState: 'ON', Order: order };
    this.document.catalog.set(PDFName.of('OCProperties'), context.obj({ OCGs: order, D: shown }));
    this.document.catalog.set(PDFName.of('PageMode'), PDFName.of('UseOC'));
  }

  /** Content in millimetres of its own, written once. */
  form(content: string, { left, top, right, bottom }: Frame): Form {
    const { context } = this.document;
    const ref = context.register(
      context.flateStream(content, {
        Type: 'XObject',
        Subtype: 'Form',
        BBox: [left - ROOM_MM, top - ROOM_MM, right + ROOM_MM, bottom + ROOM_MM],
        Resources: {
          Font: { F: this.fontRef },
          Properties: Object.fromEntries(this.layers.map((ref, i) => [layerName(i), ref])),
        },
      }),
    );
    return { name: `Drawing${++this.forms}`, ref };
  }

  /** A page with content in millimetres from its upper left corner. */
  page(wide: number, high: number, content: string, forms: readonly Form[] = []): void {
    const k = POINTS_PER_MM;
    const page = this.document.addPage([wide * k, high * k]);
    this.show(page, `q ${k} 0 0 ${-k} 0 ${number(high * k)} cm\n${content}\nQ`, forms);
  }

  private show({ node }: PDFPage, content: string, forms: readonly Form[]): void {
    const { context } = this.document;
    node.addContentStream(context.register(context.flateStream(content)));
    node.setFontDictionary(PDFName.of('F'), this.fontRef);
    for (const { name, ref } of forms) node.setXObject(PDFName.of(name), ref);
  }

  end(): Promise<Uint8Array> {
    return this.document.save();
  }
}
