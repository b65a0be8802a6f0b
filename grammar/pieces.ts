/** Pieces: their heads, their outlines, how they are cut and how much is allowed. */
import { Statements, type Bare } from './statements';
import type * as s from './syntax';
import * as t from './tokens';
import { W, type Token } from './tokens';

export abstract class Pieces extends Statements {
  public when = this.RULE('when', (): s.Expr => {
    this.CONSUME(W.when);
    return this.SUBRULE(this.condition);
  });

  public piece = this.RULE('piece', (): Bare<s.PieceNode> => {
    this.CONSUME(W.piece);
    const name = this.nameOf(this.CONSUME(t.Name));
    const rest = this.OR<Pick<s.PieceNode, 'of' | 'eachSide' | 'workedFrom' | 'mirrored'>>([
      {
        ALT: () => {
          this.CONSUME(W.of);
          const of = this.SUBRULE(this.ref);
          const each = this.OPTION(() => (this.CONSUME(W.each), this.CONSUME(W.side)));
          return { of, eachSide: each !== undefined, mirrored: false };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.worked);
          this.CONSUME(W.from);
          const workedFrom = this.SUBRULE2(this.ref);
          const mirrored = this.OPTION2(() => this.CONSUME(W.mirrored));
          return { workedFrom, eachSide: false, mirrored: mirrored !== undefined };
        },
      },
    ]);
    const when = this.OPTION3(() => this.SUBRULE(this.when));
    return { kind: 'piece', name, ...rest, ...(when && { when }) };
  });

  public lining = this.RULE('lining', (): Bare<s.LiningNode> => {
    this.CONSUME(W.lining);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(W.of);
    const of = this.SUBRULE(this.ref);
    const when = this.OPTION(() => this.SUBRULE(this.when));
    return when ? { kind: 'lining', name, of, when } : { kind: 'lining', name, of };
  });

  // -------------------------------------------------------------------------------------------------- outline

  public outline = this.RULE('outline', (): Bare<s.OutlineNode> => {
    this.CONSUME(W.outline);
    this.CONSUME(W.from);
    return { kind: 'outline', from: this.SUBRULE(this.operand) };
  });

  public hole = this.RULE('hole', (): Bare<s.HoleNode> => {
    this.CONSUME(W.hole);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(W.from);
    return { kind: 'hole', name, from: this.SUBRULE(this.operand) };
  });

  public edge = this.RULE('edge', (): Bare<s.EdgeNode> => {
    const name = this.nameOf(this.CONSUME(t.Name));
    const runs = [this.SUBRULE(this.run)];
    this.MANY(() => {
      this.CONSUME(W.then);
      runs.push(this.SUBRULE2(this.run));
    });
    const untrued = this.OPTION(() => this.CONSUME(W.untrued));
    return { kind: 'edge', name, runs, untrued: untrued !== undefined };
  });

  public run = this.RULE('run', (): s.Run => {
    const from = this.from();
    return this.OR<s.Run>([
      {
        ALT: () => {
          this.CONSUME(W.along);
          const curve = this.SUBRULE(this.operand);
          this.CONSUME(W.to);
          const to = this.SUBRULE2(this.operand);
          return { kind: 'along', curve, to, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.straight);
          this.CONSUME2(W.to);
          const to = this.SUBRULE3(this.operand);
          return { kind: 'straight', to, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.curve);
          this.CONSUME3(W.to);
          const to = this.SUBRULE4(this.operand);
          const options: s.WayOption[] = [];
          this.MANY(() => options.push(this.SUBRULE(this.wayOption)));
          return { kind: 'curve', to, options, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.dart);
          const name = this.nameOf(this.CONSUME(t.Name));
          this.CONSUME(W.by);
          const by = this.SUBRULE5(this.operand);
          this.CONSUME4(W.to);
          const to = this.SUBRULE6(this.operand);
          return { kind: 'dart', name, by, to, at: this.span(from) };
        },
      },
    ]);
  });

  // -------------------------------------------------------------------------------------------- cutting words

  public cut = this.RULE('cut', (): Bare<s.CutNode> => {
    this.CONSUME(W.cut);
    const layers = [this.SUBRULE(this.layer)];
    let rightSideUp = false;
    this.MANY(() => {
      this.CONSUME(t.Comma);
      this.OR([
        {
          ALT: () => {
            this.CONSUME(W.right);
            this.CONSUME(W.side);
            this.CONSUME(W.up);
            rightSideUp = true;
          },
        },
        { ALT: () => layers.push(this.SUBRULE2(this.layer)) },
      ]);
    });
    return { kind: 'cut', layers, rightSideUp };
  });

  public layer = this.RULE('layer', (): s.CutLayer => {
    const from = this.from();
    const layer = this.OR<Pick<s.CutLayer, 'count' | 'as'>>([
      { ALT: () => (this.CONSUME(W.pair), { count: 2, as: 'pairs' }) },
      {
        ALT: () => {
          const count = this.SUBRULE(this.count);
          const as = this.OPTION(() => this.SUBRULE(this.layerWord));
          return as ? { count, as } : { count };
        },
      },
    ]);
    const cloth = this.OPTION2(() => {
      this.CONSUME(W.in);
      return this.nameOf(this.CONSUME(t.Name));
    });
    return { ...layer, ...(cloth && { cloth }), at: this.span(from) };
  });

  public count = this.RULE('count', (): s.Expr => {
    const from = this.from();
    return this.OR<s.Expr>([
      {
        ALT: () => {
          const amount = (this.CONSUME(t.Number) as Token).amount ?? 0;
          return { kind: 'quantity', amount, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(t.Open);
          const inside = this.SUBRULE(this.value);
          this.CONSUME(t.Close);
          return { kind: 'bracket', inside, at: this.span(from) };
        },
      },
    ]);
  });

  public layerWord = this.RULE('layerWord', (): NonNullable<s.CutLayer['as']> =>
    this.OR<NonNullable<s.CutLayer['as']>>([
      { ALT: () => (this.CONSUME(W.pairs), 'pairs') },
      { ALT: () => (this.CONSUME(W.alike), 'alike') },
      { ALT: () => (this.CONSUME(W.open), 'open') },
      { ALT: () => (this.CONSUME(W.on), this.CONSUME(W.fold), 'fold') },
      { ALT: () => this.SUBRULE(this.side) },
    ]),
  );

  public fold = this.RULE('fold', (): Bare<s.FoldNode> => {
    this.CONSUME(W.fold);
    return { kind: 'fold', edge: this.SUBRULE(this.ref) };
  });

  public grain = this.RULE('grain', (): Bare<s.GrainNode> => {
    this.CONSUME(W.grain);
    return this.OR<Bare<s.GrainNode>>([
      { ALT: () => (this.CONSUME(W.along), { kind: 'grain', along: this.SUBRULE(this.operand) }) },
      {
        ALT: () => {
          this.CONSUME(W.bias);
          this.CONSUME(W.to);
          return { kind: 'grain', biasTo: this.SUBRULE2(this.operand) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.from);
          const from = this.SUBRULE3(this.operand);
          this.CONSUME2(W.to);
          return { kind: 'grain', from, to: this.SUBRULE4(this.operand) };
        },
      },
    ]);
  });

  public allow = this.RULE('allow', (): Bare<s.AllowNode> => {
    this.CONSUME(W.allow);
    const width = this.SUBRULE(this.value);
    const edges: s.Ref[] = [];
    const more = this.OPTION(() => {
      this.CONSUME(W.at);
      edges.push(this.SUBRULE(this.ref));
      return this.OR<Pick<s.AllowNode, 'running' | 'stretch'>>([
        { ALT: () => ({ running: this.SUBRULE(this.running) }) },
        { ALT: () => ({ stretch: this.SUBRULE(this.allowedStretch) }) },
        {
          ALT: () => {
            this.MANY(() => {
              this.CONSUME(t.Comma);
              edges.push(this.SUBRULE2(this.ref));
            });
            return {};
          },
        },
      ]);
    });
    return { kind: 'allow', width, edges, ...more };
  });

  public allowedStretch = this.RULE('allowedStretch', (): NonNullable<s.AllowNode['stretch']> => {
    const start = this.from();
    this.CONSUME(W.from);
    const from = this.SUBRULE(this.place);
    this.CONSUME(W.to);
    const to = this.SUBRULE2(this.place);
    return { from, to, at: this.span(start) };
  });

  public running = this.RULE('running', (): NonNullable<s.AllowNode['running']> => {
    this.CONSUME(W.running);
    this.CONSUME(W.to);
    const width = this.SUBRULE(this.value);
    this.CONSUME(W.at);
    const at = this.SUBRULE(this.ref);
    const along = this.OPTION(() => {
      this.CONSUME(W.along);
      return this.SUBRULE2(this.ref);
    });
    return along ? { width, at, along } : { width, at };
  });

  public inlay = this.RULE('inlay', (): Bare<s.InlayNode> => {
    this.CONSUME(W.inlay);
    const width = this.SUBRULE(this.value);
    this.CONSUME(W.at);
    const edges = [this.SUBRULE(this.ref)];
    this.MANY(() => {
      this.CONSUME(t.Comma);
      edges.push(this.SUBRULE2(this.ref));
    });
    return { kind: 'inlay', width, edges };
  });

  public corner = this.RULE('corner', (): Bare<s.CornerNode> => {
    this.CONSUME(W.corner);
    this.CONSUME(W.at);
    const point = this.SUBRULE(this.operand);
    const how = this.OR<s.CornerNode['how']>([
      { ALT: () => (this.CONSUME(W.mitred), 'mitred') },
      { ALT: () => (this.CONSUME(W.squared), 'squared') },
      { ALT: () => (this.CONSUME(W.stepped), 'stepped') },
      { ALT: () => (this.CONSUME(W.turned), this.CONSUME(W.back), 'turned-back') },
      {
        ALT: () => {
          this.CONSUME(W.as);
          this.CONSUME(W.the);
          this.CONSUME(W.seam);
          this.CONSUME(W.folds);
          return 'as-the-seam-folds';
        },
      },
    ]);
    return { kind: 'corner', point, how };
  });
}
