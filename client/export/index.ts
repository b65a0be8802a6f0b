/** Export in the editor: the same things with the same options as the command line makes, from the text as it is open. */
import { dirname } from 'node:path';
import * as vscode from 'vscode';
import type { Trial } from '../preview/protocol';
import { readDialect } from '../../grammar/dialect';
import type { ExportTarget } from '../../server/drawing/exporting';
import {
  argsFor,
  firstAnswers,
  inLanguageOf,
  NOTHING_REMEMBERED,
  remember,
  type Answers,
  type Remembered,
} from './answers';
import { DRAW_FOR_PREVIEW, exportCommands, type Copied } from './commands';
import { drawn } from './copy';
import { Exporter, type Desk } from './exporter';
import { targetsInWords } from './in-words';
import { askOptions, askTarget, type Wanted } from './form';
import { Picker } from './picker';
import { tell, withProgress } from './run';

const KEY = 'draftwright.export';
const NOTHING_TRIED: Trial = { set: {} };

export function activateExport(context: vscode.ExtensionContext): vscode.Disposable {
  const exports = new Exports(context);
  const { registerCommand } = vscode.commands;
  return vscode.Disposable.from(
    registerCommand(exportCommands[0], (uri?: vscode.Uri, trial?: Trial) =>
      exports.guarded(() => exports.export(uri, trial)),
    ),
    registerCommand(exportCommands[1], (uri?: vscode.Uri, trial?: Trial) =>
      exports.guarded(() => exports.copySvg(uri, trial)),
    ),
    registerCommand(DRAW_FOR_PREVIEW, (uri: vscode.Uri, trial: Trial) => exports.picture(uri, trial)),
  );
}

class Exports {
  constructor(private readonly context: vscode.ExtensionContext) {}

  /** A fault is said in words; nothing of it reaches the editor's own error box. */
  async guarded(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (fault) {
      const why = fault instanceof Error ? fault.message : String(fault);
      void vscode.window.showErrorMessage(vscode.l10n.t('It could not be exported: {0}', why));
    }
  }

  async export(asked?: vscode.Uri, trial: Trial = NOTHING_TRIED): Promise<void> {
    const uri = fileOf(asked);
    if (uri === undefined) return;
    const [file, desk] = [uri.fsPath, deskOf(uri)];
    const name = file.slice(dirname(file).length + 1).replace(/\.draft$/, '');
    const exporter = this.start();
    try {
      const wanted = await this.ask(exporter, file, name, trial);
      if (wanted === undefined) return;
      const { target, answers, folder } = wanted;
      const args = argsFor(target, file, answers, folder);
      // the text may have gone on while the form was open
      const ran = await withProgress(
        vscode.l10n.t('Exporting {0}: {1}', name, target.title),
        exporter,
        folder,
        () => exporter.run(args, deskOf(uri)),
      );
      if (ran !== undefined) void tell(ran, desk);
    } finally {
      exporter.stop();
    }
  }

  /** Goes through the form, and remembers what was answered. */
  private async ask(
    exporter: Exporter,
    file: string,
    name: string,
    trial: Trial,
  ): Promise<Wanted | undefined> {
    const picker = new Picker(vscode.l10n.t('Export {0}', name));
    try {
      const before = this.context.workspaceState.get<Remembered>(KEY) ?? NOTHING_REMEMBERED;
      const targets = targetsInWords(await exporter.targets(file, deskOf(vscode.Uri.file(file))));
      const target = await askTarget(picker, targets, before.last, name);
      if (target === undefined) return undefined;
      const usual = { ...inDialect(target), ...inLanguageOf(vscode.env.language) };
      const first = {
        target,
        answers: { ...usual, ...firstAnswers(target, before, trial) },
        folder: before.folder ?? dirname(file),
      };
      const wanted = await askOptions(picker, first, name);
      if (wanted !== undefined)
        await this.context.workspaceState.update(
          KEY,
          remember(before, target, wanted.answers, wanted.folder, usual),
        );
      return wanted;
    } finally {
      picker.dispose();
    }
  }

  async copySvg(asked?: vscode.Uri, trial: Trial = NOTHING_TRIED): Promise<void> {
    const uri = fileOf(asked);
    if (uri === undefined) return;
    const made = await this.drawn(uri, 'svg', trial);
    if ('reason' in made) return void vscode.window.showErrorMessage(made.reason);
    await vscode.env.clipboard.writeText(new TextDecoder().decode(made.bytes));
    vscode.window.setStatusBarMessage(vscode.l10n.t('The drawing is on the clipboard as SVG.'), 4000);
  }

  async picture(uri: vscode.Uri, trial: Trial): Promise<Copied> {
    if (fileOf(uri) === undefined) return { reason: '' };
    return this.drawn(uri, 'png', trial).catch((fault: Error) => ({ reason: fault.message }));
  }

  private async drawn(uri: vscode.Uri, as: 'svg' | 'png', trial: Trial): Promise<Copied> {
    const exporter = this.start();
    try {
      const made = await drawn(exporter, as, {
        ...{ file: uri.fsPath, trial, desk: deskOf(uri) },
        language: inLanguageOf(vscode.env.language),
      });
      const nothing = 'reason' in made && made.reason === '';
      return nothing ? { reason: vscode.l10n.t('Nothing was drawn.') } : made;
    } finally {
      exporter.stop();
    }
  }

  private start(): Exporter {
    return new Exporter({ module: vscode.Uri.joinPath(this.context.extensionUri, 'dist', 'cli.js').fsPath });
  }
}

/** Words of the trade as the setting has them, unless another dialect is chosen for what is written. */
function inDialect({ options }: ExportTarget): Answers {
  const set = readDialect(vscode.workspace.getConfiguration('draftwright').get('dialect'));
  const offered = options.some(({ flag }) => flag === '--words');
  return offered && set !== 'British' ? { '--words': set.toLowerCase() } : {};
}

/** The pattern that is meant; says what is in the way where there is none. */
function fileOf(asked: vscode.Uri | undefined): vscode.Uri | undefined {
  const { activeTextEditor, visibleTextEditors } = vscode.window;
  const seen = visibleTextEditors.find(({ document }) => document.languageId === 'draftwright');
  const uri = asked ?? (activeTextEditor ?? seen)?.document.uri;
  if (uri?.scheme === 'file' && uri.path.endsWith('.draft')) return uri;
  const why =
    uri?.scheme === 'untitled'
      ? vscode.l10n.t('Save the draft first: what is exported lies beside it.')
      : vscode.l10n.t('Open a .draft file of this machine first: its pieces are exported.');
  void vscode.window.showInformationMessage(why);
  return undefined;
}

function deskOf(uri: vscode.Uri): Desk {
  const open = vscode.workspace.textDocuments.filter(
    (document) => document.isDirty && document.languageId === 'draftwright' && document.uri.scheme === 'file',
  );
  return {
    folder: vscode.workspace.getWorkspaceFolder(uri)?.uri.fsPath ?? dirname(uri.fsPath),
    texts: open.map((document) => ({ path: document.uri.fsPath, text: document.getText() })),
  };
}
