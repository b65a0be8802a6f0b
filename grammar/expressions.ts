/** Values, phrases and places: what stands inside statements. */
import { EmbeddedActionsParser, type IParserErrorMessageProvider, type TokenType } from 'chevrotain';
import type * as s from './syntax';
import * as t from './tokens';
import { W, type Token } from './tokens';

/** What a rule noticed in a statement that it could still read. */
export interface Note {
  readonly code: string;
  readonly from: number;
  readonly to: number;
}

/** What the parser's library found amiss, kept as data; `explain.ts` puts it in words. */
export interface Refusal {
  readonly expected: readonly TokenType[];
  readonly token: Token;
  readonly previous: Token | undefined;
}

/** The rules' node types, without the library's own wrapping. */
export type Parsed<T> = T;

/** Lookahead of two tokens is what the grammar was proven with. */
export const LOOKAHEAD = 2;

export abstract class Expressions extends EmbeddedActionsParser {
  /** Offset of the statement's first character: spans count from there. */
  base = 0;
  notes: Note[] = [];
  refusal: Refusal | undefined;

  constructor(validate: boolean) {
    const report: { parser?: Expressions } = {};
    super(t.vocabulary, {
      maxLookahead: LOOKAHEAD,
      recoveryEnabled: false,
      skipValidations: !validate,
      errorMessageProvider: provider((refusal) => {
        if (report.parser) report.parser.refusal = refusal;
      }),
    });
    report.parser = this;
  }

  // ------------------------------------------------------------------------------------------------ helpers

  protected from(): number {
    return this.LA(1).startOffset;
  }

  protected span(from: number): s.Span {
    return { from: from - this.base, to: this.LA(0).endOffset! + 1 - this.base };
  }

  protected spanOf(token: Token): s.Span {
    return { from: token.startOffset - this.base, to: token.endOffset + 1 - this.base };
  }

  protected nameOf(token: unknown): s.Name {
    const own = token as Token;
    return { text: own.text, at: this.spanOf(own) };
  }

  protected textOf(token: unknown): s.Text {
    const own = token as Token;
    return { text: own.text, at: this.spanOf(own) };
  }

  protected measureOf(token: unknown): s.Quantity {
    const own = token as Token;
    const { amount = 0, unit } = own;
    const at = this.spanOf(own);
    return unit === undefined ? { kind: 'quantity', amount, at } : { kind: 'quantity', amount, unit, at };
  }

  private noteFractionAfterSign(): void {
    const next = this.LA(1) as Token;
    if (next.fractional)
      this.notes.push({ code: 'fraction-after-sign', from: next.startOffset, to: next.endOffset + 1 });
  }

  // ------------------------------------------------------------------------------------------------ values

  public ref = this.RULE('ref', (): s.Ref => {
    const from = this.from();
    const path: s.Name[] = [this.nameOf(this.CONSUME(t.Name))];
    this.MANY(() => {
      this.CONSUME(t.Dot);
      path.push(this.nameOf(this.CONSUME(t.Member)));
    });
    return { kind: 'ref', path, at: this.span(from) };
  });

  public bracket = this.RULE('bracket', (): s.Bracket | s.Coordinates => {
    const from = this.from();
    this.CONSUME(t.Open);
    const inside = this.SUBRULE(this.condition);
    const y = this.OPTION(() => {
      this.CONSUME(t.Comma);
      return this.SUBRULE(this.value);
    });
    this.CONSUME(t.Close);
    const at = this.span(from);
    return y === undefined ? { kind: 'bracket', inside, at } : { kind: 'coordinates', x: inside, y, at };
  });

  public operand = this.RULE('operand', (): s.Expr =>
    this.OR<s.Expr>([{ ALT: () => this.SUBRULE(this.ref) }, { ALT: () => this.SUBRULE(this.bracket) }]),
  );

  public call = this.RULE('call', (): s.Call => {
    const from = this.from();
    const func = this.nameOf(this.CONSUME(t.Func));
    const args: s.Expr[] = [];
    this.CONSUME(t.Open);
    this.OPTION(() => {
      args.push(this.SUBRULE(this.condition));
      this.MANY(() => {
        this.CONSUME(t.Comma);
        args.push(this.SUBRULE2(this.condition));
      });
    });
    this.CONSUME(t.Close);
    return { kind: 'call', func, args, at: this.span(from) };
  });

  public atom = this.RULE('atom', (): s.Expr =>
    this.OR<s.Expr>([
      { ALT: () => this.measureOf(this.CONSUME(t.Measure)) },
      { ALT: () => this.SUBRULE(this.call) },
      { ALT: () => this.SUBRULE(this.ref) },
      { ALT: () => this.SUBRULE(this.bracket) },
    ]),
  );

  public factor = this.RULE('factor', (): s.Expr => {
    const from = this.from();
    const minus = this.OPTION(() => this.CONSUME(t.Minus));
    const atom = this.SUBRULE(this.atom);
    return minus ? { kind: 'negative', of: atom, at: this.span(from) } : atom;
  });

  /** Sums of products, read in one rule because a rule for each level costs more than the work it does. */
  public value = this.RULE('value', (): s.Expr => {
    const from = this.from();
    let sum: s.Expr | undefined;
    let sumSign: '+' | '-' = '+';
    let termFrom = from;
    let term: s.Expr = this.SUBRULE(this.factor);
    let termTo = this.span(from).to;
    const total = (): s.Expr => {
      if (sum === undefined) return term;
      return { kind: 'sum', op: sumSign, left: sum, right: term, at: { from: from - this.base, to: termTo } };
    };
    this.MANY(() => {
      const sign = this.CONSUME(t.Sign).image as '+' | '-' | '*' | '/' | '×';
      const next = this.from();
      const additive = sign === '+' || sign === '-';
      if (!additive) this.noteFractionAfterSign();
      const factor = this.SUBRULE2(this.factor);
      if (additive) {
        sum = total();
        sumSign = sign;
        termFrom = next;
        term = factor;
      } else {
        term = {
          kind: 'product',
          op: sign === '/' ? '/' : '*',
          left: term,
          right: factor,
          at: this.span(termFrom),
        };
      }
      termTo = this.span(from).to;
    });
    return total();
  });

  public condition = this.RULE('condition', (): s.Expr => {
    const from = this.from();
    let left = this.SUBRULE(this.test);
    this.MANY(() => {
      const op = this.OR<'and' | 'or'>([
        { ALT: () => (this.CONSUME(W.and), 'and') },
        { ALT: () => (this.CONSUME(W.or), 'or') },
      ]);
      const right = this.SUBRULE2(this.test);
      left = { kind: 'logic', op, left, right, at: this.span(from) };
    });
    return left;
  });

  public test = this.RULE('test', (): s.Expr => {
    const from = this.from();
    const not = this.OPTION(() => this.CONSUME(W.not));
    const inner = this.from();
    let tested = this.SUBRULE(this.phrase);
    this.OPTION2(() => {
      const op = (this.CONSUME(t.Comparison) as Token).text as s.Compare['op'];
      const right = this.SUBRULE2(this.phrase);
      tested = { kind: 'compare', op, left: tested, right, at: this.span(inner) };
    });
    return not ? { kind: 'not', of: tested, at: this.span(from) } : tested;
  });

  public range = this.RULE('range', (): s.Range => {
    const from = this.from();
    const low = this.SUBRULE(this.value);
    this.CONSUME(t.Dots);
    const high = this.SUBRULE2(this.value);
    return { low, high, at: this.span(from) };
  });

  // ------------------------------------------------------------------------------------------------ phrases

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

  public direction = this.RULE('direction', (): s.Direction =>
    this.OR<s.Direction>([
      { ALT: () => (this.CONSUME(W.up), 'up') },
      { ALT: () => (this.CONSUME(W.down), 'down') },
      { ALT: () => (this.CONSUME(W.left), 'left') },
      { ALT: () => (this.CONSUME(W.right), 'right') },
    ]),
  );

  public side = this.RULE('side', (): s.Side =>
    this.OR<s.Side>([
      { ALT: () => (this.CONSUME(W.left), 'left') },
      { ALT: () => (this.CONSUME(W.right), 'right') },
    ]),
  );

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

  public bearing = this.RULE('bearing', (): s.Bearing => {
    const from = this.from();
    const angle = this.SUBRULE(this.value);
    const named = this.OPTION(() =>
      this.OR<NonNullable<s.Bearing['named']>>([
        {
          ALT: () => {
            const away = this.OR2<s.Direction>([
              { ALT: () => (this.CONSUME(W.above), 'up') },
              { ALT: () => (this.CONSUME(W.below), 'down') },
            ]);
            return { away, along: this.SUBRULE(this.side) };
          },
        },
        {
          ALT: () => {
            const away = this.SUBRULE2(this.side);
            this.CONSUME(W.of);
            const along = this.OR3<s.Direction>([
              { ALT: () => (this.CONSUME(W.up), 'up') },
              { ALT: () => (this.CONSUME(W.down), 'down') },
            ]);
            return { away, along };
          },
        },
      ]),
    );
    return named ? { angle, named, at: this.span(from) } : { angle, at: this.span(from) };
  });

  public wayOption = this.RULE('wayOption', (): s.WayOption => {
    const from = this.from();
    return this.OR<s.WayOption>([
      {
        ALT: () => {
          this.CONSUME(W.through);
          const via = [this.SUBRULE(this.via)];
          this.MANY(() => {
            this.CONSUME(t.Comma);
            via.push(this.SUBRULE2(this.via));
          });
          return { kind: 'through', via, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.leaving);
          const heading = this.SUBRULE(this.heading);
          return { kind: 'leaving', heading, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.arriving);
          const heading = this.SUBRULE2(this.heading);
          return { kind: 'arriving', heading, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.fuller);
          const by = this.SUBRULE(this.value);
          return { kind: 'fuller', by, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.flatter);
          const by = this.SUBRULE2(this.value);
          return { kind: 'flatter', by, at: this.span(from) };
        },
      },
      { ALT: () => this.SUBRULE(this.hollow) },
      {
        ALT: () => {
          this.CONSUME(W.centre);
          const point = this.SUBRULE(this.operand);
          const longWay = this.OPTION(() => {
            this.CONSUME(W.the);
            this.CONSUME(W.long);
            this.CONSUME(W.way);
            return true;
          });
          return { kind: 'centre', point, longWay: longWay === true, at: this.span(from) };
        },
      },
    ]);
  });

  public hollow = this.RULE('hollow', (): s.WayOption => {
    const from = this.from();
    this.CONSUME(W.hollow);
    const depth = this.SUBRULE(this.value);
    this.CONSUME(W.toward);
    const toward = this.SUBRULE(this.operand);
    const place = this.OPTION(() => {
      this.CONSUME(W.at);
      return this.SUBRULE(this.place);
    });
    const at = this.span(from);
    return place ? { kind: 'hollow', depth, toward, place, at } : { kind: 'hollow', depth, toward, at };
  });

  public via = this.RULE('via', (): s.Via => {
    const from = this.from();
    const point = this.SUBRULE(this.operand);
    const going = this.OPTION(() => {
      this.CONSUME(W.going);
      return this.SUBRULE(this.heading);
    });
    return going ? { point, going, at: this.span(from) } : { point, at: this.span(from) };
  });

  public heading = this.RULE('heading', (): s.Heading => {
    const from = this.from();
    return this.OR<s.Heading>([
      {
        ALT: () => {
          const direction = this.SUBRULE(this.direction);
          return { kind: 'direction', direction, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.toward);
          const point = this.SUBRULE(this.operand);
          return { kind: 'toward', point, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.square);
          this.CONSUME(W.to);
          const to = this.SUBRULE2(this.operand);
          return { kind: 'square', to, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.along);
          const line = this.SUBRULE3(this.operand);
          return { kind: 'along', line, at: this.span(from) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.at);
          const bearing = this.SUBRULE(this.bearing);
          return { kind: 'bearing', bearing, at: this.span(from) };
        },
      },
    ]);
  });

  // ------------------------------------------------------------------------------------------------ places

  public counted = this.RULE('counted', (): NonNullable<s.Place['counted']> =>
    this.OR<NonNullable<s.Place['counted']>>([
      { ALT: () => (this.CONSUME(W.from), 'from') },
      { ALT: () => (this.CONSUME(W.beyond), 'beyond') },
      { ALT: () => (this.CONSUME(W.before), 'before') },
      { ALT: () => (this.CONSUME(W.after), 'after') },
      { ALT: () => (this.CONSUME(W.below), 'below') },
      { ALT: () => (this.CONSUME(W.above), 'above') },
    ]),
  );

  public place = this.RULE('place', (): s.Place => {
    const from = this.from();
    const value = this.SUBRULE(this.value);
    const rest = this.OPTION(() => {
      const counted = this.SUBRULE(this.counted);
      const point = this.SUBRULE(this.operand);
      const toward = this.OPTION2(() => {
        this.CONSUME(W.toward);
        return this.SUBRULE2(this.operand);
      });
      return toward ? { counted, point, toward } : { counted, point };
    });
    return { value, ...rest, at: this.span(from) };
  });

  /** As a place, but a sum needs its bracket: `+` joins edges here. */
  public spot = this.RULE('spot', (): s.Place => {
    const from = this.from();
    const value = this.SUBRULE(this.atom);
    const rest = this.OPTION(() => {
      const counted = this.SUBRULE(this.counted);
      return { counted, point: this.SUBRULE(this.operand) };
    });
    return { value, ...rest, at: this.span(from) };
  });
}

/** Keeps what was expected as data instead of building the library's own sentences. */
function provider(note: (refusal: Refusal) => void): IParserErrorMessageProvider {
  return {
    buildMismatchTokenMessage: ({ expected, actual, previous }) => {
      note({ expected: [expected], token: actual as Token, previous: previous as Token });
      return 'mismatch';
    },
    buildNotAllInputParsedMessage: ({ firstRedundant }) => {
      note({ expected: [], token: firstRedundant as Token, previous: undefined });
      return 'more';
    },
    buildNoViableAltMessage: ({ expectedPathsPerAlt, actual, previous }) => {
      note(refusalOf(expectedPathsPerAlt.flat(), actual as Token[], previous as Token));
      return 'none';
    },
    buildEarlyExitMessage: ({ expectedIterationPaths, actual, previous }) => {
      note(refusalOf(expectedIterationPaths, actual as Token[], previous as Token));
      return 'early';
    },
  };
}

/** Of several ways on, the ones that agree longest with what stands there say what was expected. */
function refusalOf(paths: TokenType[][], actual: Token[], previous: Token): Refusal {
  const first = actual[0]!;
  const deeper = paths.filter((path) => path.length > 1 && matches(first, path[0]!));
  if (deeper.length > 0 && actual.length > 1) {
    return { expected: unique(deeper.map((path) => path[1]!)), token: actual[1]!, previous: first };
  }
  return { expected: unique(paths.map((path) => path[0]!)), token: first, previous };
}

function unique<T>(list: T[]): T[] {
  return [...new Set(list)];
}

function matches(token: Token, type: TokenType): boolean {
  return token.tokenType === type || (token.tokenType.CATEGORIES ?? []).includes(type);
}
