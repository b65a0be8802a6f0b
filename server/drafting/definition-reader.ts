/** Reads one definition against the present results: what its names lead to, and where its findings go. */
import type { Call, Ref, Statement } from '../../grammar/syntax';
import type { Evaluation, Settings } from './evaluation';
import type { Finding } from './finding';
import { PIECE_KINDS } from './made-pieces';
import type { DisplayUnit, Piece, Quantity, Shape } from './model';
import type { Node } from './names/network';
import type { Target } from './names/resolve';
import { OwnParts } from './pieces/parts';
import { measured } from './shapes/measuring';
import { markedShapes } from './shapes/parts';
import type { Found, Reader } from './values/reader';

/** A point where a path is wanted, or the other way about: then the draft's shape of that name is meant. */
const isOther = (shape: Shape, wanted: 'point' | 'path' | undefined): boolean =>
  wanted !== undefined && (shape.kind === 'point') !== (wanted === 'point');

/** Values have names of their own: `waist / 4` is the measurement, also in a piece with an edge called waist. */
const isValue = ({ kind }: Target): boolean => kind === 'measurement' || kind === 'value';

/** One reading; its findings are those of the definition's result. */
export class DefinitionReader implements Reader {
  readonly findings: Finding[] = [];
  readonly parts = new OwnParts();
  readonly unit: DisplayUnit;
  statement: Statement;
  blocked = false;

  constructor(
    private readonly evaluation: Evaluation,
    readonly node: Node,
    settings: Settings,
  ) {
    this.unit = settings.unit;
    this.statement = node.declaration.statement;
  }

  find(ref: Ref, wanted?: 'point' | 'path'): Found | undefined {
    const own = this.parts.find(ref.path, wanted);
    const target = this.node.links.targets.get(ref);
    const other =
      own !== undefined &&
      target !== undefined &&
      (isValue(target) || (own.taken === ref.path.length && isOther(own.shape, wanted)));
    if (own !== undefined && !other) {
      return {
        answer: { is: 'shape', shape: own.shape },
        rest: ref.path.slice(own.taken),
        source: this.node.id,
      };
    }
    if (target === undefined) {
      const later = this.node.links.later.get(ref);
      if (later === undefined) this.blocked = true;
      else this.findings.push(later);
      return undefined;
    }
    if (target.kind === 'given') return undefined;
    const answer = this.evaluation.answer(target.id, this.node);
    if (answer !== undefined && answer.is !== 'absent')
      return { answer, rest: target.rest, source: target.id };
    this.blocked = true;
    return undefined;
  }

  isWordChoice(ref: Ref): boolean {
    const node = this.node.links.targets.get(ref)?.declaration?.statement.node;
    return (
      node?.kind === 'choose' && (node.among ?? []).some(({ kind }) => kind === 'ref' || kind === 'text')
    );
  }

  /** Whether a name means something, or its absence was told. */
  leadsAnywhere(ref: Ref): boolean {
    return this.node.links.targets.has(ref) || this.node.links.later.has(ref);
  }

  isAbsent(ref: Ref): boolean {
    const target = this.node.links.targets.get(ref);
    const node = target?.declaration?.statement.node;
    if (target === undefined || node === undefined) return false;
    if (!('when' in node) && !PIECE_KINDS.includes(node.kind)) return false;
    return this.evaluation.answer(target.id, this.node)?.is === 'absent';
  }

  homeOf(ref: Ref): string | undefined {
    const target = this.node.links.targets.get(ref);
    if (target === undefined) return undefined;
    return target.kind === 'block' ? target.declaration?.name : (target.declaration?.scope ?? '');
  }

  standOn(piece: Piece): void {
    const { corners } = piece;
    for (const [name, shape] of markedShapes(piece)) this.parts.replace(name, shape);
    for (const { name, point } of corners) this.parts.replace(name, { kind: 'point', point });
  }

  measure(call: Call): Quantity | undefined {
    return measured(this, call);
  }
}
