/** The view of the preview with the real server behind it: what it asks is answered, what it tries is drawn. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { methods, type FromView, type ToView } from '../../client/preview/protocol';
import { Desk } from '../../server/lsp/desk';
import { nothingBehind } from '../../server/lsp/files';
import { previewServices } from '../../server/lsp/preview-services';
import { Previews } from '../../server/lsp/previews';
import { roomOf } from './room';
import { openView, URI, type OpenOptions, type Opened } from './preview-page';

const SEAT = 'preview';
const sample = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../../samples/${name}`, import.meta.url)), 'utf8');

export interface Live extends Opened {
  /** Passes on what the view has told since, and answers it, till it has no more to say; what it told. */
  settle(): Promise<FromView[]>;
}

/** A text of its own, or a sample of the wardrobe with the bodies of the company. */
export async function liveView(browser: Browser, text: string, options: OpenOptions = {}): Promise<Live> {
  const desk = new Desk(nothingBehind);
  const open = (uri: string, words: string) =>
    desk.documents.open({ uri, languageId: 'draftwright', version: 1, text: words });
  open(URI.replace(/[^/]*$/, 'bodies/company.draft'), sample('bodies/company.draft'));
  open(URI, text.endsWith('.draft') ? sample(text) : text);
  const sent: ToView[] = [];
  const previews = new Previews(desk, (message) => void sent.push(message));
  const view = await openView(browser, options);
  const where = { uri: URI, seat: SEAT };
  const hear = (message: FromView): ToView[] => {
    if (message.type === 'ready' || message.type === 'ask')
      return [previews.open({ ...where, want: 'want' in message ? message.want : undefined })];
    if (message.type === 'try') previews.tryOut({ ...where, trial: message.trial });
    if (message.type === 'want') previews.wants({ ...where, want: message.want });
    if (message.type !== 'question') return sent.splice(0);
    const asked = previewServices.find(({ method }) => method === methods[message.about])!;
    const answer = asked.handle({ ...message.params, ...where } as never, roomOf(desk, previews));
    return [{ type: 'answered', id: message.id, answer: answer ?? null }];
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
  return { ...view, settle };
}
