/** The view of the preview with the real server behind it: what it asks is answered, what it tries is drawn. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import type { WorkspaceEdit } from 'vscode-languageserver';
import { methods, type FromView, type Grip, type ToView } from '../../client/preview/protocol';
import { Desk } from '../../server/lsp/desk';
import { nothingBehind } from '../../server/lsp/files';
import { previewServices } from '../../server/lsp/preview-services';
import { Previews } from '../../server/lsp/previews';
import { roomOf } from './room';
import { openView, URI, type OpenOptions, type Opened } from './preview-page';

const SEAT = 'preview';
const sample = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../../samples/${name}`, import.meta.url)), 'utf8');

/** The files of the wardrobe that a text uses, and those that they use. */
function usedBy(words: string): string[] {
  const own = [...words.matchAll(/^use "(.*?)"/gm)].map(([, name]) => name!);
  return [...new Set([...own.flatMap((name) => usedBy(sample(name))), ...own])];
}

export interface Live extends Opened {
  /** Passes on what the view has told since, and answers it, till it has no more to say; what it told. */
  settle(): Promise<FromView[]>;
  /** The pattern as it is written by now. */
  text(): string;
}

/** A text of its own, or a sample of the wardrobe with the bodies of the company. */
export async function liveView(browser: Browser, text: string, options: OpenOptions = {}): Promise<Live> {
  const desk = new Desk(nothingBehind);
  const open = (uri: string, words: string) =>
    desk.documents.open({ uri, languageId: 'draftwright', version: 1, text: words });
  const words = text.endsWith('.draft') ? sample(text) : text;
  for (const name of usedBy(words)) open(URI.replace(/[^/]*$/, name), sample(name));
  open(URI, words);
  const sent: ToView[] = [];
  const previews = new Previews(desk, (message) => void sent.push(message));
  const view = await openView(browser, options);
  const where = { uri: URI, seat: SEAT };
  const ask = (about: keyof typeof methods, params: object): unknown => {
    const asked = previewServices.find(({ method }) => method === methods[about])!;
    return asked.handle({ ...params, ...where } as never, roomOf(desk, previews));
  };
  const write = (edit: WorkspaceEdit | null): void => {
    const contentChanges = [...(edit?.changes?.[URI] ?? [])].map(({ range, newText }) => ({
      range,
      text: newText,
    }));
    // the last first, so that no edit moves the place of another
    contentChanges.sort(
      (a, b) => b.range.start.line - a.range.start.line || b.range.start.character - a.range.start.character,
    );
    const version = desk.documents.get(URI)!.version + 1;
    const key = desk.documents.change({ textDocument: { uri: URI, version }, contentChanges });
    if (key !== undefined) previews.update(key);
  };
  const hear = (message: FromView): ToView[] => {
    if (message.type === 'ready' || message.type === 'ask')
      return [previews.open({ ...where, want: 'want' in message ? message.want : undefined })];
    if (message.type === 'try') previews.tryOut({ ...where, trial: message.trial });
    if (message.type === 'want') previews.wants({ ...where, want: message.want });
    if (message.type === 'grip')
      return [{ type: 'gripped', source: message.source, grip: ask('grip', message) as Grip }];
    if (message.type === 'pull') write(ask('pull', message) as WorkspaceEdit | null);
    if (message.type !== 'question') return sent.splice(0);
    return [{ type: 'answered', id: message.id, answer: ask(message.about, message.params) ?? null }];
  };
  const settle = async (): Promise<FromView[]> => {
    const told: FromView[] = [];
    for (let heard = await view.told(); heard.length > 0; heard = await view.told()) {
      told.push(...heard);
      for (const answer of heard.flatMap(hear)) await view.send(answer);
    }
    return told;
  };
  await settle();
  return { ...view, settle, text: () => desk.documents.get(URI)!.text };
}
