/** Lines of the file, values, bodies, size tables and drafts. */
import { Phrases } from './phrases';
import type * as s from './syntax';
import * as t from './tokens';
import { W, type Token } from './tokens';

/** A statement's node before its place is put on it: `at` is the whole statement, the same for every rule. */
export type Bare<T extends s.StatementNode> = T extends { readonly at: s.Span } ? Omit<T, 'at'> : T;

export abstract class Statements extends Phrases {
  public pattern = this.RULE('pattern', (): Bare<s.PatternNode> => {
    this.CONSUME(W.pattern);
    const title = this.textOf(this.CONSUME(t.Text));
    let revision: s.Text | undefined;
    this.OPTION(() => {
      revision = this.SUBRULE(this.revision);
    });
    const dated = this.OPTION2(() => {
      this.CONSUME(t.Comma);
      this.CONSUME(W.dated);
      return (this.CONSUME(t.Date) as Token).text;
    });
    this.OPTION3({
      GATE: () => revision === undefined,
      DEF: () => {
        revision = this.SUBRULE2(this.revision);
      },
    });
    return { kind: 'pattern', title, ...(revision && { revision }), ...(dated && { dated }) };
  });

  public revision = this.RULE('revision', (): s.Text => {
    this.CONSUME(t.Comma);
    this.CONSUME(W.revision);
    return this.textOf(this.CONSUME(t.Text));
  });

  public use = this.RULE('use', (): Bare<s.UseNode> => {
    this.CONSUME(W.use);
    const path = this.textOf(this.CONSUME(t.Text));
    const as = this.OPTION(() => {
      this.CONSUME(W.as);
      return this.nameOf(this.CONSUME(t.Name));
    });
    const given: s.UseNode['given'][number][] = [];
    this.OPTION2(() => {
      this.CONSUME(W.with);
      given.push(this.SUBRULE(this.given));
      this.MANY(() => {
        this.CONSUME(t.Comma);
        given.push(this.SUBRULE2(this.given));
      });
    });
    return { kind: 'use', path, ...(as && { as }), given };
  });

  public given = this.RULE('given', (): s.UseNode['given'][number] => {
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(t.Equals);
    return { name, value: this.SUBRULE(this.value) };
  });

  public units = this.RULE('units', (): Bare<s.UnitsNode> => {
    this.CONSUME(W.units);
    const unit = this.OR<'in' | 'cm' | 'mm'>([
      { ALT: () => (this.CONSUME(W.in), 'in') },
      { ALT: () => (this.CONSUME(W.cm), 'cm') },
      { ALT: () => (this.CONSUME(W.mm), 'mm') },
    ]);
    return { kind: 'units', unit };
  });

  public tolerance = this.RULE('tolerance', (): Bare<s.ToleranceNode> => {
    this.CONSUME(W.tolerance);
    return { kind: 'tolerance', value: this.SUBRULE(this.value) };
  });

  public size = this.RULE('sizeName', (): s.SizeName => {
    const token = this.OR<Token>([
      { ALT: () => this.CONSUME(t.Name) as Token },
      { ALT: () => this.CONSUME(t.Number) as Token },
      { ALT: () => this.CONSUME(t.Text) as Token },
    ]);
    return { text: token.text, at: this.spanOf(token) };
  });

  public draftedFor = this.RULE('draftedFor', (): Bare<s.DraftedForNode> => {
    this.CONSUME(W.drafted);
    this.CONSUME(W.for);
    const body = this.nameOf(this.CONSUME(t.Name));
    const size = this.OPTION(() => this.SUBRULE(this.size));
    return size ? { kind: 'drafted-for', body, size } : { kind: 'drafted-for', body };
  });

  public measure = this.RULE('measure', (): Bare<s.MeasureNode> => {
    this.CONSUME(W.measure);
    const name = this.nameOf(this.CONSUME(t.Name));
    const how = this.textOf(this.CONSUME(t.Text));
    const range = this.OPTION(() => {
      this.CONSUME(W.in);
      return this.SUBRULE(this.range);
    });
    return range ? { kind: 'measure', name, how, range } : { kind: 'measure', name, how };
  });

  public usual = this.RULE('usual', (): Bare<s.UsualNode> => {
    this.CONSUME(W.usual);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(W.in);
    return { kind: 'usual', name, range: this.SUBRULE(this.range) };
  });

  public accept = this.RULE('accept', (): Bare<s.AcceptNode> => {
    this.CONSUME(W.accept);
    const code = this.nameOf(this.CONSUME(t.Name));
    const of = this.OPTION(() => {
      this.CONSUME(W.at);
      return this.SUBRULE(this.ref);
    });
    this.CONSUME(W.because);
    const because = this.textOf(this.CONSUME(t.Text));
    return of ? { kind: 'accept', code, of, because } : { kind: 'accept', code, because };
  });

  public let = this.RULE('let', (): Bare<s.LetNode> => {
    this.CONSUME(W.let);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(t.Equals);
    return { kind: 'let', name, value: this.SUBRULE(this.phrase) };
  });

  public choose = this.RULE('choose', (): Bare<s.ChooseNode> => {
    this.CONSUME(W.choose);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(t.Equals);
    const value = this.SUBRULE(this.value);
    const rest = this.OPTION(() =>
      this.OR<Pick<s.ChooseNode, 'range' | 'among'>>([
        {
          ALT: () => {
            this.CONSUME(W.in);
            return { range: this.SUBRULE(this.range) };
          },
        },
        {
          ALT: () => {
            this.CONSUME(W.among);
            const among = [this.SUBRULE2(this.value)];
            this.MANY(() => {
              this.CONSUME(t.Comma);
              among.push(this.SUBRULE3(this.value));
            });
            return { among };
          },
        },
      ]),
    );
    return { kind: 'choose', name, value, ...rest };
  });

  public solve = this.RULE('solve', (): Bare<s.SolveNode> => {
    this.CONSUME(W.solve);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(W.in);
    const range = this.SUBRULE(this.range);
    this.CONSUME(W.so);
    this.CONSUME(W.that);
    const left = this.SUBRULE(this.value);
    this.CONSUME(t.Equals);
    return { kind: 'solve', name, range, left, right: this.SUBRULE2(this.value) };
  });

  public expect = this.RULE('expect', (): Bare<s.ExpectNode> => {
    this.CONSUME(W.expect);
    const condition = this.SUBRULE(this.condition);
    const within = this.OPTION(() => {
      this.CONSUME(W.within);
      return this.SUBRULE(this.value);
    });
    return within ? { kind: 'expect', condition, within } : { kind: 'expect', condition };
  });

  // ------------------------------------------------------------------------------------- bodies and size tables

  public body = this.RULE('body', (): Bare<s.BodyNode> => {
    this.CONSUME(W.body);
    const name = this.nameOf(this.CONSUME(t.Name));
    const from = this.OPTION(() => {
      this.CONSUME(W.from);
      const table = this.nameOf(this.CONSUME2(t.Name));
      const size = this.OPTION2(() => this.SUBRULE(this.size));
      return size ? { table, size } : { table };
    });
    return from ? { kind: 'body', name, from } : { kind: 'body', name };
  });

  public taken = this.RULE('taken', (): Bare<s.TakenNode> => {
    this.CONSUME(W.taken);
    return { kind: 'taken', date: (this.CONSUME(t.Date) as Token).text };
  });

  public cell = this.RULE('cell', (): s.Quantity => {
    const from = this.from();
    const minus = this.OPTION(() => this.CONSUME(t.Minus));
    const token = this.CONSUME(t.Measure) as Token;
    const amount = (token.amount ?? 0) * (minus ? -1 : 1);
    const unit = token.unit;
    return { kind: 'quantity', amount, ...(unit && { unit }), at: this.span(from) };
  });

  public measured = this.RULE('measured', (): Bare<s.MeasuredNode> => {
    const name = this.nameOf(this.CONSUME(t.Name));
    return this.OR<Bare<s.MeasuredNode>>([
      {
        ALT: () => {
          this.CONSUME(W.left);
          const left = this.SUBRULE(this.cell);
          this.CONSUME(W.right);
          return { kind: 'measured', name, left, right: this.SUBRULE2(this.cell) };
        },
      },
      {
        ALT: () => {
          this.CONSUME2(W.right);
          const right = this.SUBRULE4(this.cell);
          this.CONSUME2(W.left);
          return { kind: 'measured', name, left: this.SUBRULE5(this.cell), right };
        },
      },
      { ALT: () => ({ kind: 'measured', name, value: this.SUBRULE3(this.cell) }) },
    ]);
  });

  public sizes = this.RULE('sizes', (): Bare<s.SizesNode> => {
    this.CONSUME(W.sizes);
    return { kind: 'sizes', name: this.nameOf(this.CONSUME(t.Name)) };
  });

  public sizeRow = this.RULE('sizeRow', (): Bare<s.SizeRowNode> => {
    const sizes: s.SizeName[] = [];
    this.CONSUME(W.size);
    this.AT_LEAST_ONE(() => sizes.push(this.SUBRULE(this.size)));
    return { kind: 'size-row', sizes };
  });

  /** A dash that touches no number stands for what was not measured. */
  public tableCell = this.RULE('tableCell', (): s.Quantity | undefined => {
    const from = this.from();
    const measure = this.OR<Token | undefined>([
      {
        ALT: () => {
          const minus = this.CONSUME(t.Minus);
          return this.OPTION({
            GATE: () => this.LA(1).startOffset === minus.startOffset + 1,
            DEF: () => this.CONSUME(t.Measure) as Token,
          });
        },
      },
      { ALT: () => this.CONSUME2(t.Measure) as Token },
    ]);
    if (measure === undefined) return undefined;
    const amount = (measure.amount ?? 0) * (measure.startOffset === from ? 1 : -1);
    return { kind: 'quantity', amount, ...(measure.unit && { unit: measure.unit }), at: this.span(from) };
  });

  public row = this.RULE('row', (): Bare<s.RowNode> => {
    const cells: (s.Quantity | undefined)[] = [];
    const name = this.nameOf(this.CONSUME(t.Name));
    this.AT_LEAST_ONE(() => cells.push(this.SUBRULE(this.tableCell)));
    return { kind: 'row', name, cells };
  });

  // --------------------------------------------------------------------------------------------------- drafts

  public draft = this.RULE('draft', (): Bare<s.DraftNode> => {
    this.CONSUME(W.draft);
    return { kind: 'draft', name: this.nameOf(this.CONSUME(t.Name)) };
  });

  public drawnAs = this.RULE('drawnAs', (): Bare<s.DrawnAsNode> => {
    this.CONSUME(W.drawn);
    this.CONSUME(W.as);
    return { kind: 'drawn-as', side: this.SUBRULE(this.side) };
  });

  public shape = this.RULE('shape', (): Bare<s.ShapeNode> => {
    const form = this.OR<s.ShapeNode['form']>([
      { ALT: () => (this.CONSUME(W.point), 'point') },
      { ALT: () => (this.CONSUME(W.line), 'line') },
      { ALT: () => (this.CONSUME(W.curve), 'curve') },
      { ALT: () => (this.CONSUME(W.arc), 'arc') },
    ]);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(t.Equals);
    return { kind: 'shape', form, name, phrase: this.SUBRULE(this.phrase) };
  });

  public circle = this.RULE('circle', (): Bare<s.CircleNode> => {
    this.CONSUME(W.circle);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(t.Equals);
    this.CONSUME(W.centre);
    const centre = this.SUBRULE(this.operand);
    const by = this.OR<s.CircleNode['by']>([
      { ALT: () => (this.CONSUME(W.radius), 'radius') },
      { ALT: () => (this.CONSUME(W.round), 'round') },
    ]);
    return { kind: 'circle', name, centre, by, size: this.SUBRULE(this.value) };
  });
}
