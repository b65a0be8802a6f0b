/** The table of what the extension activates; package.json lists the same commands, and a test compares the two. */
import type * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { activateCompare } from './compare';
import { activateNewPattern } from './new-pattern';
import { activatePages } from './pages';
import { activatePreview } from './preview/host';
import { activateSweep } from './sweep';

export interface Feature {
  /** What the feature is called in a message to the person. */
  readonly name: string;
  /** The commands that the feature registers. */
  readonly commands: readonly string[];
  activate(context: vscode.ExtensionContext, client: BaseLanguageClient): vscode.Disposable;
}

/** @param activateExport what export comes to in this host: it needs a machine behind the page */
export const featuresWith = (activateExport: Feature['activate']): readonly Feature[] => [
  { name: 'pages about problems', commands: [], activate: activatePages },
  { name: 'new pattern', commands: ['draftwright.newPattern'], activate: activateNewPattern },
  {
    name: 'preview',
    commands: [
      'draftwright.openPreviewToSide',
      'draftwright.openPreview',
      'draftwright.openAnotherPreview',
      'draftwright.measureInPreview',
      'draftwright.findInPreview',
      'draftwright.listPreview',
      'draftwright.walkSeamInPreview',
      'draftwright.layTogetherInPreview',
      'draftwright.closeDartsInPreview',
      'draftwright.leftOverRightInPreview',
    ],
    activate: activatePreview,
  },
  { name: 'check for every size', commands: ['draftwright.checkEverySize'], activate: activateSweep },
  {
    name: 'export',
    commands: ['draftwright.export', 'draftwright.copyAsSvg'],
    activate: activateExport,
  },
  {
    name: 'comparison',
    commands: ['draftwright.compareWith', 'draftwright.compareWithHead', 'draftwright.compareWithCommit'],
    activate: activateCompare,
  },
];
