/** A pattern as everybody reads it: the results of one evaluation, by name, in file order, with their places in the text. */
import type { Statement, TopLevel } from '../../grammar/syntax';
import type { Evaluation } from './evaluation';
import { closing } from './closing';
import type { Fix, Severity, Source, SourcedFinding } from './finding';
import type {
  BodyChoice,
  BodySheet,
  DefinitionInfo,
  DisplayUnit,
  FileRange,
  Finish,
  OwnMeasurement,
  Pattern,
  PatternChoice,
  Piece,
  PlacedFinding,
  Seam,
  Shape,
  SidedReason,
  Value,
} from './model';
import type { FileNames, FileSet } from './names/files';
import type { Network } from './names/network';
import { ofBothSides } from './pieces/both-sides';
import { cutSeams } from './sewing/cut-seams';
import { finished, withCutting } from './sewing/finished';
import type { PlacedNotch } from './sewing/notch';
import { infoOf } from './asking';
import { located, sourcesIn } from './placing';
import {
  bodySheets,
  choicesOf,
  daysOf,
  needed,
  ownMeasurements,
  sidedReasons,
  sizesFor,
} from './surroundings';

/** What a pattern is made of besides its results. */
export interface PatternHead {
  readonly uri: string;
  readonly title: string;
  readonly unit: DisplayUnit;
  readonly body?: BodyChoice;
  readonly refused: readonly string[];
  readonly findings: readonly SourcedFinding[];
}

/** Finished pieces by what they are made of: a piece none of whose parts changed stays the same object. */
export type FinishedPieces = WeakMap<
  Piece,
  { readonly finishes: readonly Finish[]; readonly notches: readonly PlacedNotch[]; readonly piece: Piece }
>;

/** Reads results when they are asked for; what nobody asks for costs nothing. */
export class DraftedPattern implements Pattern {
  readonly uri: string;
  readonly title: string;
  readonly unit: DisplayUnit;
  declare readonly body?: BodyChoice;
  readonly refused: readonly string[];
  readonly findings: readonly SourcedFinding[];
  private readonly kept = new Map<string, unknown>();

  constructor(
    head: PatternHead,
    private readonly fileSet: FileSet,
    private readonly network: Network,
    private readonly evaluation: Evaluation,
    private readonly otherSide: Evaluation,
    private readonly finishedPieces: FinishedPieces,
  ) {
    this.uri = head.uri;
    this.title = head.title;
    this.unit = head.unit;
    if (head.body !== undefined) this.body = head.body;
    this.refused = head.refused;
    this.findings = head.findings;
  }

  /** Works something out once. */
  private once<T>(key: string, make: () => T): T {
    if (!this.kept.has(key)) this.kept.set(key, make());
    return this.kept.get(key) as T;
  }

  get files(): readonly string[] {
    return this.once('files', () => this.fileSet.files().map(({ uri }) => uri));
  }

  get values(): ReadonlyMap<string, Value> {
    return this.once('values', () => {
      const found = new Map<string, Value>();
      for (const declaration of this.fileSet.root.all()) {
        if (declaration.space !== 'value') continue;
        const { answer } = this.evaluation.result(declaration.id);
        if (answer?.is === 'value') found.set(writtenPath(declaration), answer.value);
      }
      return found;
    });
  }

  get shapes(): ReadonlyMap<string, Shape> {
    return this.once('shapes', () => {
      const found = new Map<string, Shape>();
      for (const declaration of this.fileSet.root.all()) {
        if (declaration.space !== 'shape') continue;
        const { answer } = this.evaluation.result(declaration.id);
        if (answer?.is === 'shape') found.set(writtenPath(declaration), answer.shape);
      }
      return found;
    });
  }

  private answers<T>(
    kinds: readonly Statement['node']['kind'][],
    take: (id: string) => T | undefined,
  ): readonly T[] {
    const found: T[] = [];
    for (const top of this.fileSet.root.topLevels) {
      if (!kinds.includes(top.statement.node.kind)) continue;
      for (const { id, statement } of this.fileSet.root.of(top)) {
        if (statement !== top.statement || this.fileSet.root.get(id)?.statement !== statement) continue;
        const one = take(id);
        if (one !== undefined) found.push(one);
      }
    }
    return found;
  }

  get pieces(): readonly Piece[] {
    return this.once('pieces', () =>
      this.answers(['piece', 'divide', 'band'], (id) => this.cutPieces(id)).flat(),
    );
  }

  get pieceNames(): readonly string[] {
    return this.once('pieceNames', () => this.answers(['piece', 'divide', 'band'], (id) => id));
  }

  /** What a piece of the text comes to: one piece, or one for each side of the wearer. */
  private cutPieces(id: string): readonly Piece[] | undefined {
    const { answer } = this.evaluation.result(id);
    if (answer?.is !== 'piece') return undefined;
    const other = this.otherSide.covers(id) ? this.otherSide.result(id).answer : undefined;
    const whole = this.finish(answer.piece, this.evaluation);
    if (other?.is !== 'piece') return [whole];
    return this.sides(
      whole,
      this.finish(other.piece, this.otherSide),
      this.network.nodes.get(id)?.links.drawn ?? 'right',
    );
  }

  /** Both sides of a piece, the same objects while both stay the same. */
  private sides(drawn: Piece, other: Piece, side: 'left' | 'right'): readonly Piece[] {
    const before = bothKept.get(drawn);
    if (before?.other === other && before.side === side) return before.pieces;
    const pieces = ofBothSides(drawn, other, side).map((piece) =>
      piece.cutting === undefined || piece.fold === drawn.fold ? piece : withCutting(piece),
    );
    bothKept.set(drawn, { other, side, pieces });
    return pieces;
  }

  private finish(piece: Piece, evaluation: Evaluation): Piece {
    const finishes = this.finishes.filter((finish) => finish.edges.some((edge) => edge.piece === piece.base));
    const notches = this.notchesOf(evaluation).filter((notch) => notch.piece === piece.base);
    const kept = this.finishedPieces.get(piece);
    if (kept !== undefined && same(kept.finishes, finishes) && same(kept.notches, notches)) return kept.piece;
    const made = finished(piece, finishes, notches);
    this.finishedPieces.set(piece, { finishes, notches, piece: made });
    return made;
  }

  get seams(): readonly Seam[] {
    return this.once('seams', () => [
      ...this.answers(['seam'], (id) => this.seamSides(id)).flat(),
      ...cutSeams(this.pieces),
    ]);
  }

  private seamSides(id: string): readonly Seam[] | undefined {
    const { answer } = this.evaluation.result(id);
    if (answer?.is !== 'seam') return undefined;
    const other = this.otherSide.covers(id) ? this.otherSide.result(id).answer : undefined;
    if (other?.is !== 'seam' || alike(answer.seam, other.seam)) return [answer.seam];
    return [sided(answer.seam, 'right'), sided(other.seam, 'left')];
  }

  get finishes(): readonly Finish[] {
    return this.once('finishes', () =>
      this.answers(['finish'], (id) => {
        const { answer } = this.evaluation.result(id);
        return answer?.is === 'finish' ? answer.finish : undefined;
      }),
    );
  }

  private notchesOf(evaluation: Evaluation): readonly PlacedNotch[] {
    return this.once(evaluation === this.evaluation ? 'notches' : 'other notches', () =>
      this.answers(['notch'], (id) => {
        const { answer } = evaluation.result(id);
        return answer?.is === 'notch' ? answer.notches : undefined;
      }).flat(),
    );
  }

  get bodies(): readonly BodySheet[] {
    return this.once('bodies', () => bodySheets(this.fileSet, this.body, this.unit));
  }

  get needs(): readonly string[] {
    return this.once('needs', () => needed(this.network));
  }

  get ownMeasurements(): ReadonlyMap<string, OwnMeasurement> {
    return this.once('ownMeasurements', () => ownMeasurements(this.fileSet));
  }

  get choices(): readonly PatternChoice[] {
    return this.once('choices', () =>
      choicesOf(this.fileSet, (id) => {
        const { answer } = this.evaluation.result(id);
        return answer?.is === 'value' ? answer.value : undefined;
      }),
    );
  }

  get sizes(): readonly string[] {
    return this.once('sizes', () => sizesFor(this.fileSet, this.body));
  }

  get days(): readonly string[] {
    return this.once('days', () => daysOf(this.fileSet.root));
  }

  sidedReasons(piece: Source): readonly SidedReason[] {
    return sidedReasons(this.network, this.evaluation.body, piece);
  }

  /** Whether a piece or seam is named in a statement whose reading failed: then nothing more is said of its edges. */
  get doubtful(): ReadonlySet<string> {
    return this.once('doubtful', () => {
      const names = new Set<string>();
      for (const top of this.fileSet.root.topLevels) {
        const { node } = top.statement;
        const failed =
          ['seam', 'finish'].includes(node.kind) &&
          this.evaluation.result(idOf(this.fileSet.root, top)).answer === undefined;
        if (!failed && node.kind !== 'broken' && node.kind !== 'facing') continue;
        for (const word of top.statement.text.matchAll(/[\p{L}\p{M}\d-]+(?:\.[\p{L}\p{M}\d-]+)+/gu))
          names.add(word[0]);
      }
      return names;
    });
  }

  closingFixes(seam: Seam): readonly Fix[] {
    return closing(this.network, this.evaluation, seam, this.unit);
  }

  locate(source: Source): FileRange | undefined {
    return located(this.network, source);
  }

  sourcesAt(uri: string, offset: number): readonly Source[] {
    const file = this.fileSet.files().find((one) => one.uri === uri);
    return file === undefined ? [] : sourcesIn(this.network, file, offset);
  }

  info(source: Source): DefinitionInfo | undefined {
    return infoOf(this.network, this.evaluation, this, source);
  }

  place({ source, finding }: SourcedFinding, severity: Severity): PlacedFinding {
    const at = (statement: Statement, span: { from: number; to: number }, owner: Source): FileRange => {
      const { uri, offset } = this.owner(owner, statement);
      const from = offset + statement.start + span.from;
      return { uri, from, to: Math.max(from, offset + statement.start + span.to) };
    };
    const related = finding.related.flatMap(({ source: of, message }) => {
      const place = this.locate(of);
      return place === undefined ? [] : [{ place, message }];
    });
    const fixes = (): PlacedFinding['fixes'] =>
      finding.fixes.map(({ title, edits }) => ({
        title,
        edits: edits.map((edit) => ({
          place: at(edit.statement, edit.at, edit.source ?? source),
          text: edit.text,
        })),
      }));
    const place = at(finding.statement, finding.at, source);
    const { code, message, piece } = finding;
    const kept = piece === undefined ? {} : { piece };
    return {
      ...{ code, severity, message, place, source, related, ...kept },
      // worked out when asked: see mismatched-seam
      get fixes() {
        return fixes();
      },
    };
  }

  /** The file of a definition, and where its top-level statement begins. */
  private owner(source: Source, statement: Statement): { uri: string; offset: number } {
    const node = this.network.nodes.get(source);
    if (
      node !== undefined &&
      (node.declaration.statement === statement || holds(node.declaration.top, statement))
    ) {
      return { uri: node.file.uri, offset: node.declaration.top.offset };
    }
    for (const file of this.fileSet.files()) {
      const top = file.topLevels.find((one) => holds(one, statement));
      if (top !== undefined) return { uri: file.uri, offset: top.offset };
    }
    return { uri: node?.file.uri ?? this.uri, offset: node?.declaration.top.offset ?? 0 };
  }
}

const idOf = (file: FileNames, top: TopLevel): string =>
  file.key + (file.of(top).find(({ statement }) => statement === top.statement)?.id ?? '');

function holds(top: TopLevel, statement: Statement): boolean {
  const inside = (one: Statement): boolean => one === statement || (one.block ?? []).some(inside);
  return inside(top.statement);
}

/** Both sides of pieces by the drawn one. */
const bothKept = new WeakMap<
  Piece,
  { readonly other: Piece; readonly side: string; readonly pieces: readonly Piece[] }
>();

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

const writtenPath = ({ scope, name }: { scope: string; name: string }): string =>
  scope === '' ? name : `${scope}.${name}`;

const same = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);
