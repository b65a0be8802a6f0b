/** Asks what to export and how: a list of what can be made, then its options with their answers, each row to be changed. */
import * as vscode from 'vscode';
import type { ExportOption, ExportTarget } from '../../server/drawing/exporting';
import { listed, optionsFor, shownAnswer, type Answers } from './answers';
import type { Choice, Picker } from './picker';

export interface Wanted {
  readonly target: ExportTarget;
  readonly answers: Answers;
  readonly folder: string;
}

/** @returns undefined where the person left it */
export async function askTarget(
  picker: Picker,
  targets: readonly ExportTarget[],
  last: string | undefined,
  name: string,
): Promise<ExportTarget | undefined> {
  const rows = targets.map((target): Choice<ExportTarget> => ({
    label: target.title,
    description: target.id === last ? vscode.l10n.t('as last time') : '',
    detail: target.words,
    value: target,
  }));
  rows.sort((a, b) => Number(b.value.id === last) - Number(a.value.id === last));
  const picked = await picker.pick(rows, {
    title: vscode.l10n.t('Export {0}', name),
    placeholder: vscode.l10n.t('What is to be made?'),
  });
  return picked?.[0];
}

type Does = 'export' | 'folder' | ExportOption;

/** Shows the options until *Export* is chosen. */
export async function askOptions(picker: Picker, first: Wanted, name: string): Promise<Wanted | undefined> {
  let wanted = first;
  for (;;) {
    const { target, folder } = wanted;
    const [does] =
      (await picker.pick(rowsOf(wanted), {
        title: vscode.l10n.t('Export {0}: {1}', name, target.title),
        placeholder: vscode.l10n.t('Enter exports; choose a line to change it'),
      })) ?? [];
    if (does === undefined) return undefined;
    if (does === 'export') return wanted;
    if (does === 'folder') wanted = { ...wanted, folder: (await askFolder(folder)) ?? folder };
    else wanted = await changed(picker, wanted, does);
  }
}

function rowsOf({ target, answers, folder }: Wanted): Choice<Does>[] {
  const there = vscode.workspace.asRelativePath(folder);
  return [
    {
      label: `$(check) ${vscode.l10n.t('Export')}`,
      description: vscode.l10n.t('into {0}', there),
      value: 'export',
    },
    ...optionsFor(target, answers).map((option): Choice<Does> => ({
      label: option.title,
      description: shownAnswer(option, answers),
      detail: option.words,
      value: option,
    })),
    { label: vscode.l10n.t('Folder'), description: there, value: 'folder' },
  ];
}

async function askFolder(folder: string): Promise<string | undefined> {
  const picked = await vscode.window.showOpenDialog({
    canSelectFiles: false,
    canSelectFolders: true,
    defaultUri: vscode.Uri.file(folder),
    openLabel: vscode.l10n.t('Export here'),
  });
  return picked?.[0]?.fsPath;
}

async function changed(picker: Picker, wanted: Wanted, option: ExportOption): Promise<Wanted> {
  const before = wanted.answers[option.flag] ?? option.fallback;
  const answer = await ask(picker, option, before);
  return answer === undefined ? wanted : { ...wanted, answers: { ...wanted.answers, [option.flag]: answer } };
}

async function ask(picker: Picker, option: ExportOption, before: string): Promise<string | undefined> {
  switch (option.answering) {
    case 'switch':
      return before === 'yes' ? 'no' : 'yes';
    case 'some':
      return askSome(picker, option, before);
    case 'one':
      return askOne(picker, option, before);
    case 'words':
      return askWords(picker, option, before);
  }
}

const askWords = (picker: Picker, { title, words, flag }: ExportOption, before: string) =>
  picker.write(
    title,
    flag === '--set' ? vscode.l10n.t('{0}; several with semicolons between', words) : words,
    before,
  );

async function askSome(
  picker: Picker,
  { title, words, values, everything }: ExportOption,
  before: string,
): Promise<string | undefined> {
  const chosen = before === everything ? values : listed(before);
  const rows = values.map((value) => ({ label: value, value, picked: chosen.includes(value) }));
  const names = await picker.pick(rows, { title, placeholder: words, many: true });
  if (names === undefined) return undefined;
  return names.length === values.length ? everything : names.join(', ');
}

const OTHER = vscode.l10n.t('Something else…');

/** A value of the list, or words of one's own where the option takes any. */
async function askOne(picker: Picker, option: ExportOption, before: string): Promise<string | undefined> {
  const { title, words, values, names, open, fallback } = option;
  const rows: Choice<string>[] = values.map((value) => ({
    ...{ label: names?.[value] ?? value, value },
    description: value === before ? vscode.l10n.t('now') : '',
  }));
  if (fallback === '') rows.unshift({ label: vscode.l10n.t('As the pattern says'), value: '' });
  if (open) rows.push({ label: OTHER, value: OTHER });
  const [value] = (await picker.pick(rows, { title, placeholder: words })) ?? [];
  return value === OTHER ? askWords(picker, option, before) : value;
}
