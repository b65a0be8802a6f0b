/** Asks what to export and how: a list of what can be made, then its options with their answers, each row to be changed. */
import * as vscode from 'vscode';
import type { ExportOption, ExportTarget } from '../../server/drawing/exporting';
import { listed, shownAnswer, type Answers } from './answers';

export interface Wanted {
  readonly target: ExportTarget;
  readonly answers: Answers;
  readonly folder: string;
}

/** @returns undefined where the person left it */
export async function askTarget(
  targets: readonly ExportTarget[],
  last: string | undefined,
  name: string,
): Promise<ExportTarget | undefined> {
  const rows = targets.map((target) => ({
    label: target.title,
    description: target.id === last ? 'as last time' : '',
    detail: target.words,
    target,
  }));
  rows.sort((a, b) => Number(b.target.id === last) - Number(a.target.id === last));
  const picked = await vscode.window.showQuickPick(rows, {
    title: `Export ${name}`,
    placeHolder: 'What is to be made?',
    matchOnDetail: true,
  });
  return picked?.target;
}

interface FormRow extends vscode.QuickPickItem {
  readonly does: 'export' | 'folder' | ExportOption;
}

/** Shows the options until *Export* is chosen. */
export async function askOptions(first: Wanted, name: string): Promise<Wanted | undefined> {
  let wanted = first;
  for (;;) {
    const { target, folder } = wanted;
    const picked = await vscode.window.showQuickPick(rowsOf(wanted), {
      title: `Export ${name}: ${target.title}`,
      placeHolder: 'Enter exports; choose a line to change it',
    });
    if (picked === undefined) return undefined;
    if (picked.does === 'export') return wanted;
    if (picked.does === 'folder') wanted = { ...wanted, folder: (await askFolder(folder)) ?? folder };
    else wanted = await changed(wanted, picked.does);
  }
}

function rowsOf({ target, answers, folder }: Wanted): FormRow[] {
  return [
    {
      label: '$(check) Export',
      description: `into ${vscode.workspace.asRelativePath(folder)}`,
      does: 'export',
    },
    ...target.options.map((option): FormRow => ({
      label: option.title,
      description: shownAnswer(option, answers),
      detail: option.words,
      does: option,
    })),
    { label: 'Folder', description: vscode.workspace.asRelativePath(folder), does: 'folder' },
  ];
}

async function askFolder(folder: string): Promise<string | undefined> {
  const picked = await vscode.window.showOpenDialog({
    canSelectFiles: false,
    canSelectFolders: true,
    defaultUri: vscode.Uri.file(folder),
    openLabel: 'Export here',
  });
  return picked?.[0]?.fsPath;
}

async function changed(wanted: Wanted, option: ExportOption): Promise<Wanted> {
  const before = wanted.answers[option.flag] ?? option.fallback;
  const answer = await ask(option, before);
  return answer === undefined ? wanted : { ...wanted, answers: { ...wanted.answers, [option.flag]: answer } };
}

function ask(option: ExportOption, before: string): Thenable<string | undefined> | string {
  switch (option.answering) {
    case 'switch':
      return before === 'yes' ? 'no' : 'yes';
    case 'some':
      return askSome(option, before);
    case 'one':
      return askOne(option, before);
    case 'words':
      return askWords(option, before);
  }
}

const askWords = ({ title, words, flag }: ExportOption, value: string): Thenable<string | undefined> =>
  vscode.window.showInputBox({
    title,
    value,
    prompt: flag === '--set' ? `${words}; several with semicolons between` : words,
  });

async function askSome({ title, words, values }: ExportOption, before: string): Promise<string | undefined> {
  const chosen = listed(before);
  const rows = values.map((label) => ({ label, picked: chosen.length === 0 || chosen.includes(label) }));
  const picked = await vscode.window.showQuickPick(rows, { title, placeHolder: words, canPickMany: true });
  if (picked === undefined) return undefined;
  const names = picked.map(({ label }) => label);
  return names.length === 0 || names.length === values.length ? '' : names.join(', ');
}

/** A value of the list, or words of one's own where the option takes any. */
async function askOne(option: ExportOption, before: string): Promise<string | undefined> {
  const { title, words, values, open, fallback } = option;
  const other = 'Something else…';
  const none = fallback === '' ? ['As the pattern says'] : [];
  const rows = [...none, ...values, ...(open ? [other] : [])].map((label) => ({
    label,
    description: label === before ? 'now' : '',
  }));
  const picked = await vscode.window.showQuickPick(rows, { title, placeHolder: words });
  if (picked === undefined) return undefined;
  if (none.includes(picked.label)) return '';
  return picked.label === other ? askWords(option, before) : picked.label;
}
