/** The door of the comparison: two patterns as they were taken, and what changed between them. */
export * from './counts';
export { compare, isSame } from './compare';
export * from './model';
export { platesOf, type Plate } from './plate';
export * from './phrases';
export * from './rows';
export { plateDocument, plateElements, type SvgPlates } from './svg';
export * from './words';
export { take, takenSize, type Side, type Taken, type TakenSize } from './take';
export { sheetElement, type Sheet } from './page';
export { pageScript } from './page-script';
export { PAGE_STYLE } from './page-style';
