/** The stage: one node a piece, laid on the sheet, replaced only when its piece changed. */
import { say } from '../../../grammar/say';
import type { Frame, PieceDrawing, Source, Spot } from '../../../server/drawing/model';
import type { Sheet } from '../protocol';
import type { Camera } from './camera';
import { drawPiece, setZoom } from './draw';
import { svg } from './dom';
import { letter } from './words';
import type { Outcome } from './sheet';

type Applied = Extract<Outcome, { kind: 'applied' }>;

/** Distance of the hatching's lines on the screen. */
const HATCH_PX = 7;

export class Stage {
  readonly hatch = svg(
    'pattern',
    { id: 'hatch', width: HATCH_PX, height: HATCH_PX, patternUnits: 'userSpaceOnUse' },
    svg('path', { class: 'hatching', d: `M0 0V${HATCH_PX}` }),
  );
  readonly sheet = svg('g', { class: 'sheet' });
  /** What is laid out instead of the sheet, and what is laid over either: in the paper's millimetres. */
  readonly bench = svg('g', { class: 'bench' });
  readonly over = svg('g', { class: 'over' });
  readonly element = svg(
    'svg',
    {
      class: 'stage',
      role: 'application',
      'aria-roledescription': say`drawing`,
      'aria-label': say`Pieces. Tab walks through pieces and their lines, Enter goes to the text.`,
    },
    this.sheet,
    this.bench,
    this.over,
    svg('defs', {}, this.hatch),
  );
  private nodes = new Map<string, SVGGElement>();
  /** For which zoom the words of each piece are set. */
  private lettered = new WeakMap<SVGGElement, number>();
  private pieces: ReadonlyMap<string, PieceDrawing> = new Map();
  /** Where problems stand on each piece. */
  private signs: ReadonlyMap<string, readonly Spot[]> = new Map();

  /** Draws what changed, and answers the new nodes. The node of an unchanged piece is left alone. */
  apply({ held, redraw, placements }: Applied): SVGGElement[] {
    const kept = new Map<string, SVGGElement>();
    for (const name of redraw) {
      const { nested } = held.sheet;
      kept.set(name, drawPiece(held.pieces.get(name)!, held.stale.get(name), nested));
    }
    for (const { piece } of placements) if (!kept.has(piece)) kept.set(piece, this.nodes.get(piece)!);
    const focused = this.focused();
    for (const [name, node] of this.nodes) if (kept.get(name) !== node) node.remove();
    this.place(placements.map(({ piece, by }) => [kept.get(piece)!, `translate(${by.x} ${by.y})`]));
    this.nodes = kept;
    this.pieces = held.pieces;
    this.setSigns(held.sheet);
    if (focused) this.refocus(focused);
    return redraw.map((name) => kept.get(name)!);
  }

  show(camera: Camera): void {
    const { zoom, left, top } = camera;
    const seen = `matrix(${zoom} 0 0 ${zoom} ${-left * zoom} ${-top * zoom})`;
    for (const layer of [this.sheet, this.bench, this.over]) layer.setAttribute('transform', seen);
    this.hatch.setAttribute('patternTransform', `rotate(45) scale(${1 / zoom})`);
    setZoom(this.element, zoom);
    for (const [name, node] of this.nodes) {
      if (this.lettered.get(node) !== zoom) letter(node, this.pieces.get(name)!, zoom, this.signs.get(name));
      this.lettered.set(node, zoom);
    }
  }

  /** Words make room for the signs of problems; where those moved, all words are set again. */
  private setSigns({ problems }: Sheet): void {
    const signs = new Map<string, Spot[]>();
    for (const { severity, spots = [] } of problems) {
      if (severity === 'note') continue;
      for (const { piece, at } of spots) signs.set(piece, [...(signs.get(piece) ?? []), at]);
    }
    if (JSON.stringify([...signs]) === JSON.stringify([...this.signs])) return;
    this.signs = signs;
    this.lettered = new WeakMap();
  }

  /** Everything that can be selected, and what is hidden of it as well. */
  things(): SVGGElement[] {
    return [...this.sheet.querySelectorAll<SVGGElement>('[data-source]')];
  }

  /** A thing that is in sight: in the piece that is meant, else in any; else the piece. */
  shownThing(source: Source, piece: string): SVGGElement | undefined {
    const shown = this.things().filter((node) => node.getClientRects().length > 0);
    const own = shown.filter((node) => node.closest(`[data-piece="${CSS.escape(piece)}"]`));
    return (own.length > 0 ? own : shown).find(({ dataset }) => dataset.source === source) ?? own[0];
  }

  /** The stops of the keyboard in reading order: a piece, then its things. */
  stops(): SVGGElement[] {
    return [...this.sheet.querySelectorAll<SVGGElement>('[tabindex]')].filter(isShown);
  }

  /** The node of a point in a piece. */
  dotOf(source: Source, piece: string): SVGGElement | undefined {
    const dots = this.nodes.get(piece)?.querySelectorAll<SVGGElement>('.dot') ?? [];
    return [...dots].find(({ dataset }) => dataset.source === source);
  }

  /** Where the middle of a node lies, in pixels of the stage. */
  placeOf(node: SVGGElement): Spot {
    const [box, own] = [node.getBoundingClientRect(), this.element.getBoundingClientRect()];
    return { x: box.left - own.left + box.width / 2, y: box.top - own.top + box.height / 2 };
  }

  /** The place of a node on the sheet, mm. */
  frameOf(node: SVGGElement, camera: Camera): Frame {
    const box = node.getBoundingClientRect();
    const own = this.element.getBoundingClientRect();
    const left = camera.left + (box.left - own.left) / camera.zoom;
    const top = camera.top + (box.top - own.top) / camera.zoom;
    return { left, top, right: left + box.width / camera.zoom, bottom: top + box.height / camera.zoom };
  }

  /** Nodes stay where they are in the document when their order did not change: moving one would lose its focus. */
  private place(pieces: readonly (readonly [SVGGElement, string])[]): void {
    let next = this.sheet.firstChild;
    for (const [node, transform] of pieces) {
      if (node.getAttribute('transform') !== transform) node.setAttribute('transform', transform);
      if (node === next) next = next.nextSibling;
      else this.sheet.insertBefore(node, next);
    }
  }

  private focused(): { piece: string; source: Source } | undefined {
    const node = this.sheet.contains(document.activeElement)
      ? (document.activeElement as SVGGElement)
      : undefined;
    const piece = node?.closest<SVGGElement>('[data-piece]')?.dataset.piece;
    return node && piece !== undefined ? { piece, source: node.dataset.source! } : undefined;
  }

  /** A piece that was drawn anew under the keyboard gets the focus back, on the same line if it is still there. */
  private refocus({ piece, source }: { piece: string; source: Source }): void {
    const node = this.nodes.get(piece);
    if (!node || node.contains(document.activeElement)) return;
    const stops = [...node.querySelectorAll<SVGGElement>('[tabindex]')];
    (stops.find((stop) => stop.dataset.source === source) ?? node).focus({ preventScroll: true });
  }
}

/** The innermost thing that a pixel belongs to. */
export function thingAt(target: Element): SVGGElement | undefined {
  return target.closest<SVGGElement>('[data-source]') ?? undefined;
}

function isShown(node: SVGGElement): boolean {
  return (
    node.getClientRects().length > 0 &&
    node.getBoundingClientRect().width + node.getBoundingClientRect().height > 0
  );
}
