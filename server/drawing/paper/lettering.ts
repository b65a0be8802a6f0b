/** Letters a drawn piece for paper: words along its edges and lines, its label where there is room, and nothing over anything. */
import { say } from '../../../grammar/say';
import type { DrawnText, Frame, PieceDrawing, Spot } from '../model';
import { rounded } from '../path';
import { along, runs, type Wanted } from './along';
import type { EdgeFacts, PieceFacts } from './facts';
import type { Metrics } from './font';
import type { MarkFacts } from './mark-facts';
import { CLOSER_TRIES, labelBelow, placedLabel, type Ground, type Label } from './label';
import { chordsOf, rectOfText, Space, within } from './space';

/**
 * Capital heights that are tried, mm. In full size the piece lies on the table, and is read from 60 cm: no less than 2.5 mm
 * (*common practice*); what finds no room so large is said in the label. A small print is held in the hand.
 */
const ON_TABLE = { edge: [3.2, 2.8, 2.5], allowed: [2.8, 2.5], line: [2.8, 2.5] };
const IN_HAND = { edge: [2.5, 2.1, 1.8], allowed: [2.1, 1.8], line: [2.1, 1.8] };
/** From a piece to a label that stands below it, mm. */
const BELOW_MM = 4;

/** Straight lines of the sheets' edges, in the coordinates of the piece. */
export interface SheetEdges {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** Sheets that stay empty unless a label is put there. */
  readonly holes: readonly Frame[];
}

const NO_EDGES: SheetEdges = { xs: [], ys: [], holes: [] };

/**
 * @param bare the piece without words
 * @param edges of the sheets that it is printed on: words keep clear of them where they can
 */
export function lettered(
  bare: PieceDrawing,
  facts: PieceFacts,
  font: Metrics,
  edges: SheetEdges = NO_EDGES,
): PieceDrawing {
  const start = (words: Words = 'shortened'): Lettering => {
    const letters = new Lettering(bare, facts, font, edges, words);
    letters.putPlaced();
    letters.putLineNames();
    return letters;
  };
  const usual = start();
  usual.putEdges();
  const label = usual.labelRows(usual.rest);
  if (label !== undefined) return usual.drawn(label, bare.frame);
  if (facts.inHand) return usual.withLabelBelow();
  // a narrow piece may have room for it where the words of its edges stood
  const narrow = start();
  const before = narrow.putLabel(usual.rest);
  narrow.putEdges();
  const isAllSaid = narrow.rest.every((words) => usual.rest.includes(words));
  if (before && isAllSaid) return narrow.drawn([], bare.frame);
  // what was left to the label, to keep the words of edges off those of sheets, may be what it has no room for
  const whole = start('whole');
  whole.putEdges();
  const over = edges === NO_EDGES ? undefined : whole.labelRows(whole.rest);
  return over === undefined ? usual.withLabelBelow() : whole.drawn(over, bare.frame);
}

/** Words of an edge that would lie over a sheet's edge: shortened, the rest told in the label, or whole in spite of it. */
type Words = 'shortened' | 'whole';

type Row = Omit<DrawnText, 'source'>;
type Found = ReturnType<typeof along>;
type How = (wanted: Wanted) => Found;

class Lettering {
  private readonly texts: DrawnText[] = [];
  /** What found no room along its edge. */
  readonly rest: string[] = [];
  private readonly space: Space;
  /** The same with the edges of the sheets. */
  private readonly quiet: Space;
  private readonly cloth: readonly Spot[];
  private readonly sizes: typeof ON_TABLE;
  private readonly hasEdges: boolean;

  constructor(
    private readonly bare: PieceDrawing,
    private readonly facts: PieceFacts,
    private readonly font: Metrics,
    private readonly edges: SheetEdges,
    private readonly words: Words,
  ) {
    this.space = new Space(bare);
    this.quiet = new Space(bare);
    const { left, top, right, bottom } = bare.frame;
    for (const x of edges.xs) this.quiet.addStretch({ x, y: top }, { x, y: bottom });
    for (const y of edges.ys) this.quiet.addStretch({ x: left, y }, { x: right, y });
    const cut = bare.lines.filter(({ role }) => role === 'cutting');
    this.hasEdges = edges.xs.length + edges.ys.length > 0;
    this.sizes = facts.inHand ? IN_HAND : ON_TABLE;
    this.cloth = cut.length === 0 ? facts.outline : cut.flatMap(chordsOf);
  }

  private readonly inside = (at: Spot): boolean => within(this.facts.outline, at);

  private readonly onSheet = ({ x, y }: Spot): boolean =>
    !this.edges.holes.some(({ left, top, right, bottom }) => x > left && x < right && y > top && y < bottom);

  /** In the strip between the finished size and where it is cut. */
  private readonly inAllowance = (at: Spot): boolean => within(this.cloth, at) && !this.inside(at);

  private put(text: DrawnText): void {
    this.texts.push(text);
    const rect = rectOfText(text, runs(text.text, text.size, this.font));
    this.space.add(rect);
    this.quiet.add(rect);
  }

  /** Off the edges of sheets, else over one. */
  private readonly along: How = (wanted) =>
    (this.hasEdges ? this.alongQuiet(wanted) : undefined) ?? this.alongAnyhow(wanted);
  private readonly alongQuiet: How = (wanted) => along(wanted, this.quiet, this.font);
  private readonly alongAnyhow: How = (wanted) => along(wanted, this.space, this.font);

  putPlaced(): void {
    this.facts.placed.forEach((text) => this.put(text.role === 'note' ? text : this.offEdges(text)));
  }

  /** Words of an inlay may stand anywhere along it: aside of a sheet's edge, if there is room. */
  private offEdges(text: DrawnText): DrawnText {
    const wide = runs(text.text, text.size, this.font);
    const angle = (text.turn * Math.PI) / 180;
    const aside = [0, 1, -1, 2, -2, 3, -3, 4, -4].map((step): DrawnText => {
      const by = (step * (wide + text.size)) / 3;
      const [x, y] = [text.at.x + Math.cos(angle) * by, text.at.y + Math.sin(angle) * by];
      return { ...text, at: { x: rounded(x), y: rounded(y) } };
    });
    return aside.find((one) => this.quiet.free(rectOfText(one, wide))) ?? text;
  }

  /** The grain and the lines across the piece are named on themselves. */
  putLineNames(): void {
    const named = new Set<string>();
    for (const line of this.bare.lines) {
      const { role, source, name, tip } = line;
      // lines that a statement makes by itself, such as those of a band, have one source
      const key = `${source} ${name}`;
      if (!NAMED.has(role) || named.has(key)) continue;
      // of a short line across a strip its name alone: that it is cut on the bias is said among the cutting words
      const texts = role === 'grain' ? [...new Set([tip, say`grain`])] : [name];
      const run = chordsOf(line);
      for (const text of texts) {
        const found = this.along({ run, text, sizes: this.sizes.line, farther: [0, 1], accept: this.inside });
        if (found === undefined) continue;
        named.add(key);
        this.put({ role: 'edge', source, ...found });
        break;
      }
    }
  }

  putEdges(): void {
    this.facts.edges.forEach((edge) => this.putEdge(edge));
    this.facts.marks.forEach((mark) => this.putMark(mark));
  }

  private putEdge(edge: EdgeFacts): void {
    const { length, onPaper, partner } = edge;
    if (edge.inLabel) return void this.rest.push(joined(length, onPaper, partner, edge.allowed));
    let { allowed } = edge;
    // words that a sheet's edge cuts are read by nobody before the sheets are taped: shorter ones come before
    const isWhole = this.words === 'whole' || !this.hasEdges;
    const hows = isWhole ? [this.along] : [this.alongQuiet, this.alongAnyhow];
    for (const how of hows) {
      if (allowed !== '' && this.putAllowed(edge, how)) allowed = '';
      if (this.putLongest(edge, allowed, how)) return;
    }
    this.rest.push(joined(length, onPaper, partner, allowed));
  }

  /** As much along the edge as finds room; the label says the rest. */
  private putLongest(edge: EdgeFacts, allowed: string, how: How): boolean {
    const { name, length, onPaper, partner } = edge;
    const ways: readonly (readonly [words: string, rest: string])[] = [
      [joined(length, onPaper, partner, allowed), ''],
      [joined(length, onPaper), joined(partner, allowed)],
      [length, joined(onPaper, partner, allowed)],
    ];
    return ways.some(([words, rest]) => {
      const found = this.putAlong(edge, words, how);
      if (found && rest !== '') this.rest.push(`${name}: ${rest}`);
      return found;
    });
  }

  /** What a sign means, beside it or, of a bone, within it. */
  private putMark({ source, name, text, run, farther }: MarkFacts): void {
    const wanted = { run, text, sizes: this.sizes.line, farther, accept: this.inside };
    const shorter = (): Found => (this.hasEdges ? this.alongQuiet({ ...wanted, text: name }) : undefined);
    const found = this.alongQuiet(wanted) ?? shorter() ?? this.alongAnyhow(wanted);
    if (found?.text !== text) this.rest.push(text);
    if (found !== undefined) this.put({ role: 'edge', source, ...found });
  }

  private putAllowed({ runs, source, allowed: text, allowedBack: textBack }: EdgeFacts, how: How): boolean {
    const wanted = {
      ...{ text, textBack },
      sizes: this.sizes.allowed,
      farther: [0, 0.6, 2, 5],
      accept: this.inAllowance,
    };
    const found = first(runs, (run) => how({ ...wanted, run }));
    if (found === undefined) return false;
    this.put({ role: 'edge', source, ...found });
    return true;
  }

  private putAlong({ runs, source }: EdgeFacts, text: string, how: How): boolean {
    const wanted = { text, sizes: this.sizes.edge, accept: this.inside };
    const found = first(runs, (run) => how({ ...wanted, run }));
    if (found !== undefined) this.put({ role: 'edge', source, ...found });
    return found !== undefined;
  }

  /** Off the edges of sheets, else over one; undefined where the piece has no room for the label. */
  labelRows(rest: readonly string[]): readonly Row[] | undefined {
    const ground = this.ground();
    const inside = (at: Spot): boolean => this.inside(at) && this.onSheet(at);
    const label = this.labelWith(rest);
    const quiet = { ...ground, space: this.quiet, inside };
    const grounds = this.hasEdges ? [quiet, { ...quiet, tries: CLOSER_TRIES }, ground] : [ground];
    return first(grounds, (one) => placedLabel(label, one, this.font));
  }

  /** Before the words of the edges; false where there is no room even so. */
  putLabel(rest: readonly string[]): boolean {
    const { source } = this.bare;
    const rows = this.labelRows(rest);
    rows?.forEach((row) => this.put({ ...row, source }));
    return rows !== undefined;
  }

  withLabelBelow(): PieceDrawing {
    const { frame } = this.bare;
    const label = this.labelWith(this.rest);
    const name = placedLabel({ ...label, lines: [] }, this.ground(), this.font) ?? [];
    const at = { x: frame.left, y: frame.bottom + BELOW_MM, wide: frame.right - frame.left };
    const said = label.inHand && name.length > 0 ? { ...label, title: '' } : label;
    const below = labelBelow(said, at, this.font);
    const right = Math.max(frame.right, rounded(at.x + below.wide));
    return this.drawn([...name, ...below.rows], { ...frame, right, bottom: rounded(at.y + below.high) });
  }

  private labelWith(rest: readonly string[]): Label {
    const { title, lines, inHand } = this.facts;
    return { title, lines: [...lines, ...rest], inHand };
  }

  private readonly ground = (): Ground => ({
    frame: this.bare.frame,
    space: this.space,
    inside: this.inside,
    way: wayOf(this.facts.edges),
  });

  drawn(rows: readonly Row[], frame: PieceDrawing['frame']): PieceDrawing {
    const { source } = this.bare;
    return { ...this.bare, frame, texts: [...rows.map((row) => ({ ...row, source })), ...this.texts] };
  }
}

/** What is made of the first thing that anything can be made of. */
function first<T, R>(things: readonly T[], make: (thing: T) => R | undefined): R | undefined {
  for (const thing of things) {
    const made = make(thing);
    if (made !== undefined) return made;
  }
  return undefined;
}

const NAMED: ReadonlySet<string> = new Set(['grain', 'balance', 'tape', 'topstitch', 'crease']);

/** What there is to say, with commas between. */
export const joined = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(', ');

/** The way of the longest edge, degrees: a narrow piece is lettered along it. */
function wayOf(edges: readonly EdgeFacts[]): number {
  const ways = edges.map(({ runs: [run] }) => {
    const [a, b] = [run![0]!, run![run!.length - 1]!];
    return {
      long: Math.hypot(b.x - a.x, b.y - a.y),
      way: (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI,
    };
  });
  return ways.reduce((a, b) => (b.long > a.long ? b : a), { long: 0, way: 0 }).way;
}
