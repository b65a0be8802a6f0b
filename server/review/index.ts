/** The door of the comparison: two patterns as they were taken, and what changed between them. */
export { compare, isSame } from './compare';
export * from './model';
export * from './words';
export { take, takenSize, type Side, type Taken, type TakenSize } from './take';
