/** How a line or curve runs from point to point: headings, knots and options. */
import type * as s from './syntax';
import * as t from './tokens';
import { W } from './tokens';
import { Values } from './values';

export abstract class Ways extends Values {
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

  public via = this.RULE('via', (): s.Via => {
    const from = this.from();
    const point = this.SUBRULE(this.operand);
    const going = this.OPTION(() => {
      this.CONSUME(W.going);
      return this.SUBRULE(this.heading);
    });
    return going ? { point, going, at: this.span(from) } : { point, at: this.span(from) };
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
      { ALT: () => this.SUBRULE(this.headed) },
      { ALT: () => this.SUBRULE(this.fullness) },
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

  /** `leaving down`, `arriving square to L` */
  public headed = this.RULE('headed', (): s.WayOption => {
    const from = this.from();
    const kind = this.OR<'leaving' | 'arriving'>([
      { ALT: () => (this.CONSUME(W.leaving), 'leaving') },
      { ALT: () => (this.CONSUME(W.arriving), 'arriving') },
    ]);
    const heading = this.SUBRULE(this.heading);
    return { kind, heading, at: this.span(from) };
  });

  /** `fuller 20%`, `flatter 10%` */
  public fullness = this.RULE('fullness', (): s.WayOption => {
    const from = this.from();
    const kind = this.OR<'fuller' | 'flatter'>([
      { ALT: () => (this.CONSUME(W.fuller), 'fuller') },
      { ALT: () => (this.CONSUME(W.flatter), 'flatter') },
    ]);
    const by = this.SUBRULE(this.value);
    return { kind, by, at: this.span(from) };
  });
}
