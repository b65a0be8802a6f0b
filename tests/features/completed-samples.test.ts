/** Words of the wardrobe, taken out and written again: each is offered where its author wrote it. */
import assert from 'node:assert/strict';
import { Workshop } from '../../server/drafting/workshop';
import { completions } from '../../server/features/completion';
import { usedFiles } from '../../server/features/used-names';
import { Files, nothingBehind } from '../../server/lsp/files';
import { files, read } from '../support/sources';

const folder = 'file:///wardrobe';
const samples = files('samples').filter((path) => path.endsWith('.draft') && !path.includes('/faults/'));
const uriOf = (path: string): string => `${folder}/${path.slice('samples/'.length)}`;
const desk = new Files(nothingBehind);
desk.setFolders([folder]);
for (const path of samples) desk.setBuffer(uriOf(path), read(path));

/** Before a name that its author made up: after a head, and where a statement names what comes of it. */
const MADE_UP =
  /^(let|choose|solve|measure|point|line|curve|arc|circle|draft|piece|lining|facing|band|strip|seam|finish|notch|body|sizes|size.*|dart|fish dart|drill|balance line|pleats|buttons|button|buttonhole|eyelet|mark|snap|buttonholes|bone|eyelets)\s+$|^then dart\s+$|^divide.*\b(along|into)\s+$|^divide.* into .*,\s+$|^join.* into\s+$|^choose.* (=|among)\s|^(cut|strip).* in\s+$/;

interface Word {
  readonly text: string;
  readonly from: number;
  readonly line: string;
}

/** The words of a text that are names of something there is, or words of the language. */
function* wordsOf(text: string): Generator<Word> {
  let [offset, inOutline] = [0, false];
  for (const line of text.split('\n')) {
    const code = line.replace(/"[^"]*"/g, (quoted) => ' '.repeat(quoted.length)).replace(/#.*$/, '');
    if (/\boutline\b/.test(code)) inOutline = true;
    if (code.trim() === '}') inOutline = false;
    for (const { 0: word, index } of code.matchAll(/\p{L}[\p{L}\p{Nd}-]*/gu)) {
      const before = code.slice(0, index).trimStart();
      const namesEdge = inOutline && before === '' && word !== 'then';
      const isUnit = /\d$/.test(before);
      if (isUnit || namesEdge || MADE_UP.test(before)) continue;
      yield { text: word, from: offset + index, line: line.trim() };
    }
    offset += line.length + 1;
  }
}

/** One word in so many is tried: all of them take two minutes, and their kinds come round often enough. */
const EACH = 10;

describe('a word of which the first letter is written', () => {
  samples.forEach((path, nth) => {
    it(`is among what is offered, wherever it stands in ${path}`, () => {
      const [uri, text] = [uriOf(path), read(path)];
      const workshop = new Workshop(desk);
      const tried = [...wordsOf(text)].filter((_, i) => i % EACH === nth % EACH);
      const missed = tried.filter((word) => !offered(workshop, uri, text, word).includes(word.text));
      assert.deepEqual(
        missed.map(({ text: word, line }) => `${word} in: ${line}`),
        [],
      );
      assert.ok(tried.length > 5);
    }).timeout(20000);
  });
});

function offered(workshop: Workshop, uri: string, text: string, word: Word): readonly string[] {
  const typed = text.slice(0, word.from + 1) + text.slice(word.from + word.text.length);
  workshop.setText(uri, typed);
  const pattern = workshop.pattern(uri);
  const sources = pattern.files.map((one) => ({ uri: one, file: workshop.source(one)! }));
  const used = () => usedFiles(sources, (from, way) => new URL(way, from).href);
  const all = sources.map(({ file }) => file);
  const { items } = completions(pattern, all, typed, word.from + 1, { paths: () => [], used });
  return items.map(({ label }) => label);
}
