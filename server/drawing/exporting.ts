/**
 * What can be exported of a pattern, as plain data: the command line makes it from its own options, an editor asks a person
 * from it, so that the two can't offer different things. And the messages between an editor and the exporter that it starts.
 */

/** How an option is answered. */
export type Answering =
  | 'one' // one of `values`, or the person's own words where it is `open`
  | 'some' // any of `values`
  | 'words'
  | 'switch';

export interface ExportOption {
  /** As the command line has it: `--paper`. */
  readonly flag: string;
  /** `Paper` */
  readonly title: string;
  readonly words: string;
  readonly answering: Answering;
  readonly values: readonly string[];
  /** What a value is called where it does not speak for itself: `de` is `Deutsch`. */
  readonly names?: Readonly<Record<string, string>>;
  readonly open: boolean;
  /** Of `some`: what stands for all of them; '' where saying nothing does. */
  readonly everything: string;
  /** What holds where nothing is said; '' where nothing does. */
  readonly fallback: string;
}

/** One thing that can be made: a PDF, an SVG, a cutting list. */
export interface ExportTarget {
  /** `draw svg`, stable, so that an editor may remember it. */
  readonly id: string;
  readonly title: string;
  readonly words: string;
  /** What the command line is called with. */
  readonly args: readonly string[];
  /** Whether it is told a folder or a file. */
  readonly place: { readonly flag: string; readonly is: 'folder' | 'file' };
  readonly options: readonly ExportOption[];
}

/** A text as it is open, which counts before the disk. */
export interface OpenText {
  readonly path: string;
  readonly text: string;
}

interface Question {
  readonly id: number;
  /** The folder that relative paths count from. */
  readonly folder: string;
  readonly texts: readonly OpenText[];
}

export type ToExporter =
  | (Question & { readonly ask: 'targets'; readonly file: string; readonly language: string })
  | (Question & { readonly ask: 'run'; readonly args: readonly string[] });

export interface Ran {
  /** 0: done; 1: done as far as errors in the pattern let it; 2: not done. */
  readonly exit: number;
  readonly out: string;
  readonly err: string;
}

export type FromExporter =
  | { readonly id: number; readonly targets: readonly ExportTarget[] }
  | { readonly id: number; readonly ran: Ran };

/** The argument with which the command line's program serves an editor over the channel of its parent. */
export const EXPORTER = '--for-an-editor';
