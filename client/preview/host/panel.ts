/** One preview: its panel in the editor, and the messages between its view and the language server. */
import * as vscode from 'vscode';
import { newNonce } from '../../nonce';
import {
  methods,
  type Answered,
  type FromView,
  type Laid,
  type Marked,
  type Sheet,
  type ToView,
  type Trial,
  type Want,
} from '../protocol';
import type { LanguageClientLike } from './client';
import { Hand } from './hand';
import { LastDrawn } from './last';
import { newestWins } from './newest';
import { previewPage } from './page';
import { goTo, showText, type Highlight, type Sought } from './source';
import { takeAway } from './take-away';
import { applyTrial } from './trial';

export const VIEW_TYPE = 'draftwright.preview';

/** What all previews share. */
export interface Shared {
  readonly client: LanguageClientLike;
  readonly extensionUri: vscode.Uri;
  readonly highlight: Highlight;
}

export class PreviewPanel {
  private live = false;
  private trial: Trial = { set: {} };
  private want: Want = {};
  /** Unpinned: it shows the draft that the person turns to. */
  pinned = true;
  private last = new LastDrawn();
  private hand: Hand;
  private readonly ask = newestWins(() => this.askForFullSheet());

  constructor(
    readonly panel: vscode.WebviewPanel,
    public uri: string,
    readonly seat: string,
    private readonly shared: Shared,
    private readonly cursor: () => void,
  ) {
    this.hand = new Hand(shared.client, uri);
    panel.webview.onDidReceiveMessage((message: FromView) => this.receive(message));
    panel.onDidChangeViewState(() => this.rest());
    panel.onDidDispose(() => this.close());
    this.setPage();
  }

  /**
   * Shows another file from now on.
   * @param saved the file is what the shown text was saved as: it is seen as that was, with what is tried
   */
  turnTo(uri: string, saved = false): void {
    if (uri === this.uri) return;
    this.close();
    const was = saved ? this.uri : undefined;
    this.uri = uri;
    this.trial = { set: {} };
    this.last = new LastDrawn();
    this.hand = new Hand(this.shared.client, uri);
    this.setPage(was);
  }

  /** Passes a sheet of the server on; a view that has not begun yet will be sent a full one. */
  forward(message: Sheet | Laid): void {
    if (!this.live) return;
    if (message.type === 'sheet') this.last.take(message);
    this.tell(message);
  }

  mark(marked: Marked): void {
    if (this.live) this.tell(marked);
  }

  /** Begins again after the server was started anew: it has forgotten what this view holds. */
  begin(): void {
    if (this.panel.visible) this.ask();
  }

  private setPage(was?: string): void {
    const { webview } = this.panel;
    this.panel.title = vscode.l10n.t('Preview: {0}', vscode.Uri.parse(this.uri).path.split('/').pop() ?? '');
    const folder = vscode.Uri.joinPath(this.shared.extensionUri, 'dist');
    webview.options = { enableScripts: true, localResourceRoots: [folder] };
    const file = (name: string) => webview.asWebviewUri(vscode.Uri.joinPath(folder, name)).toString();
    webview.html = previewPage({
      source: webview.cspSource,
      script: file('preview.js'),
      style: file('preview.css'),
      nonce: newNonce(),
      language: vscode.l10n.bundle === undefined ? 'en' : vscode.env.language,
      words: vscode.l10n.bundle,
      ...this.where,
      was,
    });
  }

  private tell(message: ToView): void {
    void this.panel.webview.postMessage(message);
  }

  private receive(message: FromView): void {
    switch (message.type) {
      case 'ready':
        if (message.trial) this.trial = message.trial;
        this.pinned = message.pinned ?? true;
        this.want = message.want ?? {};
        return this.ask();
      case 'ask':
        return this.ask();
      case 'try':
        return this.tryOut(message.trial);
      case 'want':
        return this.wants(message.want);
      case 'write':
        return void this.write(message.trial);
      case 'grip':
        return void this.grip(message.source, message.piece);
      case 'pull':
        return this.hand.pull(message.source, message.amounts);
      case 'release':
        return this.hand.release();
      case 'goto':
        return void goTo(this.shared.client, this.sought(message), this.panel);
      case 'history':
        return void this.goBack(message.way);
      case 'save':
        return void this.save();
      case 'pin':
        return void (this.pinned = message.pinned);
      case 'question':
        return void this.handOn(message);
      case 'export':
      case 'copy':
      case 'copied':
        return void takeAway(message, this.uri, this.trial, (picture) => this.tell(picture));
      case 'select':
        return void this.shared.highlight.show(this.uri, message.source);
    }
  }

  private async askForFullSheet(): Promise<void> {
    const sheet = await this.shared.client.sendRequest<Sheet | null>(methods.openPreview, {
      ...this.where,
      last: this.last.pieces,
      trial: this.trial,
      want: this.want,
    });
    if (!sheet || !this.panel.visible) return;
    this.live = true;
    this.forward(sheet);
    this.cursor();
  }

  private tryOut(trial: Trial): void {
    this.trial = trial;
    if (!this.live) return;
    const params = { ...this.where, trial };
    void this.shared.client.sendNotification(methods.tryOut, params).catch(() => undefined);
  }

  private wants(want: Want): void {
    this.want = want;
    if (!this.live) return;
    const params = { ...this.where, want };
    void this.shared.client.sendNotification(methods.want, params).catch(() => undefined);
  }

  /** Writes what was tried into the text as one step that can be undone; only then is it no longer tried. */
  private async write(trial: Trial): Promise<void> {
    if (!(await applyTrial(this.shared.client, this.uri, trial))) return;
    this.tell({ type: 'written' });
    this.tryOut({ set: {} });
  }

  /** The editor takes back only what is in front: the text for a moment, then the preview again. */
  private async goBack(way: 'undo' | 'redo'): Promise<void> {
    await showText(vscode.Uri.parse(this.uri), this.panel);
    await vscode.commands.executeCommand(way);
    this.panel.reveal(this.panel.viewColumn);
    // being in front alone does not always give a page the keyboard
    await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
  }

  private async save(): Promise<void> {
    const here = vscode.Uri.parse(this.uri).toString();
    await vscode.workspace.textDocuments.find(({ uri }) => uri.toString() === here)?.save();
  }

  private async grip(source: string, piece: string): Promise<void> {
    const gripped = await this.hand.grip(source, piece).catch(() => undefined);
    if (gripped) this.tell(gripped);
  }

  /** Every question is answered, so that the view does not wait for nothing. */
  private async handOn({ id, about, params }: Extract<FromView, { type: 'question' }>): Promise<void> {
    const asked = { ...params, ...this.where };
    const answer = await this.shared.client.sendRequest<unknown>(methods[about], asked).catch(() => null);
    const answered: Answered = { type: 'answered', id, answer };
    this.tell(answered);
  }

  private sought({ source, problem }: Extract<FromView, { type: 'goto' }>): Sought {
    return { ...this.where, source, ...(problem && { problem }) };
  }

  private get where(): { readonly uri: string; readonly seat: string } {
    return { uri: this.uri, seat: this.seat };
  }

  /** A hidden view is thrown away by the editor and starts again when it is shown: till then no work is done for it. */
  private rest(): void {
    if (!this.panel.visible) this.close();
  }

  private close(): void {
    if (!this.live) return;
    this.live = false;
    void this.shared.client.sendNotification(methods.closePreview, this.where).catch(() => undefined);
  }
}
