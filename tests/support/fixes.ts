/** Repairs that are offered at a marked place, taken, and compared with the text that should come of them. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks/index';
import { fixesAt } from '../../server/features/fixes';
import { draftOf, uri } from './features';
import { marked } from './marks';

/** Applies the fix of this title that is offered at the mark, and compares the text after it. */
export function checkFix(text: string, title: string, after: string): void {
  const place = marked(text);
  const { pattern } = draftOf(place.text);
  const offered = fixesAt(check(pattern), uri, place.offset, place.offset);
  const chosen = offered.find(({ fix }) => fix.title === title);
  assert.ok(chosen, `offered: ${offered.map(({ fix }) => fix.title).join('; ') || 'nothing'}`);
  const edits = [...chosen.fix.edits].sort((a, b) => b.place.from - a.place.from);
  const mended = edits.reduce(
    (was, edit) => was.slice(0, edit.place.from) + edit.text + was.slice(edit.place.to),
    place.text,
  );
  assert.equal(mended, after);
}
