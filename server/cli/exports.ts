/** What the command line can export, read off its own commands: a new option of draw, print or sheet is offered at once. */
import type { Command, Option } from 'commander';
import type { Pattern } from '../drafting/model';
import { draw } from '../drawing/draw';
import type { Answering, ExportOption, ExportTarget } from '../drawing/exporting';
import { papers } from '../drawing/paper/papers';
import { LANGUAGE_FLAG, LANGUAGE_NAMES } from './language';

/** The commands in the order in which they are offered, and the option whose every choice is offered by itself. */
const COMMANDS: readonly { readonly name: string; readonly each?: string }[] = [
  { name: 'print' },
  { name: 'draw', each: '--format' },
  { name: 'sheet', each: '--kind' },
];

/** Titles for what is offered; what has none is called by its choice. */
const TITLES: Readonly<Record<string, string>> = {
  print: 'PDF in full size',
  'draw svg': 'SVG',
  'draw png': 'PNG picture',
  'draw dxf': 'DXF of pieces',
  'draw dxf-drawing': 'DXF drawing',
  'sheet measuring': 'Measuring sheet',
  'sheet cutting': 'Cutting list',
  'sheet finished': 'Finished measurements',
  'sheet fit': 'Fit sheet',
  'sheet sewing': 'Sewing order',
  'sheet all': 'All written sheets',
};

const WORDS: Readonly<Record<string, string>> = {
  'draw svg': 'a drawing in full size, for programs that draw with lines',
  'draw png': 'a picture to look at',
  'draw dxf': 'the pieces by ASTM D6673, for programs that lay and cut them',
  'draw dxf-drawing': 'plain lines on layers, for plotters and cutters',
  'sheet measuring': 'what has to be measured, in taking order, with blanks',
  'sheet cutting': 'what is cut of which cloth',
  'sheet finished': 'what the garment measures, beside the body',
  'sheet fit': 'for the fitting, with room to write',
  'sheet sewing': 'what is sewn when, and why',
  'sheet all': 'one after the other',
};

/** Where a result goes is asked by itself, and help is no option of the result. */
const PLACES: ReadonlySet<string> = new Set(['--out', '--output']);

export function exportTargets(program: Command, pattern: Pattern): readonly ExportTarget[] {
  return COMMANDS.flatMap(({ name, each }): ExportTarget[] => {
    const command = program.commands.find((one) => one.name() === name);
    const place = command?.options.find(({ long }) => PLACES.has(long ?? ''));
    if (command === undefined || place === undefined) return [];
    const options = command.options
      .filter((one) => one !== place && one.long !== each && !one.hidden)
      .map((one) => optionOf(one, name, pattern));
    const choices = command.options.find(({ long }) => long === each)?.argChoices;
    return (choices ?? [undefined]).map((choice): ExportTarget => {
      const id = choice === undefined ? name : `${name} ${choice}`;
      return {
        id,
        title: TITLES[id] ?? choice ?? name,
        words: WORDS[id] ?? command.description(),
        args: choice === undefined ? [name] : [name, `${each}=${choice}`],
        place: { flag: place.long!, is: place.long === '--out' ? 'folder' : 'file' },
        options,
      };
    });
  });
}

function optionOf(option: Option, command: string, pattern: Pattern): ExportOption {
  const flag = option.long ?? option.flags;
  const known = valuesOf(flag, command, pattern);
  const values = option.argChoices ?? known?.values ?? [];
  const { defaultValue: fallback } = option as { defaultValue?: unknown };
  return {
    flag,
    title: titleOf(flag),
    words: OWN_WORDS[flag] ?? option.description,
    answering: answering(option, known),
    values,
    ...(flag === LANGUAGE_FLAG && { names: LANGUAGE_NAMES }),
    open: option.argChoices === undefined,
    everything: flag === '--sizes' ? 'all' : '',
    fallback:
      command === 'sheet' && flag === '--format' ? 'pdf' : typeof fallback === 'string' ? fallback : '',
  };
}

function answering(option: Option, known: Known | undefined): Answering {
  if (option.isBoolean() || (!option.required && !option.optional)) return 'switch';
  if (option.argChoices !== undefined) return 'one';
  if (known === undefined || known.values.length === 0) return 'words';
  return known.some ? 'some' : 'one';
}

interface Known {
  readonly values: readonly string[];
  readonly some?: boolean;
}

/** Values that the pattern or the trade knows, for options that take other words as well. */
function valuesOf(flag: string, command: string, pattern: Pattern): Known | undefined {
  switch (flag) {
    case '--for':
      return { values: pattern.everybody.map(({ name, size }) => [name, size].filter(Boolean).join(' ')) };
    case '--pieces':
      return { values: draw(pattern).pieces.map(({ name }) => name), some: true };
    case '--sizes':
      return { values: pattern.sizes, some: true };
    case '--paper': {
      const names = papers.map(({ name }) => name);
      return { values: command === 'print' ? [...names, 'whole', 'roll 914mm'] : names };
    }
    default:
      return undefined;
  }
}

const OWN_TITLES: Readonly<Record<string, string>> = {
  '--for': 'Body or size',
  '--set': 'Choices',
  [LANGUAGE_FLAG]: 'Language of the words',
};

/** An editor has a language, which the form begins with. */
const OWN_WORDS: Readonly<Record<string, string>> = {
  [LANGUAGE_FLAG]: 'what is written on it and said of it',
};

/** `--as-laid` is `As laid`. */
function titleOf(flag: string): string {
  const words = flag.replace(/^-+/, '').replace(/-/g, ' ');
  return OWN_TITLES[flag] ?? words.charAt(0).toUpperCase() + words.slice(1);
}
