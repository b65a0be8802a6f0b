/** Working a piece further, and the pieces that are made beside it. */
import { Marks } from './marks';
import type { Bare } from './statements';
import type * as s from './syntax';
import * as t from './tokens';
import { W } from './tokens';

export abstract class Work extends Marks {
  public swing = this.RULE('swing', (): Bare<s.SwingNode> => {
    this.CONSUME(W.swing);
    const dart = this.SUBRULE(this.operand);
    const share = this.OPTION(() => {
      this.CONSUME(W.by);
      return this.SUBRULE(this.value);
    });
    this.CONSUME(W.to);
    const to = this.SUBRULE2(this.operand);
    this.CONSUME(W.at);
    const place = this.SUBRULE(this.place);
    return { kind: 'swing', dart, ...(share && { share }), to, place };
  });

  public close = this.RULE('close', (): Bare<s.CloseNode> => {
    this.CONSUME(W.close);
    const dart = this.SUBRULE(this.operand);
    this.CONSUME(W.into);
    return { kind: 'close', dart, into: this.SUBRULE2(this.operand) };
  });

  public slash = this.RULE('slash', (): Bare<s.SlashNode> => {
    this.CONSUME(W.slash);
    this.CONSUME(W.from);
    const from = this.SUBRULE(this.operand);
    this.CONSUME(W.to);
    const to = this.SUBRULE2(this.operand);
    this.CONSUME(t.Comma);
    this.CONSUME(W.hinge);
    this.CONSUME(W.at);
    const hinge = this.SUBRULE3(this.operand);
    this.CONSUME2(t.Comma);
    this.CONSUME(W.open);
    return { kind: 'slash', from, to, hinge, open: this.SUBRULE(this.value) };
  });

  public spread = this.RULE('spread', (): Bare<s.SpreadNode> => {
    this.CONSUME(W.spread);
    const width = this.SUBRULE(this.value);
    this.CONSUME(W.along);
    const along = this.SUBRULE(this.operand);
    this.CONSUME(W.to);
    return { kind: 'spread', width, along, to: this.SUBRULE2(this.operand) };
  });

  public lengthen = this.RULE('lengthen', (): Bare<s.LengthenNode> => {
    const kind = this.OR<s.LengthenNode['kind']>([
      { ALT: () => (this.CONSUME(W.lengthen), 'lengthen') },
      { ALT: () => (this.CONSUME(W.shorten), 'shorten') },
      { ALT: () => (this.CONSUME(W.widen), 'widen') },
    ]);
    const by = this.SUBRULE(this.value);
    this.CONSUME(W.at);
    return { kind, by, line: this.SUBRULE(this.operand) };
  });

  public trueEdge = this.RULE('trueEdge', (): Bare<s.TrueNode> => {
    this.CONSUME(W.true);
    return { kind: 'true', edge: this.SUBRULE(this.operand) };
  });

  public smooth = this.RULE('smooth', (): Bare<s.SmoothNode> => {
    this.CONSUME(W.smooth);
    const point = this.SUBRULE(this.operand);
    this.CONSUME(W.by);
    const by = this.SUBRULE(this.value);
    this.CONSUME(W.each);
    this.CONSUME(W.side);
    return { kind: 'smooth', point, by };
  });

  // ------------------------------------------------------------------------------------------- beside a piece

  public divide = this.RULE('divide', (): Bare<s.DivideNode> => {
    this.CONSUME(W.divide);
    const piece = this.SUBRULE(this.operand);
    this.CONSUME(W.at);
    const through = [this.SUBRULE2(this.operand)];
    this.MANY(() => {
      this.CONSUME(t.Comma);
      through.push(this.SUBRULE3(this.operand));
    });
    const along = this.OPTION(() => this.SUBRULE(this.cutName));
    const before = this.OPTION2(() => this.SUBRULE(this.when));
    this.CONSUME(W.into);
    const into = [this.SUBRULE(this.share)];
    this.MANY2(() => {
      this.CONSUME2(t.Comma);
      into.push(this.SUBRULE2(this.share));
    });
    const after = this.OPTION3({
      GATE: () => before === undefined,
      DEF: () => this.SUBRULE2(this.when),
    });
    const shares = into.map(({ name, holding }) => (holding ? { name, holding } : { name }));
    const when = before ?? after;
    return { kind: 'divide', piece, through, ...(along && { along }), into: shares, ...(when && { when }) };
  });

  /** `along princess`: the line of the cut, whose bare name is the name of both new edges. */
  public cutName = this.RULE('cutName', (): NonNullable<s.DivideNode['along']> => {
    this.CONSUME(W.along);
    const line = this.SUBRULE(this.operand);
    const as = this.OPTION(() => {
      this.CONSUME(W.as);
      return this.nameOf(this.CONSUME(t.Name));
    });
    const name = as ?? (line.kind === 'ref' && line.path.length === 1 ? line.path[0] : undefined);
    return name ? { line, name } : { line };
  });

  public share = this.RULE('share', (): Bare<s.ShareNode> => {
    const name = this.nameOf(this.CONSUME(t.Name));
    const holding = this.OPTION(() => {
      this.CONSUME(W.holding);
      return this.SUBRULE(this.operand);
    });
    return holding ? { kind: 'share', name, holding } : { kind: 'share', name };
  });

  public join = this.RULE('join', (): Bare<s.JoinNode> => {
    this.CONSUME(W.join);
    const one = this.SUBRULE(this.operand);
    this.CONSUME(W.to);
    const other = this.SUBRULE2(this.operand);
    this.CONSUME(W.into);
    const into = this.nameOf(this.CONSUME(t.Name));
    const when = this.OPTION(() => this.SUBRULE(this.when));
    return { kind: 'join', one, other, into, ...(when && { when }) };
  });

  public facing = this.RULE('facing', (): Bare<s.FacingNode> => {
    this.CONSUME(W.facing);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(W.of);
    const of = this.SUBRULE(this.ref);
    this.CONSUME(W.along);
    const along = [this.SUBRULE(this.operand)];
    this.MANY(() => {
      this.CONSUME(W.and);
      along.push(this.SUBRULE2(this.operand));
    });
    this.CONSUME(t.Comma);
    const deep = this.SUBRULE(this.value);
    this.CONSUME(W.deep);
    const when = this.OPTION(() => this.SUBRULE(this.when));
    return { kind: 'facing', name, of, along, deep, ...(when && { when }) };
  });

  public strip = this.RULE('strip', (): Bare<s.StripNode> => {
    this.CONSUME(W.strip);
    const name = this.nameOf(this.CONSUME(t.Name));
    const length = this.SUBRULE(this.value);
    this.CONSUME(W.by);
    const width = this.SUBRULE2(this.value);
    const onBias = this.OPTION(() => {
      this.CONSUME(W.on);
      return this.OR([
        { ALT: () => (this.CONSUME(W.bias), true) },
        { ALT: () => (this.CONSUME(W.straight), false) },
      ]);
    });
    const cloth = this.OPTION2(() => {
      this.CONSUME(W.in);
      return this.nameOf(this.CONSUME2(t.Name));
    });
    const when = this.OPTION3(() => this.SUBRULE(this.when));
    const more = { ...(cloth && { cloth }), ...(when && { when }) };
    return { kind: 'strip', name, length, width, onBias: onBias ?? false, ...more };
  });
}
