/** The table of written sheets: what each is called, and who makes it. */
import type { Pattern } from '../../drafting/model';
import { cuttingList } from './cutting';
import { finishedSheet } from './finished';
import { fitSheet } from './fit';
import { measuringSheet } from './measuring';
import { sewingSheet } from './sewing';
import type { Given, SheetKind, WrittenSheet } from './sheet';

const MAKERS: Readonly<Record<SheetKind, (pattern: Pattern, given: Given) => WrittenSheet>> = {
  measuring: measuringSheet,
  cutting: cuttingList,
  finished: finishedSheet,
  fit: fitSheet,
  sewing: sewingSheet,
};

export const writtenSheet = (kind: SheetKind, pattern: Pattern, given: Given = {}): WrittenSheet =>
  MAKERS[kind](pattern, given);

export { SHEET_KINDS, type Given, type SheetKind, type WrittenSheet } from './sheet';
