/** Times of every request of an editor, each asked after a keystroke on a long pattern, without the transport. */
import { Desk } from '../../server/lsp/desk';
import { nothingBehind } from '../../server/lsp/files';
import { services } from '../../server/lsp/services';
import { ALL_BUT_PICTURES } from '../../server/lsp/shown';
import { Lines } from '../../server/features/lines';
import { random } from '../support/random';
import { roomOf } from '../support/room';
import { door, lines, oneDraft, type Case } from './cases';
import { keystrokes } from './edits';
import { quantile, timed } from './figures';
import { judged, ms, type Say } from './whole';

/** What a person waits for without noticing: an answer within a frame or so. */
const BUDGET = 20;

/** Rounds of keystrokes: the first warm the machine up. */
const [WARM, COUNT] = [6, 20];

/** Lines of the pattern that a window shows at once. */
const IN_SIGHT = 60;

type Times = Map<string, number[]>;

/** Parameters of every request in one: each reads its own. */
function paramsAt(uri: string, text: string, offset: number): object {
  const all = new Lines(text);
  const position = all.position(offset);
  const range = { start: position, end: { line: position.line + IN_SIGHT, character: 0 } };
  return {
    ...{ textDocument: { uri }, uri, position, positions: [position], range, ranges: [range] },
    context: { diagnostics: [], includeDeclaration: true, triggerKind: 1 },
    ...{ files: [], amounts: [1], trial: { set: {} }, piece: 'front', source: 'front/side' },
    ...{ query: 'side', newName: 'zz-other', options: { tabSize: 2, insertSpaces: true } },
    ...{ ch: '\n', item: { name: '', uri, range, selectionRange: range } },
  };
}

/** What a client sends back of an answer: an entry of a hierarchy at once, the mark of its colours the next time. */
function carried(method: string, result: unknown, last: Record<string, unknown>): object {
  const [item] = Array.isArray(result) ? (result as object[]) : [];
  if (method === 'textDocument/prepareCallHierarchy' && item !== undefined) return { item };
  const { resultId } = (result ?? {}) as { resultId?: string };
  if (method.startsWith('textDocument/semanticTokens') && resultId !== undefined)
    last.previousResultId = resultId;
  return {};
}

function measure(one: Case): { drafted: number[]; asked: Times } {
  const desk = new Desk({ ...nothingBehind, read: (uri) => door.read(uri), home: () => 'file:///' });
  const room = roomOf(desk);
  room.diagnostics.fades = true;
  desk.shows = { ...ALL_BUT_PICTURES, pictures: true };
  desk.documents.open({ uri: one.uri, languageId: 'draftwright', version: 1, text: one.text });
  const asked: Times = new Map();
  const drafted: number[] = [];
  const below = random(7);
  const last: Record<string, unknown> = {};
  let { text } = one;
  keystrokes(text, WARM + COUNT, 11).forEach((key, i) => {
    const contentChanges = [{ range: new Lines(text).range(key.from, key.to), text: key.text }];
    desk.documents.change({ textDocument: { uri: one.uri, version: i + 2 }, contentChanges });
    text = text.slice(0, key.from) + key.text + text.slice(key.to);
    const { ms: took } = timed(() => desk.problems(desk.pattern(one.uri)));
    const near = i % 2 === 0 ? key.from : below(text.length);
    const params: Record<string, unknown> = { ...paramsAt(one.uri, text, near), ...last };
    for (const { method, handle } of services) {
      if (method.startsWith('draftwright/')) continue;
      const { ms: own, result } = timed(() => handle(params as never, room));
      Object.assign(params, carried(method, result, last));
      if (i >= WARM) asked.set(method, [...(asked.get(method) ?? []), own]);
    }
    if (i >= WARM) drafted.push(took);
  });
  return { drafted, asked };
}

export function measureFeatures(say: Say): void {
  for (const one of [lines(10000), oneDraft(10000)]) {
    say(`\nRequests on ${one.name}, milliseconds at the 50th and 95th of a hundred, each after a keystroke`);
    const { drafted, asked } = measure(one);
    say(`the findings themselves ${ms(quantile(drafted, 0.5))}/${ms(quantile(drafted, 0.95))}`);
    for (const [method, times] of asked)
      say(`${method}: ${ms(quantile(times, 0.5))}/${judged(quantile(times, 0.95), BUDGET)}`);
  }
}
