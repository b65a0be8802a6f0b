/** Seams, their ease and openings, bands and finishes. */
import type { Bare } from './statements';
import type * as s from './syntax';
import * as t from './tokens';
import { W } from './tokens';
import { Work } from './work';

type Clause = { sharing: s.Sharing } | { opening: s.Opening };

export abstract class Sewing extends Work {
  public edges = this.RULE('edges', (): s.Edges => {
    const from = this.from();
    const parts = [this.SUBRULE(this.sewn)];
    this.MANY(() => {
      this.CONSUME(t.Plus);
      parts.push(this.SUBRULE2(this.sewn));
    });
    return { parts, at: this.span(from) };
  });

  public sewn = this.RULE('sewn', (): s.Sewn => {
    const start = this.from();
    const edge = this.SUBRULE(this.ref);
    const stretch = this.OPTION(() => {
      this.CONSUME(W.from);
      const from = this.SUBRULE(this.spot);
      this.CONSUME(W.to);
      return { from, to: this.SUBRULE2(this.spot) };
    });
    const reversed = this.OPTION2(() => this.CONSUME(W.reversed));
    return { edge, ...stretch, reversed: reversed !== undefined, at: this.span(start) };
  });

  public band = this.RULE('band', (): Bare<s.BandNode> => {
    this.CONSUME(W.band);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(W.for);
    const edges = this.SUBRULE(this.edges);
    this.CONSUME(t.Comma);
    const wide = this.SUBRULE(this.value);
    this.CONSUME(W.wide);
    const underlap = this.OPTION(() => {
      this.CONSUME2(t.Comma);
      this.CONSUME(W.underlap);
      const by = this.SUBRULE2(this.value);
      this.CONSUME(W.at);
      return { by, at: this.SUBRULE(this.side) };
    });
    const when = this.OPTION2(() => this.SUBRULE(this.when));
    return { kind: 'band', name, for: edges, wide, ...(underlap && { underlap }), ...(when && { when }) };
  });

  public seam = this.RULE('seam', (): Bare<s.SeamNode> => {
    this.CONSUME(W.seam);
    const name = this.nameOf(this.CONSUME(t.Name));
    const left = this.SUBRULE(this.edges);
    this.CONSUME(t.Equals);
    const right = this.OR<s.SeamNode['right']>([
      { ALT: () => (this.CONSUME(W.its), this.CONSUME(W.pair), 'its-pair') },
      { ALT: () => this.SUBRULE2(this.edges) },
    ]);
    const eases: s.Ease[] = [];
    const sharing: s.Sharing[] = [];
    const openings: s.Opening[] = [];
    this.MANY(() => eases.push(this.SUBRULE(this.ease)));
    this.MANY2(() => {
      this.CONSUME(t.Comma);
      const clause = this.SUBRULE(this.seamClause);
      if ('sharing' in clause) sharing.push(clause.sharing);
      else openings.push(clause.opening);
    });
    const when = this.OPTION(() => this.SUBRULE(this.when));
    return { kind: 'seam', name, left, right, eases, sharing, openings, ...(when && { when }) };
  });

  public ease = this.RULE('ease', (): s.Ease => {
    const from = this.from();
    return this.OR<s.Ease>([
      { ALT: () => this.SUBRULE(this.easing) },
      {
        ALT: () => {
          this.CONSUME(W.gathered);
          const ratio = this.SUBRULE(this.value);
          this.CONSUME(W.to);
          const to = this.SUBRULE2(this.value);
          return { kind: 'gathered', ratio, to, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.OR2([{ ALT: () => this.CONSUME(W.stretched) }, { ALT: () => this.CONSUME(W.stretching) }]);
          const by = this.SUBRULE3(this.value);
          const of = this.OPTION(() => {
            this.CONSUME(W.of);
            return this.SUBRULE(this.ref);
          });
          const at = this.span(from);
          return of ? { kind: 'stretched', by, of, at } : { kind: 'stretched', by, at };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.within);
          const by = this.SUBRULE4(this.value);
          return { kind: 'within', by, at: this.span(from) };
        },
      },
    ]);
  });

  public easing = this.RULE('easing', (): s.Ease => {
    const from = this.from();
    this.CONSUME(W.easing);
    const low = this.SUBRULE(this.value);
    const high = this.OPTION(() => {
      this.CONSUME(t.Dots);
      return this.SUBRULE2(this.value);
    });
    const of = this.OPTION2(() => {
      this.CONSUME(W.of);
      return this.SUBRULE(this.ref);
    });
    const between = this.OPTION3(() => {
      this.CONSUME(W.between);
      const one = this.SUBRULE(this.operand);
      this.CONSUME(W.and);
      return { one, other: this.SUBRULE2(this.operand) };
    });
    const at = this.span(from);
    return { kind: 'easing', low, ...(high && { high }), ...(of && { of }), ...(between && { between }), at };
  });

  public seamClause = this.RULE('seamClause', (): Clause => {
    const start = this.from();
    return this.OR<Clause>([
      { ALT: () => ({ sharing: this.SUBRULE(this.noEase) }) },
      {
        ALT: () => {
          const how = this.SUBRULE(this.openingWord);
          const extent = this.OPTION(() =>
            this.OR2<Partial<s.Opening>>([
              {
                ALT: () => {
                  this.CONSUME(W.from);
                  const from = this.SUBRULE(this.operand);
                  this.CONSUME(W.to);
                  return { from, to: this.SUBRULE2(this.operand) };
                },
              },
              {
                ALT: () => {
                  const length = this.SUBRULE(this.value);
                  this.CONSUME2(W.from);
                  return { length, from: this.SUBRULE3(this.operand) };
                },
              },
            ]),
          );
          const side = this.OPTION2(() => {
            this.CONSUME(W.at);
            return this.SUBRULE(this.side);
          });
          return { opening: { how, ...extent, ...(side && { side }), at: this.span(start) } };
        },
      },
      { ALT: () => ({ sharing: this.SUBRULE(this.easeShare) }) },
    ]);
  });

  public noEase = this.RULE('noEase', (): s.Sharing => {
    const from = this.from();
    this.CONSUME(W.none);
    const side = this.OR<'below' | 'above'>([
      { ALT: () => (this.CONSUME(W.below), 'below') },
      { ALT: () => (this.CONSUME(W.above), 'above') },
    ]);
    const points = [this.SUBRULE(this.operand)];
    this.MANY(() => {
      this.CONSUME(W.and);
      points.push(this.SUBRULE2(this.operand));
    });
    return { kind: 'none', side, points, at: this.span(from) };
  });

  public easeShare = this.RULE('easeShare', (): s.Sharing => {
    const from = this.from();
    const share = this.SUBRULE(this.shareOfEase);
    this.CONSUME(W.of);
    const of = this.SUBRULE(this.ref);
    return { kind: 'share', share, of, at: this.span(from) };
  });

  public shareOfEase = this.RULE('shareOfEase', (): s.Expr => {
    const from = this.from();
    return this.OR<s.Expr>([
      { ALT: () => this.SUBRULE(this.measureAlone) },
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

  public measureAlone = this.RULE('measureAlone', (): s.Expr => this.measureOf(this.CONSUME(t.Measure)));

  public openingWord = this.RULE('openingWord', (): s.Opening['how'] =>
    this.OR<s.Opening['how']>([
      { ALT: () => (this.CONSUME(W.zip), 'zip') },
      { ALT: () => (this.CONSUME(W.buttoned), 'buttoned') },
      { ALT: () => (this.CONSUME(W.laced), 'laced') },
      { ALT: () => (this.CONSUME(W.hooked), 'hooked') },
      { ALT: () => (this.CONSUME(W.left), this.CONSUME(W.open), 'left-open') },
    ]),
  );

  public finish = this.RULE('finish', (): Bare<s.FinishNode> => {
    this.CONSUME(W.finish);
    const name = this.nameOf(this.CONSUME(t.Name));
    const edges = [this.SUBRULE(this.sewn)];
    this.MANY(() => {
      this.CONSUME(t.Comma);
      edges.push(this.SUBRULE2(this.sewn));
    });
    const how = this.SUBRULE(this.finishWord);
    const when = this.OPTION(() => this.SUBRULE(this.when));
    return { kind: 'finish', name, edges, ...how, ...(when && { when }) };
  });

  public finishWord = this.RULE('finishWord', (): Pick<s.FinishNode, 'how' | 'width' | 'facedBy'> =>
    this.OR<Pick<s.FinishNode, 'how' | 'width' | 'facedBy'>>([
      {
        ALT: () => {
          this.CONSUME(W.turned);
          const how = this.OR2<'turned-up' | 'turned-twice'>([
            { ALT: () => (this.CONSUME(W.up), 'turned-up') },
            { ALT: () => (this.CONSUME(W.twice), 'turned-twice') },
          ]);
          return { how, width: this.SUBRULE(this.value) };
        },
      },
      { ALT: () => (this.CONSUME(W.bound), { how: 'bound', width: this.SUBRULE2(this.value) }) },
      {
        ALT: () => {
          this.CONSUME(W.faced);
          this.CONSUME(W.by);
          return { how: 'faced', facedBy: this.SUBRULE(this.ref) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.rolled);
          const width = this.OPTION(() => this.SUBRULE3(this.value));
          return width ? { how: 'rolled', width } : { how: 'rolled' };
        },
      },
      { ALT: () => (this.CONSUME(W.selvedge), { how: 'selvedge' }) },
      { ALT: () => (this.CONSUME(W.raw), { how: 'raw' }) },
    ]),
  );
}
