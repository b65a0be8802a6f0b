/**
 * The workshop: the open files, parsed once and kept up to date edit by edit, and the patterns drafted from them. The
 * one door of the engine for editor, command line and tests.
 */
import { say } from '../../grammar/say';
import { edit, parse } from '../../grammar';
import type { SourceFile, StatementNode } from '../../grammar/syntax';
import { Evaluation, type Settings } from './evaluation';
import type { SourcedFinding } from './finding';
import {
  bodiesFrom,
  bodyRefusal,
  clashFindings,
  draftedFor,
  draftedForFinding,
  hidingFindings,
  lackFinding,
  syntaxFindings,
  tableFindings,
  useFindings,
} from './file-findings';
import type { BodyChoice, DisplayUnit, Door, Pattern, Value } from './model';
import { FileSet } from './names/files';
import { Gathered } from './gathered';
import { Network, type NetworkChange } from './names/network';
import { nearest } from './names/spelling';
import { DraftedPattern } from './pattern';
import { saidTwice } from './said-twice';
import { undrawnFindings } from './undrawn';
import { usualLines, usualRanges } from './rules';
import { bothSides } from './sides';
import { bodyOf } from './values/body';
import { toleranceOf } from './values/tolerance';
import { written } from './values/quantity';

/** A replacement in a text, in characters. */
export interface TextEdit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** What is asked for besides what the file says. */
export interface Choice {
  readonly for?: BodyChoice;
  /** Choices set from outside: the name or written path of a `choose`, and the value as it would be written. */
  readonly set?: ReadonlyMap<string, string>;
}

export class Workshop {
  /** Files read so far; undefined for those that can't be read. */
  private readonly sources = new Map<string, SourceFile | undefined>();
  private readonly drafted = new Map<string, Drafting>();
  /** Counts every change of any file. */
  private revision = 0;

  constructor(private readonly door: Door) {}

  /** Opens a file, or replaces its text. */
  setText(uri: string, text: string): void {
    this.sources.set(uri, parse(text));
    this.revision++;
  }

  /** Applies edits one after the other, each counted in the text that the one before left. */
  edit(uri: string, changes: readonly TextEdit[]): void {
    let source = this.source(uri);
    if (source === undefined) return;
    for (const change of changes) source = edit(source, change).file;
    this.sources.set(uri, source);
    this.revision++;
  }

  /** Forgets the open text; the door is asked again. */
  close(uri: string): void {
    for (const key of this.drafted.keys()) if (key.startsWith(`${uri}\n`)) this.drafted.delete(key);
    this.refresh(uri);
  }

  /** A file changed behind the door. */
  refresh(uri: string): void {
    this.sources.delete(uri);
    this.revision++;
  }

  /** The syntax of a file; undefined when it can't be read. */
  source(uri: string): SourceFile | undefined {
    if (!this.sources.has(uri)) {
      const text = this.door.read(uri);
      this.sources.set(uri, text === undefined ? undefined : parse(text));
    }
    return this.sources.get(uri);
  }

  /** The pattern of a file, brought up to date; the same object while nothing it rests on changed. */
  pattern(uri: string, choice: Choice = {}): Pattern {
    const key = `${uri}\n${keyOf(choice)}`;
    let drafting = this.drafted.get(key);
    if (drafting === undefined) {
      drafting = new Drafting(uri, choice, this.door, (file) => this.source(file));
      this.drafted.set(key, drafting);
    }
    return drafting.at(this.revision);
  }

  /**
   * The pattern as somebody tries it out, each trial an edit of the one before; `seat` tells who, until they leave.
   */
  tried(uri: string, seat: string, choice: Choice): Pattern {
    const key = seatKey(uri, seat);
    let drafting = this.drafted.get(key);
    if (drafting === undefined) {
      drafting = new Drafting(uri, choice, this.door, (file) => this.source(file));
      this.drafted.set(key, drafting);
    }
    return drafting.at(this.revision, choice);
  }

  /** Forgets what was tried from a seat. */
  leave(uri: string, seat: string): void {
    this.drafted.delete(seatKey(uri, seat));
  }

  /**
   * Drafts a pattern for one choice after another, each an edit of the one before, and shows each to `visit`, which must
   * read what it wants at once.
   */
  forEach<C extends Choice>(
    uri: string,
    choices: readonly C[],
    visit: (pattern: Pattern, choice: C) => void,
  ): void {
    for (const [pattern, choice] of this.oneByOne(uri, choices)) visit(pattern, choice);
  }

  /** The same, going on to the next choice when the caller is ready for it. */
  *oneByOne<C extends Choice>(uri: string, choices: readonly C[]): Generator<readonly [Pattern, C]> {
    const drafting = new Drafting(uri, {}, this.door, (file) => this.source(file));
    for (const choice of choices) yield [drafting.as(choice), choice];
  }
}

/** A choice as one string, for telling choices apart. */
const keyOf = (choice: Choice): string => JSON.stringify([choice.for, [...(choice.set ?? [])]]);

const seatKey = (uri: string, seat: string): string => `${uri}\n#${seat}`;

/** One pattern being drafted for one body and one set of choices. */
class Drafting {
  private readonly files: FileSet;
  private readonly network: Network;
  private evaluation?: Evaluation;
  private otherSide?: Evaluation;
  private pattern?: DraftedPattern;
  private revision = -1;
  private seen: readonly (SourceFile | undefined)[] = [];
  private gathered?: Gathered;
  private usual: Pattern['usual'] = new Map();

  constructor(
    private readonly uri: string,
    private choice: Choice,
    door: Door,
    private readonly source: (uri: string) => SourceFile | undefined,
  ) {
    this.files = new FileSet(uri, door, source);
    this.network = new Network(this.files);
  }

  /** Brought up to date with the files, and with another choice if one is given. */
  at(revision: number, choice: Choice = this.choice): Pattern {
    if (keyOf(choice) !== keyOf(this.choice)) {
      this.revision = revision;
      return this.as(choice);
    }
    if (this.pattern !== undefined && (this.revision === revision || this.unchanged())) {
      this.revision = revision;
      return this.pattern;
    }
    this.revision = revision;
    this.pattern = this.draft();
    return this.pattern;
  }

  /** Drafted anew for another body or other choices. */
  as(choice: Choice): Pattern {
    this.choice = choice;
    this.pattern = this.draft();
    return this.pattern;
  }

  /** Whether all files are those that were drafted from; a file that could not be read may be readable now. */
  private unchanged(): boolean {
    const files = this.files.files();
    const missing = files.some(({ uses }) => uses.some(({ failure }) => failure === 'missing'));
    return (
      !missing &&
      files.length === this.seen.length &&
      files.every(({ uri }, i) => this.source(uri) === this.seen[i])
    );
  }

  private draft(): DraftedPattern {
    const change = this.network.update();
    const { root } = this.files;
    const own = draftedFor(root);
    const bodies = bodiesFrom(root);
    const refused: string[] = [];
    const asked = this.choice.for;
    const chosen = asked ?? own?.choice;
    if (asked !== undefined) refused.push(...sentence(bodyRefusal(asked, bodies)?.message));
    const unit = this.statementOf('units')?.unit ?? 'cm';
    const body = chosen && bodyOf(chosen, (name) => bodies.get(name), unit);
    const settings: Settings = { unit, body, set: this.overrides(refused), ...this.tolerance() };
    const more = this.evaluation?.configure(settings) ?? new Set<string>();
    this.evaluation ??= new Evaluation(this.network, settings);
    this.evaluation.update(change, more);
    this.draftOtherSide(change, settings);
    this.seen = this.files.files().map(({ uri }) => this.source(uri));
    const findings: SourcedFinding[] = [
      ...syntaxFindings(this.files),
      ...this.namesFindings(),
      ...useFindings(this.files),
      ...present(asked === undefined && own !== undefined ? draftedForFinding(root, own, bodies) : undefined),
      ...present(lackFinding(root, own, body, chosen, this.evaluation.lacking)),
      ...this.bodyFindings(),
    ];
    for (const id of this.evaluation.troubled) {
      for (const finding of this.evaluation.result(id).findings) findings.push({ source: id, finding });
    }
    findings.push(...undrawnFindings(root, this.network, this.evaluation));
    const lines = usualLines(root, this.evaluation);
    this.usual = usualRanges(lines, this.usual);
    const { title, revision, dated } = this.statementOf('pattern') ?? {};
    const head = {
      uri: this.uri,
      title: title?.text ?? '',
      ...(revision !== undefined && { revision: revision.text }),
      ...(dated !== undefined && { dated }),
      unit,
      refused,
      findings,
      usual: this.usual,
      usualLines: lines,
      ...(chosen !== undefined && { body: chosen }),
    };
    return new DraftedPattern(head, this.files, this.network, this.evaluation, this.gathered!);
  }

  /** What differs between the wearer's sides, for the side the drafts are not drawn for. */
  private draftOtherSide(change: NetworkChange, settings: Settings): void {
    const { network } = this;
    const evaluation = this.evaluation!;
    this.otherSide ??= new Evaluation(network, settings, evaluation);
    const more = new Set(this.otherSide.configure(settings));
    const covered = bothSides(network, settings.body);
    for (const id of this.otherSide.cover(covered)) more.add(id);
    // an input that does not differ from side to side is computed by the other evaluation only
    if (covered.size > 0)
      for (const id of evaluation.changed)
        for (const dependent of network.dependents.get(id) ?? [])
          if (covered.has(dependent)) more.add(dependent);
    this.otherSide.update(change, more);
    this.gathered ??= new Gathered(this.files, network, evaluation, this.otherSide);
    this.gathered.note(change, covered);
  }

  private namesFindings(): readonly SourcedFinding[] {
    const { root } = this.files;
    return [...clashFindings(root), ...hidingFindings(root), ...tableFindings(root), ...saidTwice(root)];
  }

  private statementOf<K extends StatementNode['kind']>(
    kind: K,
  ): Extract<StatementNode, { kind: K }> | undefined {
    return this.files.root.ofKind(kind)[0]?.statement.node as Extract<StatementNode, { kind: K }> | undefined;
  }

  private tolerance(): Pick<Settings, 'tolerance'> {
    const tolerance = toleranceOf(this.statementOf('tolerance')?.value);
    return tolerance === undefined ? {} : { tolerance };
  }

  /** Cells without units in the bodies of the pattern's own file. */
  private bodyFindings(): SourcedFinding[] {
    const found: SourcedFinding[] = [];
    const { root } = this.files;
    const unit: DisplayUnit = this.statementOf('units')?.unit ?? 'cm';
    for (const { name, statement, id } of root.bodies()) {
      if (statement.node.kind !== 'body') continue;
      const body = bodyOf({ name }, (other) => (other === name ? statement : undefined), unit);
      for (const finding of body?.findings ?? []) found.push({ source: id, finding });
    }
    return found;
  }

  /** The choices set from outside, by the path of their definition. */
  private overrides(refused: string[]): ReadonlyMap<string, Value> {
    const set = new Map<string, Value>();
    const choices = new Map<string, string>();
    for (const file of this.files.files()) {
      for (const { scope, name, id } of file.choices()) {
        const path = scope === '' ? name : `${scope}.${name}`;
        if (!choices.has(path)) choices.set(path, file.key + id);
      }
    }
    for (const [name, text] of this.choice.set ?? []) {
      const id = choices.get(name);
      const value = readValue(text);
      if (id !== undefined && value !== undefined) set.set(id, value);
      else if (id === undefined) refused.push(unknownChoice(name, choices, this.wordBefore(name)));
      else
        refused.push(
          say`${name} can't be set to ${text}: write a value as in the file, such as 68cm, 20deg, 0.5 or a word.`,
        );
    }
    return set;
  }

  /** How a value is defined that is no choice: `let`, `solve`. */
  private wordBefore(path: string): string | undefined {
    const [scope, name] = path.includes('.') ? path.split('.') : ['', path];
    const id = scope === '' ? `=${name}` : `${scope}/=${name}`;
    for (const file of this.files.files()) {
      const found = file.get(id);
      if (found !== undefined) return found.statement.node.kind;
    }
    return undefined;
  }
}

function unknownChoice(name: string, choices: ReadonlyMap<string, string>, word: string | undefined): string {
  if (word === 'solve') return say`${name} is worked out from its equation (solve), so it can't be set.`;
  if (word === 'let')
    return say`${name} is worked out (let), so it can't be set: only what the pattern chooses can be.`;
  if (choices.size === 0) return say`This pattern leaves nothing to choose, so ${name} can't be set.`;
  const near = nearest(name, choices.keys());
  const advice =
    near === undefined ? say`Its choices: ${[...choices.keys()].join(', ')}.` : say`Did you mean ${near}?`;
  return say`No choice is called ${name}. ${advice}`;
}

/** A value as it would be written after `choose x =`: a number with its unit, or a word. */
function readValue(text: string): Value | undefined {
  const { items } = parse(`let value = ${text}\n`);
  const statement = items[0]?.statement;
  if (items.length !== 1 || statement?.node.kind !== 'let' || statement.problems.length > 0) return undefined;
  let expr = statement.node.value;
  const sign = expr.kind === 'negative' ? -1 : 1;
  if (expr.kind === 'negative') expr = expr.of;
  if (expr.kind === 'ref' && expr.path.length === 1 && sign === 1)
    return { kind: 'text', text: expr.path[0]!.text };
  if (expr.kind !== 'quantity') return undefined;
  const { kind, amount } = written(expr);
  return { kind, amount: sign * amount };
}

const sentence = (message: string | undefined): string[] => (message === undefined ? [] : [message]);
const present = <T>(one: T | undefined): T[] => (one === undefined ? [] : [one]);
