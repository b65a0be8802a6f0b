/** Points, lines and curves: one phrase for all of them; their kinds are checked by a later phase. */
import type * as s from './syntax';
import { W } from './tokens';
import { Ways } from './ways';

export abstract class Phrases extends Ways {
  public phrase = this.RULE('phrase', (): s.Expr => {
    const from = this.from();
    let base = this.OR<s.Expr>([
      { ALT: () => this.SUBRULE(this.crossing) },
      { ALT: () => this.SUBRULE(this.placed) },
      { ALT: () => this.SUBRULE(this.midpoint) },
      { ALT: () => this.SUBRULE(this.section) },
      { ALT: () => this.SUBRULE(this.joined) },
      { ALT: () => this.SUBRULE(this.value) },
    ]);
    this.MANY(() => {
      const stepFrom = this.from();
      const step = this.SUBRULE(this.step);
      base = { kind: 'step', base, step, stepAt: this.span(stepFrom), at: this.span(from) };
    });
    this.OPTION(() => {
      this.CONSUME(W.to);
      const end = this.SUBRULE(this.operand);
      const options: s.WayOption[] = [];
      this.MANY2(() => options.push(this.SUBRULE(this.wayOption)));
      base = { kind: 'way', start: base, end, options, at: this.span(from) };
      this.MANY3(() => {
        const stepFrom = this.from();
        const step = this.SUBRULE(this.change);
        base = { kind: 'step', base, step, stepAt: this.span(stepFrom), at: this.span(from) };
      });
    });
    return base;
  });

  public crossing = this.RULE('crossing', (): s.Crossing => {
    const from = this.from();
    this.CONSUME(W.where);
    const one = this.SUBRULE(this.operand);
    this.CONSUME(W.meets);
    const other = this.SUBRULE2(this.operand);
    const pick = this.OPTION(() => this.SUBRULE(this.pick));
    const at = this.span(from);
    return pick ? { kind: 'crossing', one, other, pick, at } : { kind: 'crossing', one, other, at };
  });

  public placed = this.RULE('placed', (): s.Placed => {
    const from = this.from();
    this.CONSUME(W.on);
    const on = this.SUBRULE(this.operand);
    const place = this.SUBRULE(this.place);
    return { kind: 'placed', on, place, at: this.span(from) };
  });

  public midpoint = this.RULE('midpoint', (): s.Midpoint => {
    const from = this.from();
    this.CONSUME(W.midpoint);
    this.CONSUME(W.of);
    const one = this.SUBRULE(this.operand);
    this.CONSUME(W.and);
    const other = this.SUBRULE2(this.operand);
    return { kind: 'midpoint', one, other, at: this.span(from) };
  });

  public section = this.RULE('section', (): s.Section => {
    const start = this.from();
    this.CONSUME(W.part);
    this.CONSUME(W.of);
    const of = this.SUBRULE(this.operand);
    this.CONSUME(W.from);
    const from = this.SUBRULE2(this.operand);
    this.CONSUME(W.to);
    const to = this.SUBRULE3(this.operand);
    return { kind: 'section', of, from, to, at: this.span(start) };
  });

  public joined = this.RULE('joined', (): s.Joined => {
    const from = this.from();
    this.CONSUME(W.run);
    const parts = [this.SUBRULE(this.operand)];
    this.AT_LEAST_ONE(() => {
      this.CONSUME(W.then);
      parts.push(this.SUBRULE2(this.operand));
    });
    return { kind: 'joined', parts, at: this.span(from) };
  });

  public pick = this.RULE('pick', (): s.Pick => {
    const from = this.from();
    return this.OR<s.Pick>([
      {
        ALT: () => {
          this.CONSUME(W.nearest);
          const point = this.SUBRULE(this.operand);
          return { word: 'nearest', point, at: this.span(from) };
        },
      },
      { ALT: () => (this.CONSUME(W.upper), { word: 'upper', at: this.span(from) }) },
      { ALT: () => (this.CONSUME(W.lower), { word: 'lower', at: this.span(from) }) },
      { ALT: () => (this.CONSUME(W['left-hand']), { word: 'left-hand', at: this.span(from) }) },
      { ALT: () => (this.CONSUME(W['right-hand']), { word: 'right-hand', at: this.span(from) }) },
    ]);
  });

  public step = this.RULE('step', (): s.StepForm =>
    this.OR<s.StepForm>([
      { ALT: () => this.SUBRULE(this.squarely) },
      {
        ALT: () => {
          this.CONSUME(W.across);
          return this.SUBRULE(this.until);
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.at);
          const bearing = this.SUBRULE(this.bearing);
          this.CONSUME(W.for);
          return { kind: 'bearing', bearing, distance: this.SUBRULE(this.value) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.reach);
          const radius = this.SUBRULE2(this.value);
          return { ...this.SUBRULE2(this.until), kind: 'reach', radius };
        },
      },
      { ALT: () => this.SUBRULE(this.squared) },
      { ALT: () => this.SUBRULE(this.change) },
    ]),
  );

  /** `down 5cm`, `down to T` */
  public squarely = this.RULE('squarely', (): s.StepForm => {
    const direction = this.SUBRULE(this.direction);
    return this.OR<s.StepForm>([
      { ALT: () => ({ kind: 'by', direction, distance: this.SUBRULE(this.value) }) },
      { ALT: () => ({ ...this.SUBRULE(this.until), direction }) },
    ]);
  });

  /** `to T [pick]` */
  public until = this.RULE('until', (): Extract<s.StepForm, { kind: 'until' }> => {
    this.CONSUME(W.to);
    const target = this.SUBRULE(this.operand);
    const pick = this.OPTION(() => this.SUBRULE(this.pick));
    return pick ? { kind: 'until', target, pick } : { kind: 'until', target };
  });

  public squared = this.RULE('squared', (): s.StepForm => {
    this.CONSUME(W.squared);
    return this.OR<s.StepForm>([
      {
        ALT: () => {
          this.CONSUME(W.onto);
          const onto = this.SUBRULE(this.operand);
          const pick = this.OPTION(() => this.SUBRULE(this.pick));
          return pick ? { kind: 'dropped', onto, pick } : { kind: 'dropped', onto };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.from);
          const line = this.SUBRULE2(this.operand);
          const distance = this.SUBRULE(this.value);
          this.CONSUME(W.toward);
          return { kind: 'squared-out', line, distance, toward: this.SUBRULE3(this.operand) };
        },
      },
    ]);
  });

  public change = this.RULE('change', (): s.Change =>
    this.OR<s.Change>([
      { ALT: () => this.SUBRULE(this.turned) },
      {
        ALT: () => {
          this.CONSUME(W.mirrored);
          this.CONSUME(W.across);
          return { kind: 'mirrored', across: this.SUBRULE(this.operand) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.moved);
          return { kind: 'moved', by: this.SUBRULE(this.shifts) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.parallel);
          const distance = this.SUBRULE(this.value);
          this.CONSUME(W.toward);
          return { kind: 'parallel', distance, toward: this.SUBRULE2(this.operand) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.laid);
          const anchor = this.SUBRULE3(this.operand);
          this.CONSUME(W.on);
          const on = this.SUBRULE4(this.operand);
          this.CONSUME(W.and);
          const second = this.SUBRULE5(this.operand);
          this.CONSUME2(W.toward);
          return { kind: 'laid', anchor, on, second, toward: this.SUBRULE6(this.operand) };
        },
      },
      { ALT: () => (this.CONSUME(W.reversed), { kind: 'reversed' }) },
    ]),
  );

  public turned = this.RULE('turned', (): s.Change => {
    this.CONSUME(W.turned);
    const angle = this.SUBRULE(this.value);
    const clockwise = this.OPTION(() =>
      this.OR([
        { ALT: () => (this.CONSUME(W.clockwise), true) },
        { ALT: () => (this.CONSUME(W.anticlockwise), false) },
      ]),
    );
    this.CONSUME(W.about);
    const about = this.SUBRULE(this.operand);
    return clockwise === undefined
      ? { kind: 'turned', angle, about }
      : { kind: 'turned', angle, clockwise, about };
  });

  /** `left 3cm up 1cm` */
  public shifts = this.RULE('shifts', (): { direction: s.Direction; distance: s.Expr }[] => {
    const by: { direction: s.Direction; distance: s.Expr }[] = [];
    this.AT_LEAST_ONE(() => {
      const direction = this.SUBRULE(this.direction);
      by.push({ direction, distance: this.SUBRULE(this.value) });
    });
    return by;
  });
}
