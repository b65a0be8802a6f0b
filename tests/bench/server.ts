/** Times inside the language server: from a change as the client sends it to what is sent back, without the transport. */
import { Desk } from '../../server/lsp/desk';
import { Diagnostics } from '../../server/lsp/diagnostics';
import { nothingBehind } from '../../server/lsp/files';
import { Previews } from '../../server/lsp/previews';
import { Lines } from '../../server/features/lines';
import { door, generated, type Case } from './cases';
import { keystrokes } from './edits';
import { quantile, timed } from './figures';
import { judged, ms, type Say } from './whole';

interface Times {
  readonly changed: number;
  readonly told: number;
  readonly shown: number;
}

/** An open text with its preview, and what was sent, in characters. */
export class Served {
  private readonly desk = new Desk({
    ...nothingBehind,
    read: (uri) => door.read(uri),
    home: () => 'file:///',
  });
  private readonly previews = new Previews(this.desk, (sheet) => this.sent(sheet));
  private readonly diagnostics = new Diagnostics(
    (params) => this.sent(params),
    this.desk,
    (code) => `file:///checks/${code}.md`,
  );
  private version = 1;
  characters = 0;

  constructor(private readonly one: Case) {
    const { uri, text } = one;
    this.desk.documents.open({ uri, languageId: 'draftwright', version: 1, text });
    this.previews.open({ uri });
  }

  private sent(message: unknown): void {
    this.characters += JSON.stringify(message).length;
  }

  stroke(text: string, change: { from: number; to: number; text: string }): Times {
    const { uri } = this.one;
    const range = new Lines(text).range(change.from, change.to);
    this.version++;
    const { ms: changed } = timed(() => {
      const contentChanges = [{ range, text: change.text }];
      this.desk.documents.change({ textDocument: { uri, version: this.version }, contentChanges });
    });
    const pattern = () => this.desk.pattern(uri);
    const { ms: told } = timed(() => {
      this.diagnostics.publish(this.desk.documents.get(uri)!, pattern());
    });
    const { ms: shown } = timed(() => this.previews.update(this.desk.documents.get(uri)!.key));
    return { changed, told, shown };
  }
}

const ROUNDS = [7, 11];

function measure(one: Case): { times: readonly Times[]; characters: number } {
  const served = new Served(one);
  let times: Times[] = [];
  let { text } = one;
  for (const seed of ROUNDS) {
    times = [];
    served.characters = 0;
    for (const key of keystrokes(one.text, 240, seed)) {
      times.push(served.stroke(text, key));
      text = text.slice(0, key.from) + key.text + text.slice(key.to);
    }
  }
  return { times, characters: served.characters / times.length };
}

/** @param only the part of a case's name; all when empty */
export function measureServer(say: Say, only: string): void {
  say('\nIn the language server, milliseconds at the 50th and 95th of a hundred keystrokes');
  for (const one of generated().filter(({ name }) => name.includes(only))) {
    const { times, characters } = measure(one);
    const pair = (take: (one: Times) => number): string =>
      [0.5, 0.95].map((share) => ms(quantile(times.map(take), share))).join('/');
    const all = times.map(({ changed, told, shown }) => changed + told + shown);
    say(
      `${one.name}: text ${pair((t) => t.changed)}  findings ${pair((t) => t.told)}  preview ${pair((t) => t.shown)}  all ${ms(quantile(all, 0.5))}/${judged(quantile(all, 0.95), one.budget.drawing)}, ${(characters / 1024).toFixed(1)} KiB sent each`,
    );
  }
}
