/** All of the geometry, for those who would rather not remember which file a thing is in. */
export * from './accuracy';
export * from './arc';
export * from './box';
export * from './cubic';
export * from './feet';
export * from './hobby';
export * from './hollow';
export * from './intersect';
export type { CornerKind, CornerRule, CutCorner, Which } from './joint';
export * from './length';
export * from './offset';
export * from './outline';
export * from './parallel';
export * from './path';
export * from './point';
export * from './reach';
export * from './solve';
export * from './transform';
