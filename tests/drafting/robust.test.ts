/** Throws slips of the finger at every sample: nothing breaks, and an edited pattern is the pattern read from scratch. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks/index';
import type { Pattern } from '../../server/drafting/model';
import { Workshop, type TextEdit } from '../../server/drafting/workshop';
import { draw } from '../../server/drawing/draw';
import { diskDoor } from '../support/door';
import { drafts, samples, sampleText, uriOf } from '../support/faults';
import { random } from '../support/random';

const door = diskDoor(samples);

/** Edits of each sample; every second one is taken back, so that texts stay near to what people write. */
const EDITS = 12;

const TOKEN = /[\p{L}\p{M}\d]+(?:[-.][\p{L}\d]+)*|"[^"\n]*"|\n|[^\s]/gu;

/** Something that a finger, a mouse or a copied line does to one token. */
function slip(text: string, below: (limit: number) => number): TextEdit {
  const tokens = [...text.matchAll(TOKEN)];
  const token = tokens[below(tokens.length)];
  if (token === undefined) return { from: 0, to: 0, text: 'let' };
  const [word, from, to] = [token[0], token.index, token.index + token[0].length];
  const other = tokens[below(tokens.length)]![0];
  const ways: readonly TextEdit[] = [
    { from, to, text: '' },
    { from, to, text: other },
    { from: to, to, text: ` ${word}` },
    { from, to: from, text: `${other} ` },
    { from, to: from + 1, text: '' },
    { from: to, to, text: ['{', '}', '(', ')', ',', '"', '\n', '#', '=', '0'][below(10)]! },
  ];
  return ways[below(ways.length)]!;
}

const applied = (text: string, edit: TextEdit): string =>
  text.slice(0, edit.from) + edit.text + text.slice(edit.to);

const undoing = (text: string, { from, to, text: put }: TextEdit): TextEdit => ({
  from,
  to: from + put.length,
  text: text.slice(from, to),
});

/** All that anybody can see of a pattern, as plain data. */
function seen(pattern: Pattern): unknown {
  const findings = check(pattern).map(({ code, severity, message, place, source, related, piece, fixes }) => {
    return { code, severity, message, place, source, related, piece, fixes };
  });
  const pieces = pattern.pieces.map(({ name, edges, gaps, allowances, notches, area, cut }) => ({
    name,
    edges: edges.map(({ name: edge, sewn, drawn, path, fromName, toName }) => {
      return { edge, sewn, drawn, fromName, toName, segments: path.segments };
    }),
    gaps: gaps.map(({ size, before, after }) => ({ size, before, after })),
    allowances: [...allowances],
    notches,
    area,
    cut,
  }));
  const seams = pattern.seams.map(({ name, leftLength, rightLength, difference }) => {
    return { name, leftLength, rightLength, difference };
  });
  const { values, shapes } = pattern;
  const kinds = [...shapes].map(([name, shape]) => [name, shape.kind]);
  return JSON.parse(
    JSON.stringify({ findings, values: [...values], kinds, pieces, seams, drawing: draw(pattern) }),
  );
}

function fromScratch(uri: string, text: string): unknown {
  const workshop = new Workshop(door);
  workshop.setText(uri, text);
  return seen(workshop.pattern(uri));
}

describe('patterns under random edits', () => {
  for (const [number, path] of [...drafts('.'), ...drafts('bodies'), ...drafts('faults')].entries()) {
    it(`${path} never breaks the engine, and comes out as if it were read anew`, () => {
      const uri = uriOf(path);
      const below = random(1009 * (number + 1));
      const workshop = new Workshop(door);
      let text = sampleText(path);
      workshop.setText(uri, text);
      for (let i = 0; i < EDITS; i++) {
        const edit = slip(text, below);
        const after = applied(text, edit);
        workshop.edit(uri, [edit]);
        assert.deepEqual(seen(workshop.pattern(uri)), fromScratch(uri, after), JSON.stringify(edit));
        if (i % 2 === 0) workshop.edit(uri, [undoing(text, edit)]);
        else text = after;
      }
      assert.deepEqual(seen(workshop.pattern(uri)), fromScratch(uri, text));
    });
  }

  it('tell what two things find at one place of the innermost one, whichever found it first', () => {
    const uri = uriOf('skirt.draft');
    const workshop = new Workshop(door);
    const text = `draft skirt, {
  point hem = origin
  point waist = hem up 60cm
  line side = hem to wais
}
`;
    workshop.setText(uri, text);
    workshop.pattern(uri);
    const from = text.indexOf('side');
    workshop.edit(uri, [{ from, to: from + 4, text: 'seamline' }]);
    const told = check(workshop.pattern(uri)).filter(({ code }) => code === 'unknown-name');
    assert.deepEqual(
      told.map(({ source }) => source),
      ['skirt/seamline'],
    );
  });
});
