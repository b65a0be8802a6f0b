/** Pieces, seams and finishes of a pattern, gathered from the results of its top-level statements and kept up to date. */
import type { Statement } from '../../grammar/syntax';
import { Answers } from './answers';
import { equal } from './equal';
import type { Evaluation } from './evaluation';
import type { Finish, Piece, Seam } from './model';
import { PIECE_KINDS } from './made-pieces';
import type { FileSet } from './names/files';
import type { Network, NetworkChange } from './names/network';
import { passedOn, uncut } from './passed-on';
import { ofBothSides } from './pieces/both-sides';
import { same } from './same';
import { bandNotches } from './sewing/band-notches';
import { cutSeams, sewsTheSame } from './sewing/cut-seams';
import { finished, finishing, sameFinishing, withCutting, type Finishing } from './sewing/finished';
import type { PlacedNotch } from './sewing/notch';

const NONE: readonly never[] = [];

/** What a piece was finished from. */
interface FinishedPiece {
  readonly by: Finishing;
  readonly notches: readonly PlacedNotch[];
  readonly piece: Piece;
}

export class Gathered {
  private readonly finishAnswers: Answers<Finish>;
  private readonly notchAnswers: readonly [Answers<PlacedNotch>, Answers<PlacedNotch>];
  private readonly pieceAnswers: Answers<Piece>;
  private readonly seamAnswers: Answers<Seam>;
  /** A piece none of whose parts changed stays the same object. */
  private readonly finishedPieces = new WeakMap<Piece, FinishedPiece>();
  /** Notches of bands, the same objects while they come out alike. */
  private readonly bands = new WeakMap<Piece, readonly PlacedNotch[]>();
  private covered: ReadonlySet<string> = new Set();
  private cut: readonly Seam[] = NONE;
  private allSeams: readonly Seam[] = NONE;
  private withCut = new Map<string, readonly Seam[]>();
  private named: ReadonlySet<string> = new Set();
  private passed: ReadonlySet<string> = new Set();
  private stale = true;

  /**
   * @param evaluation for the side that the drafts are drawn for
   * @param otherSide what differs from it for the wearer's other side
   */
  constructor(
    private readonly files: FileSet,
    private readonly network: Network,
    private readonly evaluation: Evaluation,
    private readonly otherSide: Evaluation,
  ) {
    const { root } = files;
    const notches = (of: Evaluation) =>
      new Answers<PlacedNotch>(root, {
        kinds: ['notch'],
        tops: () => root.notched(),
        take: (id) => notchesOf(of, id),
        piecesOf: ({ piece }) => [piece],
      });
    this.finishAnswers = new Answers<Finish>(root, {
      kinds: ['finish'],
      take: (id) => finishesOf(evaluation, id),
      piecesOf: ({ edges, facedBy = [] }) => edges.map(({ piece }) => piece).concat(facedBy),
    });
    this.notchAnswers = [notches(evaluation), notches(otherSide)];
    this.pieceAnswers = new Answers<Piece>(root, {
      kinds: PIECE_KINDS,
      take: (id) => (this.passed.has(id) ? this.cutPieces(id).map(uncut) : this.cutPieces(id)),
      piecesOf: ({ base }) => [base],
    });
    this.seamAnswers = new Answers<Seam>(root, {
      kinds: ['seam'],
      take: (id) => this.seamSides(id),
      piecesOf: piecesOfSeam,
    });
  }

  /** Takes note of what the last evaluation changed; what it comes to is worked out when somebody asks. */
  note({ dirty, removed }: NetworkChange, covered: ReadonlySet<string>): void {
    const sets = [dirty, removed, this.evaluation.changed, this.otherSide.changed];
    if (covered !== this.covered) sets.push(covered, this.covered);
    this.covered = covered;
    const all = [this.finishAnswers, ...this.notchAnswers, this.pieceAnswers, this.seamAnswers];
    for (const ids of sets) for (const answers of all) answers.note(ids);
    this.stale = true;
  }

  private update(): void {
    if (!this.stale) return;
    this.stale = false;
    // a piece of the pattern's own file is found under its name
    this.pieceAnswers.note(this.finishAnswers.update());
    const sewn = [...this.notchAnswers, this.seamAnswers].map((answers) => answers.update());
    for (const pieces of sewn) this.pieceAnswers.note(pieces);
    // a band is notched where others are sewn
    if (sewn.some(({ size }) => size > 0))
      this.pieceAnswers.note(this.files.root.ofKinds(['band']).map(({ statement }) => nameOf(statement)));
    this.notePassedOn();
    this.pieceAnswers.update();
    this.addCutSeams();
    this.named = this.namesInDoubt();
  }

  /** Pieces whose cutting words others have taken over, or have no longer. */
  private notePassedOn(): void {
    const before = this.passed;
    this.passed = passedOn(this.files.root, (id) => this.isAbsent(id));
    this.pieceAnswers.note(
      [...before, ...this.passed].filter((id) => before.has(id) !== this.passed.has(id)),
    );
  }

  private addCutSeams(): void {
    const divides = this.files.files().some((file) => file.ofKind('divide').length > 0);
    const isWritten = (seam: Seam): boolean =>
      this.seamAnswers.of(seam.left[0]!.piece).some((written) => sewsTheSame(written, seam));
    this.cut = divides ? cutSeams(this.pieceAnswers.all).filter((seam) => !isWritten(seam)) : NONE;
    const seams = this.cut.length === 0 ? this.seamAnswers.all : [...this.seamAnswers.all, ...this.cut];
    if (!same(seams, this.allSeams)) this.allSeams = seams;
    const before = this.withCut;
    this.withCut = new Map();
    for (const piece of new Set(this.cut.flatMap(piecesOfSeam))) {
      const own = this.cut.filter((seam) => piecesOfSeam(seam).includes(piece));
      const list = [...this.seamAnswers.of(piece), ...own];
      const old = before.get(piece) ?? NONE;
      this.withCut.set(piece, same(old, list) ? old : list);
    }
  }

  /** `piece.edge` names in statements that could not be read. */
  private namesInDoubt(): ReadonlySet<string> {
    const failed = [...this.seamAnswers.without, ...this.finishAnswers.without].filter(
      ({ id }) => this.evaluation.result(id).answer === undefined,
    );
    const tops = [...failed.map(({ top }) => top), ...this.files.root.ofKinds(['broken'])];
    const names = new Set<string>();
    for (const { statement } of tops) {
      for (const word of statement.text.matchAll(/[\p{L}\p{M}\d-]+(?:\.[\p{L}\p{M}\d-]+)+/gu))
        names.add(word[0]);
    }
    const alike = names.size === this.named.size && [...names].every((name) => this.named.has(name));
    return alike ? this.named : names;
  }

  get pieces(): readonly Piece[] {
    this.update();
    return this.pieceAnswers.all;
  }

  get pieceNames(): readonly string[] {
    this.update();
    return this.pieceAnswers.ids.filter((id) => !this.isAbsent(id));
  }

  get leftOut(): readonly string[] {
    this.update();
    return this.pieceAnswers.ids.filter((id) => this.isAbsent(id));
  }

  private isAbsent(id: string): boolean {
    return this.evaluation.result(id).answer?.is === 'absent';
  }

  get seams(): readonly Seam[] {
    this.update();
    return this.allSeams;
  }

  seamsOf(piece: string): readonly Seam[] {
    this.update();
    return this.withCut.get(piece) ?? this.seamAnswers.of(piece);
  }

  get finishes(): readonly Finish[] {
    this.update();
    return this.finishAnswers.all;
  }

  finishesOf(piece: string): readonly Finish[] {
    this.update();
    return this.finishAnswers.of(piece);
  }

  get doubtful(): ReadonlySet<string> {
    this.update();
    return this.named;
  }

  /** What a piece of the text comes to: one piece, or one for each side of the wearer. */
  private cutPieces(id: string): readonly Piece[] {
    const { answer } = this.evaluation.result(id);
    if (answer?.is !== 'piece') return NONE;
    const other = this.otherSide.covers(id) ? this.otherSide.result(id).answer : undefined;
    const [notches, otherNotches] = this.notchAnswers;
    const whole = this.finish(answer.piece, notches);
    if (other?.is !== 'piece') return [whole];
    const side = this.network.nodes.get(id)?.links.drawn ?? 'right';
    return sides(whole, this.finish(other.piece, otherNotches), side);
  }

  private finish(piece: Piece, placed: Answers<PlacedNotch>): Piece {
    const { base } = piece;
    const by = finishing(piece, this.finishAnswers.of(base), this.seamAnswers.of(base));
    const notches = this.notchesInto(piece, placed);
    const kept = this.finishedPieces.get(piece);
    if (kept !== undefined && sameFinishing(kept.by, by) && same(kept.notches, notches)) return kept.piece;
    const made = finished(piece, by, notches);
    this.finishedPieces.set(piece, { by, notches, piece: made });
    return made;
  }

  private notchesInto(piece: Piece, placed: Answers<PlacedNotch>): readonly PlacedNotch[] {
    const own = placed.of(piece.base);
    if (piece.statement.node.kind !== 'band') return own;
    const sided = (base: string): boolean => this.otherSide.covers(base);
    const round = { seams: this.seamAnswers.all, placed: placed.all, sided };
    const made = [...own, ...bandNotches(piece, round)];
    const before = this.bands.get(piece);
    if (before !== undefined && equal(before, made)) return before;
    this.bands.set(piece, made);
    return made;
  }

  private seamSides(id: string): readonly Seam[] {
    const { answer } = this.evaluation.result(id);
    if (answer?.is !== 'seam') return NONE;
    const other = this.otherSide.covers(id) ? this.otherSide.result(id).answer : undefined;
    if (other?.is !== 'seam' || alike(answer.seam, other.seam)) return [answer.seam];
    return [sided(answer.seam, 'right'), sided(other.seam, 'left')];
  }
}

/** A band of the pattern's own file is found under its name. */
const nameOf = ({ node }: Statement): string => (node.kind === 'band' ? node.name.text : '');

function finishesOf(evaluation: Evaluation, id: string): readonly Finish[] {
  const { answer } = evaluation.result(id);
  return answer?.is === 'finish' ? [answer.finish] : NONE;
}

function notchesOf(evaluation: Evaluation, id: string): readonly PlacedNotch[] {
  const { answer } = evaluation.result(id);
  return answer?.is === 'notch' ? answer.notches : NONE;
}

const piecesOfSeam = ({ left, right }: Seam): readonly string[] =>
  [...left, ...right].map(({ piece }) => piece);

/** Both sides of pieces by the drawn one. */
const bothKept = new WeakMap<
  Piece,
  { readonly other: Piece; readonly side: string; readonly pieces: readonly Piece[] }
>();

/** Both sides of a piece, the same objects while both stay the same. */
function sides(drawn: Piece, other: Piece, side: 'left' | 'right'): readonly Piece[] {
  const before = bothKept.get(drawn);
  if (before?.other === other && before.side === side) return before.pieces;
  const pieces = ofBothSides(drawn, other, side).map((piece) =>
    piece.cutting === undefined || piece.fold === drawn.fold ? piece : withCutting(piece),
  );
  bothKept.set(drawn, { other, side, pieces });
  return pieces;
}

const sidedKept = new WeakMap<Seam, Seam>();

function sided(seam: Seam, side: 'left' | 'right'): Seam {
  const before = sidedKept.get(seam);
  if (before !== undefined) return before;
  const made = { ...seam, side };
  sidedKept.set(seam, made);
  return made;
}

/** Seams that match on both sides alike are said once. */
const alike = (a: Seam, b: Seam): boolean =>
  Math.abs(a.leftLength - b.leftLength) < 0.005 && Math.abs(a.rightLength - b.rightLength) < 0.005;
