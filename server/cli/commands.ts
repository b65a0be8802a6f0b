/** The command line: its commands, their options, and what each ends with. */
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { isDay } from '../../grammar/calendar';
import { say } from '../../grammar/say';
import { NO_SEVERITIES } from '../checks';
import type { BodyChoice } from '../drafting/model';
import { SHEET_KINDS } from '../drawing/written';
import { runCheck, type CheckOptions } from './check';
import { runCompare, type CompareOptions } from './compare/run';
import { runDraw, type DrawOptions } from './draw';
import { runExplain, type ExplainOptions } from './explain';
import { runFormat, type FormatOptions } from './format';
import { runGitSetup, type GitSetupOptions } from './git-setup';
import { runGitText } from './git-text';
import { helpInWords, refusalInWords } from './help';
import { CLEAN, Unable, UNABLE, type Exit, type Io } from './io';
import { inItsLanguage, language } from './language';
import { runLsp } from './lsp';
import { runMeasure, type MeasureOptions } from './measure';
import { bodyChoice, settings, severitySetting, type Choice } from './open';
import { runPrint, type PrintOptions } from './print';
import { runSheet, type SheetOptions } from './sheet';
import { sizeNames } from './sizes';

/** Runs one command line and answers what the process is to end with; `undefined` means that it goes on (a server). */
export const run = (args: readonly string[], io: Io): Promise<Exit | undefined> =>
  inItsLanguage(args, () => ran(args, io));

async function ran(args: readonly string[], io: Io): Promise<Exit | undefined> {
  let exit: Exit | undefined;
  const done = (code: Exit | undefined) => void (exit = code);
  try {
    await program(io, done).parseAsync(spread(args), { from: 'user' });
    return exit;
  } catch (fault) {
    return refused(fault, io);
  }
}

/** Usage errors and reasons why a command can't run end with 2; anything else is a fault of ours, and said to be one. */
function refused(fault: unknown, io: Io): Exit {
  if (fault instanceof CommanderError) return fault.exitCode === 0 ? CLEAN : UNABLE;
  if (fault instanceof Unable) io.err(`${fault.message}\n`);
  else io.err(`${say`This is a fault of Draftwright, not of your pattern: ${String(fault)}`}\n`);
  return UNABLE;
}

/** `--set A=1 B=2 FILE` as `--set A=1 --set B=2 FILE`: one option may hold several settings, and never eats a file. */
function spread(args: readonly string[]): string[] {
  const out: string[] = [];
  let setting = false;
  for (const arg of args) {
    if (setting && out.at(-1) !== '--set' && /^[^-=][^=]*=/.test(arg)) out.push('--set');
    else if (out.at(-1) !== '--set') setting = arg === '--set';
    out.push(arg);
  }
  return out;
}

/** The commands as they are, for whoever reads off what they offer. */
export const commandsFor = (io: Io): Command => program(io, () => undefined);

/** What prints a text with its figures, and what learns the language from an editor. */
const WORDLESS: ReadonlySet<string> = new Set(['git-text', 'lsp']);

type Done = (exit: Exit | undefined) => void;

function program(io: Io, done: Done): Command {
  const top = new Command('draftwright')
    .description(say`Patterns for cutting clothes as text: checked, measured and drawn.`)
    .version(process.env.DRAFTWRIGHT_VERSION ?? say`from source`, '--version', say`output the version number`)
    .exitOverride()
    .configureOutput({
      writeOut: io.out,
      writeErr: io.err,
      getOutHelpWidth: () => io.width,
      outputError: (words, write) => write(refusalInWords(words)),
    })
    .configureHelp(helpInWords)
    .helpOption('-h, --help', say`display help for command`)
    .helpCommand('help [command]', say`display help for command`)
    .showHelpAfterError(say`Try draftwright --help.`)
    .addHelpText(
      'after',
      `\n${say`Ends with 0 when there is nothing to mend, 1 for errors, 2 when it could not run.`}`,
    );
  addCheck(top, io, done);
  addDraw(top, io, done);
  addPrint(top, io, done);
  addMeasure(top, io, done);
  addSheet(top, io, done);
  addFormat(top, io, done);
  addCompare(top, io, done);
  addGit(top, io, done);
  addExplain(top, io, done);
  addLsp(top, done);
  for (const command of [top, ...top.commands])
    if (!WORDLESS.has(command.name())) command.addOption(language());
  return top;
}

const forBody = () =>
  new Option('--for <body>', say`draft for this body or size: ferrywoman, "chorus M"`).argParser(
    readable(bodyChoice),
  );
const setChoice = () =>
  new Option('--set <name=value>', say`override a choice: hip-ease=5cm`)
    .default([], say`nothing set`)
    .argParser((word: string, before: readonly string[]) => [...before, word]);
const severity = () =>
  new Option(
    '--severity <code=severity>',
    say`how grave a problem is: hidden-name=off, note, warning or error`,
  )
    .default(NO_SEVERITIES, say`as the catalogue has it`)
    .argParser(readable(severitySetting));
const words = () =>
  new Option('--words <dialect>', say`words of the trade: toile and sleeve head, or muslin and sleeve cap`)
    .choices(['british', 'american'])
    .default('british');
const format = (...choices: string[]) =>
  new Option('--format <format>', say`how to print`).choices(choices).default(choices[0]);

/** An option whose reader says in a sentence what is wrong with it. */
const readable =
  <T>(read: (words: string, before: T) => T) =>
  (words: string, before: T): T => {
    try {
      return read(words, before);
    } catch (reason) {
      throw new InvalidArgumentError((reason as Error).message);
    }
  };

/** A day as its author writes it (`2026-11-18`, `before the preview`); figures that are no day are a slip. */
function dayOf(words: string): string {
  const date = words.trim();
  if (/^\d{4}-\d{1,2}-\d{1,2}$/.test(date) && !isDay(date))
    throw new Error(say`The calendar has no ${date}. A date is written year, month, day: \`2026-09-14\`.`);
  return words;
}

/** `front, back` */
const listed = (words: string): string[] =>
  words
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');

/** `1:5`: five */
function scaleOf(words: string): number {
  const [, times] = /^\s*1\s*:\s*(\d+(?:\.\d+)?)\s*$/.exec(words) ?? [];
  const scale = Number(times);
  if (!(scale >= 1 && scale <= 20))
    throw new Error(say`A scale is written 1:5, and lies between 1:1 and 1:20.`);
  return scale;
}

interface Given {
  readonly for?: BodyChoice;
  readonly set: readonly string[];
}

/** The options as the commands take them. */
const chosen = <T extends Given>(options: T) => ({ ...options, set: settings(options.set) });

function addCheck(top: Command, io: Io, done: Done): void {
  top
    .command('check')
    .description(say`report what a cutter would catch`)
    .argument('<file...>', say`pattern files`)
    .addOption(forBody())
    .addOption(setChoice())
    .addOption(severity())
    .addOption(words())
    .addOption(format('text', 'json'))
    .action((files: string[], options: Given & Pick<CheckOptions, 'format' | 'severity' | 'words'>) =>
      done(runCheck(files, chosen(options), io)),
    );
}

function addDraw(top: Command, io: Io, done: Done): void {
  top
    .command('draw')
    .description(say`draw the pieces in full size`)
    .argument('<file>', say`pattern file`)
    .option('--out <folder>', say`where the file goes; made if it is missing`, '.')
    .option('--pieces <names>', say`some pieces only, with commas between`, (words: string) =>
      words.split(','),
    )
    .option('--sizes <names>', say`sizes drawn on one another: all, or names with commas between`, sizeNames)
    .addOption(forBody())
    .addOption(setChoice())
    .addOption(words())
    .addOption(format('svg', 'png', 'dxf', 'dxf-drawing'))
    .addHelpText(
      'after',
      `\n${say`dxf: pieces for other pattern programs by ASTM D6673, each size a piece of its own.`}` +
        `\n${say`dxf-drawing: plain lines in full size for cutters and plotters.`}`,
    )
    .action(async (file: string, options: Given & Omit<DrawOptions, 'for' | 'set'>) =>
      done(await runDraw(file, chosen(options), io)),
    );
}

function addPrint(top: Command, io: Io, done: Done): void {
  top
    .command('print')
    .description(
      say`print the pieces in full size as PDF: on papers to be taped together, on a roll, on one sheet`,
    )
    .argument('<file>', say`pattern file`)
    .option('--out <folder>', say`where the file goes; made if it is missing`, '.')
    .option(
      '--paper <name>',
      say`A4, A3, Letter, Legal, "roll 914mm" of any width, or whole: one sheet as large as the drawing`,
      'A4',
    )
    .option('--pieces <names>', say`some pieces only, with commas between`, listed)
    .option('--sheets <names>', say`these sheets again, as the map names them: B2,C1`, (words: string) =>
      listed(words.toUpperCase()),
    )
    .option('--as-laid', say`keep the pieces where draw lays them, instead of saving papers`)
    .option('--sizes <names>', say`sizes on one another, each a layer: all, or names with commas`, sizeNames)
    .option('--scale <ratio>', say`1:5 for a sheet to be kept, not to be cut by`, readable(scaleOf))
    .option(
      '--date <day>',
      say`in place of the day that the pattern says, as you write it; none is taken from the clock`,
      readable(dayOf),
    )
    .option('--revision <words>', say`in place of the revision that the pattern says`)
    .addOption(forBody())
    .addOption(setChoice())
    .addOption(words())
    .action(async (file: string, options: Given & Omit<PrintOptions, keyof Choice>) =>
      done(await runPrint(file, chosen(options), io)),
    );
}

function addMeasure(top: Command, io: Io, done: Done): void {
  top
    .command('measure')
    .description(say`print values, points, curves, pieces and seams`)
    .argument('<file>', say`pattern file`)
    .addOption(forBody())
    .addOption(setChoice())
    .addOption(words())
    .addOption(format('text', 'json'))
    .action((file: string, options: Given & Pick<MeasureOptions, 'format' | 'words'>) =>
      done(runMeasure(file, chosen(options), io)),
    );
}

function addSheet(top: Command, io: Io, done: Done): void {
  top
    .command('sheet')
    .description(
      say`write what is needed beside a pattern: measuring sheet, cutting list, sizes, fitting, sewing order`,
    )
    .argument('<file>', say`pattern file`)
    .addOption(
      new Option('--kind <kind>', say`which sheet`).choices([...SHEET_KINDS, 'all']).default('measuring'),
    )
    .addOption(format('text', 'markdown', 'csv', 'pdf', 'json'))
    .option('-o, --output <file>', say`where the sheet goes; without it, all but PDF is printed here`)
    .option('--paper <name>', say`of a PDF: A4, A3, Letter or Legal`, 'A4')
    .option('--date <day>', say`a day to stand in the heading, as you write it`, readable(dayOf))
    .addOption(words())
    .addOption(forBody())
    .addOption(setChoice())
    .action(async (file: string, options: Given & Omit<SheetOptions, 'set' | 'for'>) =>
      done(await runSheet(file, chosen(options), io)),
    );
}

function addFormat(top: Command, io: Io, done: Done): void {
  top
    .command('format')
    .description(say`bring pattern files into the canonical layout; meaning and comments stay`)
    .argument('<file...>', say`pattern files`)
    .option('--check', say`write nothing; end with 1 when a file would change`)
    .action((files: string[], options: FormatOptions) => done(runFormat(files, options, io)));
}

function addCompare(top: Command, io: Io, done: Done): void {
  top
    .command('compare')
    .description(
      say`say what a change did: two files, two folders, or main..HEAD and a path of a git repository`,
    )
    .argument(
      '<what...>',
      say`A B, FILE (against HEAD), REVISION..REVISION [PATH]; REVISION.. is the working tree`,
    )
    .addOption(forBody())
    .addOption(setChoice())
    .addOption(words())
    .addOption(format('text', 'markdown', 'json', 'svg', 'html'))
    .addOption(
      new Option('--fail-on <what>', say`what to end with 1 for`)
        .choices(['differences', 'errors'])
        .default('differences'),
    )
    .option('--out <file>', say`write there instead of printing`)
    .option('--each', say`one line for each commit between two revisions`)
    .option('--as <path>', say`compare two files as if both lay there, for git difftool`)
    .action(
      (
        words: string[],
        options: Given & Pick<CompareOptions, 'as' | 'each' | 'format' | 'failOn' | 'out' | 'words'>,
      ) => done(runCompare(words, chosen(options), io)),
    );
}

function addGit(top: Command, io: Io, done: Done): void {
  top
    .command('git-setup')
    .description(say`tell git of this clone how patterns are compared; shows each line before it writes it`)
    .option('--textconv', say`lengths beside the lines in git diff and git log as well`)
    .option('--show', say`show what would be written, and write nothing`)
    .option('--command <words>', say`how git calls this program`, 'draftwright')
    .action((options: GitSetupOptions) => done(runGitSetup(options, io)));
  top
    .command('git-text')
    .description(say`print a pattern with its lengths beside the lines, for git to compare`)
    .argument('<file>', say`pattern file`)
    .action((file: string) => done(runGitText(file, io)));
}

function addExplain(top: Command, io: Io, done: Done): void {
  top
    .command('explain')
    .description(say`say what a problem is, why it matters and how to mend it`)
    .argument('<code>', say`as it stands beside a problem, for example unclosed-outline`)
    .addOption(words())
    .action((code: string, options: ExplainOptions) => done(runExplain(code, options, io)));
}

function addLsp(top: Command, done: Done): void {
  top
    .command('lsp')
    .description(say`serve an editor by the language server protocol`)
    .option('--stdio', say`on standard streams, the only way there is`)
    .action(() => done(void runLsp()));
}
