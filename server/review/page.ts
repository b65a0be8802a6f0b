/**
 * A comparison as the body of a page: the rows on one side, the drawing on the other; one list for a file that is kept and
 * for a panel of the editor. Every row that has a mark on the drawing bears its number.
 */
import { say } from '../../grammar/say';
import { group, leaf, text } from '../drawing/xml';
import { decimal } from '../drawing/lines';
import { both } from './causes';
import type { Both, Review } from './model';
import type { Plate } from './plate';
import type { Row } from './rows';
import { plateElements } from './svg';
import { causeWords, seamWords, sizeWords, verdict } from './words';

/** One comparison on the page. */
export interface Sheet {
  readonly title: string;
  readonly review: Review;
  readonly plates: readonly Plate[];
  /** Problems, and what could not be drafted, in sentences. */
  readonly problems: readonly string[];
  readonly undrafted: readonly string[];
  readonly followed: readonly string[];
  /** Where a row stands in the texts, as attributes that a page can follow. */
  readonly place?: (
    place: Both<{ readonly uri: string; readonly from: number; readonly to: number }>,
  ) => Readonly<Record<string, string>>;
}

export const sheetElement = (sheet: Sheet): string =>
  group('section', { class: 'sheet' }, [
    ...(sheet.title === '' ? [] : [text('h2', {}, sheet.title)]),
    text(sheet.title === '' ? 'h2' : 'p', { class: 'verdict' }, verdict(sheet.review)),
    group('div', { class: 'columns' }, [rows(sheet), ...drawing(sheet)]),
  ]);

type Attributed = NonNullable<Sheet['place']>;

function rows(sheet: Sheet): string {
  const { problems, undrafted, followed, review, place = () => ({}) } = sheet;
  const decided = [
    ...review.causes.map((one) => text('li', place(one.place), causeWords(one))),
    ...followed.map((one) => text('li', { class: 'faint' }, one)),
  ];
  const plain = (words: readonly string[]): string[] => words.map((one) => text('li', {}, one));
  return group('div', { class: 'rows' }, [
    ...list(say`Decided`, decided),
    ...pieceRows(sheet, place),
    ...list(say`Seams`, seamRows(review, place)),
    ...list(say`Problems`, plain(problems)),
    ...list(say`Sizes`, plain(review.sizes.map((one) => sizeWords(one, review.unit)))),
    ...list(say`Not drafted`, plain(undrafted)),
  ]);
}

function seamRows({ seams, unit }: Review, place: Attributed): string[] {
  return seams.map((one) => {
    const { was, now } = one.seam;
    return text('li', place(both(was?.place, now?.place)), seamWords(one, unit));
  });
}

function pieceRows({ review, plates }: Sheet, place: Attributed): string[] {
  if (plates.length === 0) return [];
  const row = ({ mark, text: words, at }: Row): string =>
    leaf(
      'li',
      at === undefined ? {} : { 'data-row': mark, tabindex: 0 },
      `${text('b', {}, mark)} ${text('span', {}, words)}`,
    );
  const blocks = plates.map((plate, i) =>
    group('div', { class: 'piece' }, [
      text('h4', { 'data-piece': plate.number, ...place(review.pieces[i]?.place ?? {}) }, plate.title),
      ...(plate.rows.length === 0 ? [] : [group('ul', { class: 'marked' }, plate.rows.map(row))]),
    ]),
  );
  return [text('h3', {}, say`Pieces`), ...blocks];
}

const list = (title: string, items: readonly string[]): string[] =>
  items.length === 0 ? [] : [text('h3', {}, title), group('ul', {}, items)];

function drawing({ plates, title }: Sheet): string[] {
  if (plates.length === 0) return [];
  const { body, left, top, width, height } = plateElements(plates);
  const svg = group(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: [left, top, width, height].map(decimal).join(' '),
      role: 'img',
      'aria-label': say`${title}: the changed pieces, the new laid on the old`,
    },
    [...body],
  );
  const button = (mode: string, words: string): string =>
    text(
      'button',
      { type: 'button', 'data-mode': mode, 'aria-pressed': mode === 'overlay' ? 'true' : 'false' },
      words,
    );
  const modes = group('div', { class: 'modes', role: 'group', 'aria-label': say`How the two are shown` }, [
    button('overlay', say`On one another`),
    button('beside', say`Side by side`),
    button('swipe', say`Swipe`),
    text('button', { type: 'button', 'data-whole': '' }, say`Whole drawing`),
  ]);
  return [
    group('div', { class: 'drawn' }, [
      modes,
      group('div', { class: 'stage', 'data-mode': 'overlay' }, [svg]),
    ]),
  ];
}
