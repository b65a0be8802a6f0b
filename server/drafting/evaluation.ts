/**
 * The definitions of a pattern, computed for one body and one set of choices. Each keeps its result; an edit recomputes
 * what is reached from what changed, in the order of the network, and stops where a result came out equal.
 */
import { say } from '../../grammar/say';
import type { Side, Statement } from '../../grammar/syntax';
import { solveBracketed } from '../geometry';
import { equal } from './equal';
import type { Finding } from './finding';
import type { DisplayUnit, Quantity, Value } from './model';
import { givenTo } from './names/links';
import type { Given } from './names/files';
import type { Network, NetworkChange, Node } from './names/network';
import type { Group } from './names/order';
import { compute } from './compute';
import { DefinitionReader } from './definition-reader';
import { turnedAbout } from './values/ranges';
import { ofKind, quantity, value } from './values/arithmetic';
import { comparison } from './values/conditions';
import type { Body } from './values/body';
import { Queue } from './queue';
import { circleWords } from './refusals';
import { LEAP, unsolved } from './unsolved';
import type { Answer } from './values/reader';

export interface Result {
  readonly answer?: Answer;
  readonly findings: readonly Finding[];
}

/** What the definitions are computed for. */
export interface Settings {
  readonly unit: DisplayUnit;
  readonly tolerance?: number;
  readonly body?: Body;
  /** Choices set from outside, by path. */
  readonly set: ReadonlyMap<string, Value>;
}

const NOTHING: Result = { findings: [] };
const NONE: ReadonlySet<string> = new Set();

export class Evaluation {
  private readonly results = new Map<string, Result>();
  /** While a `solve` tries a value: results of that trial, which hide the others. */
  private trial?: Map<string, Result>;
  /** Whether something was found wrong in a trial; if not, what lacks a value rests on something that has said so. */
  private trialComplained = false;
  /** Why the two sides of an equation can't be compared at all, whatever the value; and the kind they have if they can. */
  private sides: { readonly fault?: Finding; readonly kind?: Quantity['kind'] } = {};
  /** Measurements that something needs and the body lacks, and who asked first. */
  readonly lacking = new Map<string, Set<string>>();
  /** Definitions about which something was found. */
  readonly troubled = new Set<string>();
  /** Definitions whose results the last update changed. */
  changed: ReadonlySet<string> = new Set();
  /** Definitions computed by the last update: what an edit costs. */
  computed = 0;
  /** Values that the last update tried for its unknowns. */
  tried = 0;

  /**
   * @param base for the wearer's other side: what does not differ from side to side is the base's
   */
  constructor(
    private readonly network: Network,
    private settings: Settings,
    private readonly base?: Evaluation,
  ) {}

  /** With a base: the definitions that differ from side to side, which alone are computed here. */
  private own: ReadonlySet<string> = new Set();

  covers(id: string): boolean {
    return this.base === undefined || this.own.has(id);
  }

  /** Takes over which definitions are computed here; the others' results go. */
  cover(own: ReadonlySet<string>): ReadonlySet<string> {
    if (own === this.own) return NONE;
    this.own = own;
    for (const id of [...this.results.keys()]) if (!own.has(id)) this.drop(id);
    return new Set([...own].filter((id) => !this.results.has(id)));
  }

  result(id: string): Result {
    if (!this.covers(id)) return this.base!.result(id);
    return this.results.get(id) ?? NOTHING;
  }

  /** Takes over other settings; answers the definitions whose inputs these are. */
  configure(settings: Settings): ReadonlySet<string> {
    const before = this.settings;
    this.settings = settings;
    const dirty = new Set<string>();
    if (before.unit !== settings.unit || before.tolerance !== settings.tolerance) {
      for (const id of this.network.nodes.keys()) dirty.add(id);
      return dirty;
    }
    for (const name of changedKeys(before.body?.measures, settings.body?.measures)) {
      for (const id of this.network.dependents.get(`measurement:${name}`) ?? []) dirty.add(id);
    }
    for (const id of changedKeys(before.set, settings.set)) dirty.add(id);
    return dirty;
  }

  /** Brings the results up to date; answers the definitions whose results are others than before. */
  update(change: NetworkChange, more: ReadonlySet<string>): ReadonlySet<string> {
    const changed = new Set<string>();
    this.changed = changed;
    this.computed = 0;
    this.tried = 0;
    for (const id of change.removed) if (this.drop(id)) changed.add(id);
    for (const id of change.removed) this.forgetLack(id);
    const queue = new Queue();
    const add = (id: string): void => {
      const group = this.covers(id) ? this.network.groupOf(id) : undefined;
      if (group !== undefined) queue.add(group);
    };
    change.dirty.forEach(add);
    more.forEach(add);
    for (const id of change.removed) this.network.dependents.get(id)?.forEach(add);
    change.left.forEach((id) => this.drop(id));
    change.reached.forEach(add);
    change.regrouped.forEach(add);
    for (let group = queue.next(); group !== undefined; group = queue.next()) {
      for (const id of this.evaluateGroup(group)) {
        changed.add(id);
        this.network.dependents.get(id)?.forEach((dependent) => {
          const its = this.covers(dependent) ? this.network.groupOf(dependent) : undefined;
          if (its !== undefined && its !== group) queue.add(its);
        });
      }
    }
    return changed;
  }

  private drop(id: string): boolean {
    this.troubled.delete(id);
    return this.results.delete(id);
  }

  private forgetLack(id: string): void {
    if (this.lacking.size === 0) return;
    for (const [name, askers] of this.lacking) {
      if (askers.delete(id) && askers.size === 0) this.lacking.delete(name);
    }
  }

  /** The half of the wearer that a definition is computed for: that its draft is drawn for, or the other. */
  private sideOf({ links }: Node): Side {
    if (this.base === undefined) return links.drawn;
    return links.drawn === 'right' ? 'left' : 'right';
  }

  private evaluateGroup(group: Group): readonly string[] {
    group.members.forEach((id) => this.forgetLack(id));
    if (group.circle) return group.members.filter((id, i) => this.keep(id, this.circleResult(group, id, i)));
    if (group.unknown !== undefined) return this.evaluateUnknown(group, group.unknown);
    const id = group.members[0]!;
    const node = this.network.nodes.get(id);
    return node !== undefined && this.keep(id, this.evaluate(node)) ? group.members : [];
  }

  /** Keeps a result; answers whether it differs from before. */
  private keep(id: string, result: Result): boolean {
    const before = this.results.get(id);
    if (before !== undefined && equal(before, result)) return false;
    this.results.set(id, result);
    if (result.findings.length > 0) this.troubled.add(id);
    else this.troubled.delete(id);
    return true;
  }

  /** One finding for the whole circle, where it is first closed; the others say nothing more. */
  private circleResult(group: Group, id: string, index: number): Result {
    const node = this.network.nodes.get(id);
    if (index !== 0 || node === undefined) return NOTHING;
    const nameOf = (member: string): string => this.network.nodes.get(member)?.declaration.name ?? member;
    const { statement, nameAt } = node.declaration;
    const message = circleWords(group.members.map(nameOf), (group.unknowns ?? []).map(nameOf));
    const related = group.members
      .slice(1)
      .map((source) => ({ source, message: say`This is part of the circle.` }));
    return { findings: [{ code: 'circle', message, statement, at: nameAt, related, fixes: [] }] };
  }

  private evaluate(node: Node): Result {
    const { links, declaration } = node;
    this.forgetLack(node.id);
    if (links.unresolved) return { findings: links.findings };
    this.computed++;
    const reader = new DefinitionReader(this, node, this.settings);
    const by = givenTo(node.file, declaration);
    const given = by === undefined ? this.settings.set.get(node.id) : handed(reader, by);
    if (by !== undefined && (given === undefined || declaration.statement.node.kind !== 'choose')) {
      return given === undefined
        ? { findings: reader.findings }
        : { answer: { is: 'value', value: given }, findings: reader.findings };
    }
    const answer = compute(reader, {
      id: node.id,
      file: node.file,
      declaration,
      parts: reader.parts,
      given,
      ...(by !== undefined && { givenAt: { statement: by.statement, at: by.value.at } }),
      tolerance: this.settings.tolerance,
    });
    return answer === undefined ? { findings: reader.findings } : { answer, findings: reader.findings };
  }

  /** A `solve` and what goes round through it: silent trials, then everybody once more with the value found. */
  private evaluateUnknown(group: Group, unknown: string): readonly string[] {
    const node = this.network.nodes.get(unknown)!;
    const { statement } = node.declaration;
    const reader = new DefinitionReader(this, node, this.settings);
    const solved =
      node.links.unresolved || statement.node.kind !== 'solve'
        ? undefined
        : this.solve(group, reader, unknown, statement.node);
    const findings = node.links.unresolved ? node.links.findings : reader.findings;
    const found: Result =
      solved === undefined ? { findings } : { answer: { is: 'value', value: solved }, findings };
    return group.members.filter((id) => {
      if (id === unknown) return this.keep(id, found);
      const member = this.network.nodes.get(id);
      return member !== undefined && this.keep(id, this.evaluate(member));
    });
  }

  private solve(
    group: Group,
    reader: DefinitionReader,
    unknown: string,
    node: Extract<Statement['node'], { kind: 'solve' }>,
  ): Quantity | undefined {
    const [low, high] = [quantity(reader, node.range.low), quantity(reader, node.range.high)];
    if (low === undefined || high === undefined) return undefined;
    if (low.kind !== high.kind) {
      const wanted = low.kind === 'ratio' ? high.kind : low.kind;
      for (const end of [node.range.low, node.range.high]) ofKind(reader, end, wanted, say`the range`);
      return undefined;
    }
    if (low.amount > high.amount) turnedAbout(reader, node.range, low, high);
    this.trialComplained = false;
    this.sides = {};
    const residual = (amount: number): number =>
      this.residual(group, reader.node, unknown, node, { kind: low.kind, amount });
    const found = solveBracketed(residual, low.amount, high.amount, SOLVED_WITHIN);
    if (found.kind === 'root' && found.jump < LEAP) return { kind: low.kind, amount: found.x };
    const tried = { complained: this.trialComplained, ...this.sides };
    return unsolved(reader, node.name, [low, high], found, tried);
  }

  /** left − right of the equation with the unknown at a value; not a number where something can't be had. */
  private residual(
    group: Group,
    owner: Node,
    unknown: string,
    node: Extract<Statement['node'], { kind: 'solve' }>,
    value: Quantity,
  ): number {
    this.tried++;
    const outer = this.trial;
    this.trial = new Map(outer);
    this.trial.set(unknown, { answer: { is: 'value', value }, findings: [] });
    try {
      for (const id of group.members.slice(1)) {
        const member = this.network.nodes.get(id);
        if (member === undefined) continue;
        const result = this.evaluate(member);
        this.trial.set(id, result);
        this.trialComplained ||= result.findings.some(({ code }) => code !== 'not-built-yet');
      }
      const silent = new DefinitionReader(this, owner, this.settings);
      const sides = comparison(silent, {
        kind: 'compare',
        op: '=',
        left: node.left,
        right: node.right,
        at: node.at,
      });
      this.trialComplained ||= silent.findings.length > 0;
      const fault = silent.findings.find(({ code }) => code === 'wrong-kind' || code === 'missing-unit');
      this.sides = {
        ...(fault !== undefined && { fault }),
        ...(sides !== undefined && { kind: sides.left.kind }),
      };
      return sides === undefined ? NaN : sides.left.amount - sides.right.amount;
    } finally {
      if (outer === undefined) delete this.trial;
      else this.trial = outer;
    }
  }

  /**
   * What would be if one definition answered something else: everything that rests on it is computed silently, `ask` is
   * answered against that, and nothing is kept.
   */
  whatIf<T>(id: string, answer: Answer, ask: (result: (id: string) => Result) => T): T {
    const outer = this.trial;
    const trial = new Map(outer).set(id, { answer, findings: [] });
    this.trial = trial;
    try {
      for (const group of this.after(id)) {
        for (const member of group.members) {
          const node = member === id || group.circle ? undefined : this.network.nodes.get(member);
          if (node !== undefined) trial.set(member, this.evaluate(node));
        }
      }
      return ask((asked) => trial.get(asked) ?? this.result(asked));
    } finally {
      if (outer === undefined) delete this.trial;
      else this.trial = outer;
    }
  }

  /** The groups that rest on a definition, in order. */
  private after(id: string): readonly Group[] {
    const seen = new Set<string>([id]);
    for (const one of seen)
      for (const dependent of this.network.dependents.get(one) ?? []) seen.add(dependent);
    const groups = new Set([...seen].flatMap((one) => this.network.groupOf(one) ?? []));
    return [...groups].sort((a, b) => a.rank - b.rank);
  }

  get body(): Body | undefined {
    return this.settings.body;
  }

  /** A measurement of the present body. */
  measurement(name: string): Quantity | undefined {
    return this.settings.body?.measures.get(name)?.right;
  }

  /** What a definition or measurement answers; undefined when it has nothing to answer. */
  answer(id: string, asker: Node): Answer | undefined {
    const tried = this.trial?.get(id);
    if (tried !== undefined) return tried.answer;
    if (!id.startsWith(MEASUREMENT)) return this.result(id).answer;
    const name = id.slice(MEASUREMENT.length);
    const taken = this.settings.body?.measures.get(name);
    if (taken === undefined) {
      const lack = this.lacking.get(name);
      if (lack === undefined) this.lacking.set(name, new Set([asker.id]));
      else lack.add(asker.id);
      return undefined;
    }
    const value = taken[this.sideOf(asker)];
    return { is: 'value', value, ...(taken.sided && { sides: taken }) };
  }
}

const MEASUREMENT = 'measurement:';

/** Found values are right to a ten-millionth of a millimetre or degree: far below what is compared (0.01 mm), cheap by interpolation. */
const SOLVED_WITHIN = 1e-7;

/** What a `use` line sets a value to, read where that line stands. */
function handed(reader: DefinitionReader, { statement, value: expr }: Given): Value | undefined {
  const own = reader.statement;
  reader.statement = statement;
  const found = wordGiven(reader, expr) ?? value(reader, expr);
  reader.statement = own;
  return found;
}

/** `use … with closure = zip`: a word of the choice is the name of nothing. */
const wordGiven = (reader: DefinitionReader, expr: Given['value']): Value | undefined =>
  expr.kind === 'ref' && !reader.leadsAnywhere(expr) ? { kind: 'text', text: expr.path[0]!.text } : undefined;

function changedKeys<T>(
  a: ReadonlyMap<string, T> = new Map(),
  b: ReadonlyMap<string, T> = new Map(),
): string[] {
  if (a === b) return [];
  return [...new Set([...a.keys(), ...b.keys()])].filter((key) => !equal(a.get(key), b.get(key)));
}
