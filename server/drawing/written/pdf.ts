/** Prints written sheets as PDF pages whose words can be selected and searched. */
import { say } from '../../../grammar/say';
import { PaperDocument } from '../paper/document';
import { missingLetters } from '../paper/font';
import type { Paper } from '../paper/papers';
import { pagesOf } from './layout';
import { harmless } from './plain';
import { inWordsThroughout, type WrittenSheet } from './sheet';

export interface SheetPdf {
  readonly value: Uint8Array;
  readonly pages: number;
}

/** The same sheets give the same bytes: no date, no number drawn by lot. */
export async function sheetsPdf(made: readonly WrittenSheet[], paper: Paper): Promise<SheetPdf> {
  const sheets = made.map(inWordsThroughout);
  const document = await PaperDocument.start(harmless(sheets.map(({ heading }) => heading).join('; ')));
  const pages = pagesOf(sheets.map(withMissing), paper, document.font);
  for (const content of pages) document.page(paper.width, paper.height, content);
  return { value: await document.end(), pages: pages.length };
}

/** Says on the sheet which letters its font can't show. */
function withMissing(sheet: WrittenSheet): WrittenSheet {
  const { heading, words, tables, after } = sheet;
  const cells = tables.flatMap((table) => [
    table.heading ?? '',
    ...table.rows.flatMap(({ cells: own, beneath = [] }) => [...own.map((cell) => cell ?? ''), ...beneath]),
  ]);
  const missing = missingLetters([heading, ...words, ...cells, ...after]).filter(
    (letter) => letter !== '\ufffd',
  );
  if (missing.length === 0) return sheet;
  return {
    ...sheet,
    after: [
      ...after,
      missing.length === 1
        ? say`A letter of these words can't be printed in this font: empty boxes stand for what is missing.`
        : say`${missing.length} letters of these words can't be printed in this font: empty boxes stand for what is missing.`,
    ],
  };
}
