/** What lies on a piece: notches, darts, marks, pleats and gathers. */
import { Pieces } from './pieces';
import type { Bare } from './statements';
import type * as s from './syntax';
import * as t from './tokens';
import { W } from './tokens';

type PlaceRange = { from?: s.Place; to?: s.Place };
type MarkWords = { size?: s.MarkSize; lengthways: boolean };

export abstract class Marks extends Pieces {
  public notch = this.RULE('notch', (): Bare<s.NotchNode> => {
    this.CONSUME(W.notch);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(W.on);
    const on = this.SUBRULE(this.operand);
    this.CONSUME(W.at);
    const place = this.SUBRULE(this.place);
    const count = this.OPTION(() => {
      this.CONSUME(t.Comma);
      return this.OR<1 | 2 | 3>([
        { ALT: () => (this.CONSUME(W.single), 1) },
        { ALT: () => (this.CONSUME(W.double), 2) },
        { ALT: () => (this.CONSUME(W.triple), 3) },
      ]);
    });
    const when = this.OPTION2(() => this.SUBRULE(this.when));
    const countStated = count !== undefined;
    return { kind: 'notch', name, on, place, count: count ?? 1, countStated, ...(when && { when }) };
  });

  public dart = this.RULE('dart', (): Bare<s.DartNode> => {
    this.CONSUME(W.dart);
    const name = this.nameOf(this.CONSUME(t.Name));
    const words: Partial<s.DartNode> = {};
    this.OR([
      {
        ALT: () => {
          this.CONSUME(W.on);
          const on = this.SUBRULE(this.operand);
          this.CONSUME(W.at);
          const place = this.SUBRULE(this.place);
          Object.assign(words, { on, place });
          this.MANY(() => {
            this.CONSUME(t.Comma);
            Object.assign(words, this.SUBRULE(this.dartWord));
          });
        },
      },
      {
        ALT: () => {
          Object.assign(words, this.SUBRULE2(this.dartWord));
          this.MANY2(() => {
            this.CONSUME2(t.Comma);
            Object.assign(words, this.SUBRULE3(this.dartWord));
          });
        },
      },
    ]);
    return { kind: 'dart', name, ...words };
  });

  public dartWord = this.RULE('dartWord', (): Partial<s.DartNode> =>
    this.OR<Partial<s.DartNode>>([
      {
        ALT: () => {
          this.CONSUME(W.swings);
          this.CONSUME(W.about);
          return { swingsAbout: this.SUBRULE(this.operand) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.sewn);
          this.CONSUME(W.to);
          const sewnTo = this.SUBRULE(this.value);
          this.CONSUME(W.short);
          return { sewnTo };
        },
      },
      { ALT: () => ({ pressed: this.SUBRULE(this.pressing) }) },
      {
        ALT: () => {
          const value = this.SUBRULE2(this.value);
          return this.OR2<Partial<s.DartNode>>([
            { ALT: () => (this.CONSUME(W.wide), { width: value }) },
            { ALT: () => (this.CONSUME(W.long), { long: value }) },
          ]);
        },
      },
    ]),
  );

  public pressing = this.RULE('pressing', (): s.Pressing => {
    const from = this.from();
    this.CONSUME(W.pressed);
    return this.OR<s.Pressing>([
      {
        ALT: () => {
          this.CONSUME(W.toward);
          const toward = this.SUBRULE(this.operand);
          return { way: 'toward', toward, at: this.span(from) };
        },
      },
      { ALT: () => (this.CONSUME(W.up), { way: 'up', at: this.span(from) }) },
      { ALT: () => (this.CONSUME(W.down), { way: 'down', at: this.span(from) }) },
      { ALT: () => (this.CONSUME(W.open), { way: 'open', at: this.span(from) }) },
    ]);
  });

  public fishDart = this.RULE('fishDart', (): Bare<s.FishDartNode> => {
    this.CONSUME(W.fish);
    this.CONSUME(W.dart);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(W.from);
    const from = this.SUBRULE(this.operand);
    this.CONSUME(W.to);
    const to = this.SUBRULE2(this.operand);
    this.CONSUME(t.Comma);
    const width = this.SUBRULE(this.value);
    this.CONSUME(W.wide);
    this.CONSUME(W.at);
    const place = this.SUBRULE(this.place);
    const pressed = this.OPTION(() => {
      this.CONSUME2(t.Comma);
      return this.SUBRULE(this.pressing);
    });
    return { kind: 'fish-dart', name, from, to, width, place, ...(pressed && { pressed }) };
  });

  public mark = this.RULE('mark', (): Bare<s.MarkNode> => {
    const word = this.OR<s.MarkWord>([
      { ALT: () => (this.CONSUME(W.mark), 'mark') },
      { ALT: () => (this.CONSUME(W.button), 'button') },
      { ALT: () => (this.CONSUME(W.buttonhole), 'buttonhole') },
      { ALT: () => (this.CONSUME(W.drill), 'drill') },
      { ALT: () => (this.CONSUME(W.eyelet), 'eyelet') },
      { ALT: () => (this.CONSUME(W.bone), 'bone') },
      { ALT: () => (this.CONSUME(W.tape), 'tape') },
      { ALT: () => (this.CONSUME(W.topstitch), 'topstitch') },
      { ALT: () => (this.CONSUME(W.crease), 'crease') },
    ]);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(t.Equals);
    const phrase = this.SUBRULE(this.phrase);
    const words: MarkWords = { lengthways: false };
    this.MANY(() => {
      this.CONSUME(t.Comma);
      Object.assign(words, this.SUBRULE(this.markWord));
    });
    return { kind: 'mark', word, name, phrase, ...words };
  });

  public markWord = this.RULE('markWord', (): Partial<MarkWords> =>
    this.OR<Partial<MarkWords>>([
      {
        ALT: () => {
          const lengthways = this.OR3<boolean>([
            { ALT: () => (this.CONSUME(W.along), true) },
            { ALT: () => (this.CONSUME(W.across), false) },
          ]);
          this.CONSUME(W.the);
          this.CONSUME(W.edge);
          return { lengthways };
        },
      },
      {
        ALT: () => {
          const by = this.SUBRULE(this.value);
          return this.OR2<Partial<MarkWords>>([
            { ALT: () => (this.CONSUME(W.wide), { size: { by, word: 'wide' } }) },
            { ALT: () => (this.CONSUME(W.long), { size: { by, word: 'long' } }) },
          ]);
        },
      },
    ]),
  );

  public balance = this.RULE('balance', (): Bare<s.BalanceNode> => {
    this.CONSUME(W.balance);
    this.CONSUME(W.line);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(W.from);
    const from = this.SUBRULE(this.operand);
    this.CONSUME(W.to);
    return { kind: 'balance', name, from, to: this.SUBRULE2(this.operand) };
  });

  public marks = this.RULE('marks', (): Bare<s.MarksNode> => {
    const word = this.OR<s.MarksNode['word']>([
      { ALT: () => (this.CONSUME(W.marks), 'marks') },
      { ALT: () => (this.CONSUME(W.buttons), 'buttons') },
      { ALT: () => (this.CONSUME(W.buttonholes), 'buttonholes') },
      { ALT: () => (this.CONSUME(W.drills), 'drills') },
      { ALT: () => (this.CONSUME(W.eyelets), 'eyelets') },
      { ALT: () => (this.CONSUME(W.bones), 'bones') },
    ]);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(t.Equals);
    const count = this.SUBRULE(this.value);
    this.CONSUME(W.along);
    const along = this.SUBRULE(this.operand);
    const range = this.OPTION(() => this.SUBRULE(this.placeRange));
    const words: MarkWords = { lengthways: false };
    this.MANY(() => {
      this.CONSUME(t.Comma);
      Object.assign(words, this.SUBRULE(this.markWord));
    });
    return { kind: 'marks', word, name, count, along, ...range, ...words };
  });

  public placeRange = this.RULE('placeRange', (): PlaceRange => {
    this.CONSUME(W.from);
    const from = this.SUBRULE(this.place);
    this.CONSUME(W.to);
    return { from, to: this.SUBRULE2(this.place) };
  });

  public label = this.RULE('label', (): Bare<s.LabelNode> => {
    this.CONSUME(W.label);
    const text = this.textOf(this.CONSUME(t.Text));
    const place = this.OPTION(() => {
      this.CONSUME(W.at);
      return this.SUBRULE(this.phrase);
    });
    return place ? { kind: 'label', text, place } : { kind: 'label', text };
  });

  // --------------------------------------------------------------------------------------- pleats and gathers

  public pleats = this.RULE('pleats', (): Bare<s.PleatsNode> => {
    this.CONSUME(W.pleats);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(t.Equals);
    const count = this.SUBRULE(this.value);
    const form = this.OR<s.PleatsNode['form']>([
      { ALT: () => (this.CONSUME(W.knife), 'knife') },
      { ALT: () => (this.CONSUME(W.box), 'box') },
      { ALT: () => (this.CONSUME(W.inverted), 'inverted') },
    ]);
    this.CONSUME(W.on);
    const on = this.SUBRULE(this.operand);
    const where = this.OR2<Pick<s.PleatsNode, 'places' | 'from' | 'to'>>([
      { ALT: () => ({ places: this.SUBRULE(this.pleatPlaces) }) },
      { ALT: () => this.SUBRULE(this.placeRange) },
    ]);
    const words: Partial<s.PleatsNode> = {};
    this.MANY(() => {
      this.CONSUME(t.Comma);
      Object.assign(words, this.SUBRULE(this.pleatWord));
    });
    return { kind: 'pleats', name, count, form, on, added: false, outOfWidth: false, ...where, ...words };
  });

  public pleatPlaces = this.RULE('pleatPlaces', (): NonNullable<s.PleatsNode['places']> => {
    this.CONSUME(W.at);
    const distances = [this.SUBRULE(this.value)];
    this.MANY(() => {
      this.CONSUME(t.Comma);
      distances.push(this.SUBRULE2(this.value));
    });
    this.CONSUME(W.from);
    return { distances, from: this.SUBRULE(this.operand) };
  });

  public pleatWord = this.RULE('pleatWord', (): Partial<s.PleatsNode> =>
    this.OR<Partial<s.PleatsNode>>([
      {
        ALT: () => {
          this.CONSUME(W.taking);
          const taking = this.SUBRULE(this.value);
          this.CONSUME(W.each);
          return { taking };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.folds);
          this.CONSUME(W.toward);
          return { folds: this.SUBRULE(this.operand) };
        },
      },
      {
        ALT: () => {
          this.CONSUME(W.stitched);
          this.CONSUME(W.down);
          return { stitchedDown: this.SUBRULE2(this.value) };
        },
      },
      { ALT: () => (this.CONSUME(W.added), { added: true }) },
      {
        ALT: () => {
          this.CONSUME(W.out);
          this.CONSUME(W.of);
          this.CONSUME(W.the);
          this.CONSUME(W.width);
          this.CONSUME(W.drawn);
          return { outOfWidth: true };
        },
      },
    ]),
  );

  public gathers = this.RULE('gathers', (): Bare<s.GathersNode> => {
    this.CONSUME(W.gathers);
    const name = this.nameOf(this.CONSUME(t.Name));
    this.CONSUME(W.on);
    const on = this.SUBRULE(this.operand);
    const range = this.OPTION(() => this.SUBRULE(this.placeRange));
    this.CONSUME(t.Comma);
    this.CONSUME(W.to);
    return { kind: 'gathers', name, on, ...range, length: this.SUBRULE(this.value) };
  });
}
