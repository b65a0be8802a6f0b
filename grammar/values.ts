/** Values, conditions and places: what stands inside every statement. */
import { EmbeddedActionsParser, NoViableAltException, type ParserMethod, type TokenType } from 'chevrotain';
import { provider, refusalOf, type Refusal } from './refusals';
import type * as s from './syntax';
import * as t from './tokens';
import { W, type Token } from './tokens';

/** What a rule noticed in a statement that it could still read. */
export interface Note {
  readonly code: string;
  readonly from: number;
  readonly to: number;
}

/** Lookahead of two tokens is what the grammar was proven with. */
export const LOOKAHEAD = 2;

/** Methods of the library's parser that its declarations leave out. */
interface Internals {
  raiseNoAltException(this: unknown, occurrence: number, messages?: string): never;
  getCurrRuleFullName(this: unknown): string;
  SAVE_ERROR(this: unknown, error: NoViableAltException): NoViableAltException;
}

export abstract class Values extends EmbeddedActionsParser {
  /** Offset of the statement's first character: spans count from there. */
  base = 0;
  notes: Note[] = [];
  refusal: Refusal | undefined;
  /** What the alternatives of the last refusal could have begun with. */
  private paths: TokenType[][] | undefined;
  private readonly pathsAt = new Map<string, TokenType[][]>();

  /** Points, lines and curves: read further down the chain of classes. */
  protected abstract phrase: ParserMethod<[], s.Expr>;

  constructor(validate: boolean) {
    const report: { parser?: Values } = {};
    super(t.vocabulary, {
      maxLookahead: LOOKAHEAD,
      recoveryEnabled: false,
      skipValidations: !validate,
      errorMessageProvider: provider((refusal, paths) => {
        if (!report.parser) return;
        report.parser.refusal = refusal;
        report.parser.paths = paths;
      }),
    });
    report.parser = this;
  }

  /**
   * The library works out anew, for milliseconds, what could have stood at an alternative whenever none fits. A file
   * full of mistakes can't wait for that: each place in the grammar is worked out once.
   */
  protected raiseNoAltException(occurrence: number, messages?: string): never {
    const key = `${this.getCurrRuleFullName()} ${occurrence}`;
    const known = this.pathsAt.get(key);
    if (known) {
      const [token, next, previous] = [this.LA(1), this.LA(2), this.LA(0)];
      this.refusal = refusalOf(known, [token, next] as Token[], previous as Token);
      throw this.saved(new NoViableAltException('none', token, previous));
    }
    try {
      const { prototype } = EmbeddedActionsParser as unknown as { prototype: Internals };
      return prototype.raiseNoAltException.call(this, occurrence, messages);
    } finally {
      if (this.paths) this.pathsAt.set(key, this.paths);
    }
  }

  private getCurrRuleFullName(): string {
    const { prototype } = EmbeddedActionsParser as unknown as { prototype: Internals };
    return prototype.getCurrRuleFullName.call(this);
  }

  private saved(error: NoViableAltException): NoViableAltException {
    const { prototype } = EmbeddedActionsParser as unknown as { prototype: Internals };
    return prototype.SAVE_ERROR.call(this, error);
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
    return { kind: 'ref', path, at: path.length === 1 ? path[0]!.at : this.span(from) };
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
