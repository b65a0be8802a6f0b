/** The few functions of bezier-js (an independent library, MIT) that the tests hold the geometry against. */
declare module 'bezier-js' {
  interface Place {
    readonly x: number;
    readonly y: number;
  }
  export class Bezier {
    constructor(...coordinates: readonly Place[]);
    length(): number;
    get(t: number): Place;
    derivative(t: number): Place;
    split(from: number, to: number): Bezier;
    /** Parameters, or pairs of them as `t1/t2`. */
    intersects(
      other: Bezier | { readonly p1: Place; readonly p2: Place },
      threshold?: number,
    ): readonly (number | string)[];
    curvature(t: number): { readonly k: number };
  }
}
