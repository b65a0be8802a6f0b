/**
 * Traces, gradings, fittings and cloth: read by the whole grammar for their mistakes, but kept only as `LaterNode`s,
 * because no later phase acts on them yet.
 */
import { Sewing } from './sewing';
import type { Bare } from './statements';
import type * as s from './syntax';
import * as t from './tokens';
import { W, type Token } from './tokens';

export abstract class Later extends Sewing {
  private later(word: string, name?: unknown): Bare<s.LaterNode> {
    return name === undefined ? { kind: 'later', word } : { kind: 'later', word, name: this.nameOf(name) };
  }

  public trace = this.RULE('trace', (): Bare<s.LaterNode> => {
    this.CONSUME(W.trace);
    const name = this.CONSUME(t.Name);
    this.OPTION(() => {
      this.CONSUME(W.from);
      this.CONSUME(t.Text);
      this.OPTION2(() => {
        this.CONSUME(W.scale);
        this.CONSUME(t.Ratio);
      });
    });
    return this.later('trace', name);
  });

  public pair = this.RULE('pair', () => {
    this.CONSUME(t.Open);
    this.SUBRULE(this.value);
    this.CONSUME(t.Comma);
    this.SUBRULE2(this.value);
    this.CONSUME(t.Close);
  });

  public photo = this.RULE('photo', (): Bare<s.LaterNode> => {
    this.CONSUME(W.photo);
    this.CONSUME(t.Text);
    this.CONSUME(W.corners);
    this.SUBRULE(this.pair);
    this.SUBRULE2(this.pair);
    this.SUBRULE3(this.pair);
    this.SUBRULE4(this.pair);
    this.CONSUME(W.of);
    this.SUBRULE(this.value);
    this.CONSUME(W.by);
    this.SUBRULE2(this.value);
    return this.later('photo');
  });

  public traced = this.RULE('traced', (): Bare<s.LaterNode> => {
    const word = this.OR<string>([
      { ALT: () => this.CONSUME(W.point).image },
      { ALT: () => this.CONSUME(W.line).image },
      { ALT: () => this.CONSUME(W.curve).image },
      { ALT: () => this.CONSUME(W.arc).image },
    ]);
    const name = this.CONSUME(t.Name);
    this.OR2([
      {
        ALT: () => {
          this.CONSUME(W.at);
          this.SUBRULE(this.pair);
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.through);
          this.SUBRULE(this.dot);
          this.MANY(() => {
            this.CONSUME(t.Comma);
            this.SUBRULE2(this.dot);
          });
          this.OPTION(() => {
            this.CONSUME(W.within);
            this.SUBRULE(this.value);
          });
        },
      },
      {
        ALT: () => {
          this.CONSUME(t.Equals);
          this.SUBRULE(this.phrase);
        },
      },
    ]);
    return this.later(word, name);
  });

  public dot = this.RULE('dot', () => {
    this.OR([
      {
        ALT: () => {
          this.CONSUME(t.Name);
          this.OPTION(() => this.SUBRULE(this.pair));
        },
      },
      { ALT: () => this.SUBRULE2(this.pair) },
    ]);
  });

  public grade = this.RULE('grade', (): Bare<s.LaterNode> => {
    this.CONSUME(W.grade);
    const name = this.CONSUME(t.Name);
    this.CONSUME(W.for);
    this.CONSUME2(t.Name);
    return this.later('grade', name);
  });

  public graded = this.RULE('graded', (): Bare<s.LaterNode> => {
    const name = this.CONSUME(t.Name);
    this.SUBRULE(this.shifts);
    this.CONSUME(W.each);
    this.CONSUME(W.size);
    return this.later('graded', name);
  });

  // ------------------------------------------------------------------------------------------------- fittings

  public fitting = this.RULE('fitting', (): Bare<s.LaterNode> => {
    this.CONSUME(W.fitting);
    this.CONSUME(t.Text);
    this.CONSUME(t.Date);
    return this.later('fitting');
  });

  public pin = this.RULE('pin', (): Bare<s.LaterNode> => {
    this.OPTION(() => this.CONSUME(W.try));
    const word = (this.LA(1) as Token).text;
    this.SUBRULE(this.deed);
    const name = this.OPTION2(() => {
      this.CONSUME(W.as);
      return this.CONSUME(t.Name);
    });
    return this.later(word, name);
  });

  public deed = this.RULE('deed', () => {
    this.OR([
      { ALT: () => this.SUBRULE(this.takeIn) },
      {
        ALT: () => {
          this.CONSUME(W.shift);
          this.SUBRULE(this.target);
          this.SUBRULE(this.shifts);
        },
      },
      { ALT: () => this.SUBRULE(this.foldOut) },
      {
        ALT: () => {
          this.CONSUME(W.full);
          this.CONSUME(W.bust);
          this.CONSUME(W.by);
          this.SUBRULE(this.value);
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.pad);
          this.SUBRULE2(this.target);
          this.CONSUME2(W.by);
          this.SUBRULE2(this.value);
        },
      },
    ]);
  });

  public takeIn = this.RULE('takeIn', () => {
    this.OR([
      { ALT: () => (this.CONSUME(W.take), this.OPTION(() => this.CONSUME(W.in))) },
      { ALT: () => (this.CONSUME(W.let), this.CONSUME(W.out)) },
      { ALT: () => this.CONSUME(W.give) },
    ]);
    this.SUBRULE(this.target);
    this.CONSUME(W.by);
    this.SUBRULE(this.value);
    this.OPTION2(() =>
      this.OR2([
        { ALT: () => (this.CONSUME(W.each), this.CONSUME(W.edge)) },
        { ALT: () => (this.CONSUME2(W.in), this.CONSUME(W.all)) },
      ]),
    );
    this.OPTION3(() => this.SUBRULE(this.fade));
  });

  public foldOut = this.RULE('foldOut', () => {
    this.OR([{ ALT: () => this.CONSUME(W.fold) }, { ALT: () => this.CONSUME(W.open) }]);
    this.CONSUME(W.out);
    this.SUBRULE(this.target);
    this.CONSUME(W.by);
    this.SUBRULE(this.value);
    this.OPTION(() => this.SUBRULE(this.fade));
    this.OPTION2(() => {
      this.CONSUME(t.Comma);
      this.SUBRULE(this.place);
    });
  });

  public target = this.RULE('target', () => {
    this.OPTION(() => this.SUBRULE(this.side));
    this.OR([
      { ALT: () => (this.CONSUME(W.seam), this.SUBRULE(this.ref)) },
      { ALT: () => this.SUBRULE2(this.ref) },
    ]);
  });

  public fade = this.RULE('fade', () => {
    this.CONSUME(W.at);
    this.SUBRULE(this.place);
    this.MANY(() => {
      this.CONSUME(W.to);
      this.SUBRULE(this.value);
      this.CONSUME2(W.at);
      this.SUBRULE2(this.place);
    });
  });

  public undo = this.RULE('undo', (): Bare<s.LaterNode> => {
    this.CONSUME(W.undo);
    this.CONSUME(t.Text);
    this.OPTION(() => this.CONSUME(t.Name));
    return this.later('undo');
  });

  public follow = this.RULE('follow', (): Bare<s.LaterNode> => {
    this.CONSUME(W.follow);
    this.SUBRULE(this.refs);
    return this.later('follow');
  });

  public refs = this.RULE('refs', () => {
    this.SUBRULE(this.ref);
    this.MANY(() => {
      this.CONSUME(t.Comma);
      this.SUBRULE2(this.ref);
    });
  });

  public cutDay = this.RULE('cutDay', (): Bare<s.LaterNode> => {
    this.CONSUME(W.cut);
    this.CONSUME(t.Date);
    this.OPTION(() => this.SUBRULE(this.refs));
    return this.later('cutday');
  });

  // ---------------------------------------------------------------------------------------------------- cloth

  public cloth = this.RULE('cloth', (): Bare<s.LaterNode> => {
    this.CONSUME(W.cloth);
    return this.later('cloth', this.CONSUME(t.Name));
  });

  public width = this.RULE('width', (): Bare<s.LaterNode> => {
    this.CONSUME(W.width);
    this.SUBRULE(this.value);
    return this.later('width');
  });

  public price = this.RULE('price', (): Bare<s.LaterNode> => {
    this.CONSUME(W.price);
    this.CONSUME(t.Number);
    this.CONSUME(t.Name);
    this.CONSUME(W.per);
    this.CONSUME2(t.Name);
    return this.later('price');
  });

  public nap = this.RULE('nap', (): Bare<s.LaterNode> => (this.CONSUME(W['one-way']), this.later('one-way')));

  public shrinks = this.RULE('shrinks', (): Bare<s.LaterNode> => {
    this.CONSUME(W.shrinks);
    this.SUBRULE(this.value);
    this.CONSUME(W.along);
    this.CONSUME(t.Comma);
    this.SUBRULE2(this.value);
    this.CONSUME(W.across);
    return this.later('shrinks');
  });

  public stretch = this.RULE('stretch', (): Bare<s.LaterNode> => {
    this.CONSUME(W.stretch);
    this.SUBRULE(this.stretchWay);
    this.OPTION(() => {
      this.CONSUME(t.Comma);
      this.SUBRULE2(this.stretchWay);
    });
    return this.later('stretch');
  });

  public stretchWay = this.RULE('stretchWay', () => {
    this.SUBRULE(this.value);
    this.OR([{ ALT: () => this.CONSUME(W.along) }, { ALT: () => this.CONSUME(W.across) }]);
  });

  public biasHang = this.RULE('biasHang', (): Bare<s.LaterNode> => {
    this.CONSUME(W['bias-hang']);
    this.SUBRULE(this.value);
    this.CONSUME(W.over);
    this.SUBRULE2(this.value);
    this.OPTION(() => {
      this.CONSUME(t.Comma);
      this.CONSUME(W.narrows);
      this.SUBRULE3(this.value);
    });
    return this.later('bias-hang');
  });

  public repeat = this.RULE('repeat', (): Bare<s.LaterNode> => {
    this.CONSUME(W.repeat);
    this.SUBRULE(this.value);
    this.CONSUME(W.by);
    this.SUBRULE2(this.value);
    return this.later('repeat');
  });

  public stock = this.RULE('stock', (): Bare<s.LaterNode> => {
    this.CONSUME(W.in);
    this.CONSUME(W.stock);
    this.SUBRULE(this.value);
    return this.later('stock');
  });

  public turn = this.RULE('turn', (): Bare<s.LaterNode> => {
    this.CONSUME(W.turn);
    this.SUBRULE(this.value);
    return this.later('turn');
  });

  public notion = this.RULE('notion', (): Bare<s.LaterNode> => {
    this.CONSUME(W.notion);
    const name = this.CONSUME(t.Name);
    this.CONSUME(t.Equals);
    this.SUBRULE(this.value);
    this.OPTION(() => {
      this.CONSUME(t.Comma);
      this.CONSUME(t.Number);
      this.CONSUME2(t.Name);
      this.CONSUME(W.each);
    });
    return this.later('notion', name);
  });
}
