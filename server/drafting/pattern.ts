/** A pattern as everybody reads it: the results of one evaluation, by name, in file order, with their places in the text. */
import type { Statement, TopLevel } from '../../grammar/syntax';
import type { Evaluation } from './evaluation';
import { closing } from './closing';
import type { Fix, Severity, Source, SourcedFinding } from './finding';
import type {
  BodyChoice,
  BodySheet,
  Defined,
  DefinedIn,
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
import type { Gathered } from './gathered';
import type { FileSet } from './names/files';
import type { Network } from './names/network';
import { unusedIn } from './names/unused';
import { infoOf } from './asking';
import { located, sourcesIn } from './placing';
import { acceptances } from './rules';
import {
  bodySheets,
  choicesOf,
  daysOf,
  everybody,
  needed,
  ownMeasurements,
  sidedReasons,
  sizesFor,
} from './surroundings';

/** What a pattern is made of besides its results. */
export interface PatternHead {
  readonly uri: string;
  readonly title: string;
  readonly revision?: string;
  readonly dated?: string;
  readonly unit: DisplayUnit;
  readonly body?: BodyChoice;
  readonly refused: readonly string[];
  readonly findings: readonly SourcedFinding[];
  readonly usual: Pattern['usual'];
  readonly usualLines: Pattern['usualLines'];
}

/** Reads results when they are asked for; what nobody asks for costs nothing. */
export class DraftedPattern implements Pattern {
  readonly uri: string;
  readonly title: string;
  declare readonly revision?: string;
  declare readonly dated?: string;
  readonly unit: DisplayUnit;
  declare readonly body?: BodyChoice;
  readonly refused: readonly string[];
  readonly findings: readonly SourcedFinding[];
  readonly usual: Pattern['usual'];
  readonly usualLines: Pattern['usualLines'];
  private readonly kept = new Map<string, unknown>();

  constructor(
    head: PatternHead,
    private readonly fileSet: FileSet,
    private readonly network: Network,
    private readonly evaluation: Evaluation,
    private readonly gathered: Gathered,
  ) {
    this.uri = head.uri;
    this.title = head.title;
    this.unit = head.unit;
    if (head.revision !== undefined) this.revision = head.revision;
    if (head.dated !== undefined) this.dated = head.dated;
    if (head.body !== undefined) this.body = head.body;
    this.refused = head.refused;
    this.findings = head.findings;
    this.usual = head.usual;
    this.usualLines = head.usualLines;
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

  definedIn(block: string): DefinedIn {
    return this.once(`in ${block}`, () => {
      const values: Defined<Value>[] = [];
      const shapes: Defined<Shape>[] = [];
      const { root } = this.fileSet;
      for (const declaration of root.within(new Set([block]))) {
        const { id, name, statement, scope, space } = declaration;
        if (scope !== block || root.get(id) !== declaration) continue;
        const { answer } = this.evaluation.result(id);
        if (space === 'value' && answer?.is === 'value')
          values.push({ name, statement, drafted: answer.value });
        else if (space === 'shape' && answer?.is === 'shape')
          shapes.push({ name, statement, drafted: answer.shape });
      }
      return { values, shapes };
    });
  }

  get pieces(): readonly Piece[] {
    return this.gathered.pieces;
  }

  get pieceNames(): readonly string[] {
    return this.once('pieceNames', () => this.gathered.pieceNames);
  }

  get leftOut(): readonly string[] {
    return this.once('leftOut', () => this.gathered.leftOut);
  }

  get seams(): readonly Seam[] {
    return this.gathered.seams;
  }

  seamsOf(piece: string): readonly Seam[] {
    return this.gathered.seamsOf(piece);
  }

  get finishes(): readonly Finish[] {
    return this.gathered.finishes;
  }

  finishesOf(piece: string): readonly Finish[] {
    return this.gathered.finishesOf(piece);
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
      choicesOf(this.fileSet, this.unit, (id) => this.evaluation.result(id).answer),
    );
  }

  get everybody(): readonly BodyChoice[] {
    return this.once('everybody', () => everybody(this.fileSet));
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

  get doubtful(): ReadonlySet<string> {
    return this.gathered.doubtful;
  }

  get acceptances(): Pattern['acceptances'] {
    return this.once('acceptances', () => acceptances(this.fileSet.root, this.network));
  }

  get unused(): Pattern['unused'] {
    return this.once('unused', () =>
      unusedIn(this.network, this.fileSet.root).flatMap(({ id, name }) => {
        const place = this.locate(id);
        return place === undefined ? [] : [{ source: id, name, place }];
      }),
    );
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
    const related = finding.related.flatMap(({ source: of, statement, message }) => {
      const place = statement === undefined ? this.locate(of) : at(statement, statement.node.at, of);
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

function holds(top: TopLevel, statement: Statement): boolean {
  const inside = (one: Statement): boolean => one === statement || (one.block ?? []).some(inside);
  return inside(top.statement);
}

const writtenPath = ({ scope, name }: { scope: string; name: string }): string =>
  scope === '' ? name : `${scope}.${name}`;
