/** `draftwright git-setup`: tells git how patterns are read, in the open: it shows every line before it writes it. */
import { say } from '../../grammar/say';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { git } from '../lsp/versions/git';
import { Repository } from '../lsp/versions/revision';
import { Refusal } from '../lsp/versions/tree';
import { CLEAN, Unable, type Exit, type Io } from './io';
import { writeOver, writeWhole } from './write';

export interface GitSetupOptions {
  readonly textconv?: boolean;
  /** Show what would be written, and write nothing. */
  readonly show?: boolean;
  /** How the program is called by git. */
  readonly command: string;
}

const ATTRIBUTE = '*.draft diff=draftwright';

/**
 * Lines that a change is told by: what begins at the margin is a definition of its own, and everything else stands within
 * one. An extended regular expression of POSIX, as git wants it.
 */
const HEADER =
  '^((draft|piece|lining|facing|strip|band|join|divide|body|sizes|seam|finish|notch|marks|choose|let)[ \t].*)$';

interface Setting {
  readonly key: string;
  readonly value: string;
  readonly why: string;
}

/** Where git finds no program, it would show no difference at all: the text itself is better than that. */
const orAsItStands = (program: string): string =>
  `shown() { ${program} "$1" 2>/dev/null || cat "$1"; }; shown`;

const settings = ({ textconv, command }: GitSetupOptions): Setting[] => [
  {
    key: 'diff.draftwright.xfuncname',
    value: HEADER,
    why: say`each stretch of a difference bears its piece, draft or seam`,
  },
  ...(textconv
    ? [
        {
          key: 'diff.draftwright.textconv',
          value: orAsItStands(`${command} git-text`),
          why: say`git diff and git log show the lengths beside the lines; the text alone where the program is not found`,
        },
      ]
    : []),
  {
    key: 'difftool.draftwright.cmd',
    value: `${command} compare --as "$MERGED" "$LOCAL" "$REMOTE"`,
    why: say`git difftool --tool draftwright says what a change did`,
  },
];

/** Writes what is missing; run twice, it finds nothing left to write. */
export function runGitSetup(options: GitSetupOptions, io: Io): Exit {
  const repository = around(io);
  const attributes = join(repository.top, '.gitattributes');
  const before = existsSync(attributes) ? readFileSync(attributes, 'utf8') : '';
  const lacks = !before.split(/\r?\n/).some((line) => line.trim() === ATTRIBUTE);
  const wanted = settings(options).filter(({ key, value }) => valueOf(repository, key) !== value);
  if (!lacks && wanted.length === 0) {
    io.out(`${say`Everything is set up already; nothing to write.`}\n`);
    return CLEAN;
  }
  if (lacks) io.out(`${say`.gitattributes, to be committed with the patterns:`}\n  ${ATTRIBUTE}\n`);
  if (wanted.length > 0) io.out(`${say`the settings of this clone (git config --local):`}\n`);
  for (const { key, value, why } of wanted) io.out(`  ${key} = ${value}\n    ${why}\n`);
  if (options.show) {
    io.out(`${say`Nothing was written.`}\n`);
    return CLEAN;
  }
  if (lacks) append(attributes, before);
  for (const { key, value } of wanted) {
    const { ok, err } = git(repository.top, ['config', '--local', '--replace-all', key, value]);
    if (!ok) throw new Unable(say`git could not write ${key}: ${err.trim()}`);
  }
  io.out(`${say`Written.`}\n`);
  return CLEAN;
}

function around(io: Io): Repository {
  try {
    const repository = Repository.around(io.cwd);
    if (repository !== undefined) return repository;
  } catch (reason) {
    if (!(reason instanceof Refusal)) throw reason;
    throw new Unable(reason.message);
  }
  throw new Unable(
    say`This folder lies in no git repository, so there is nothing to set up. Go to one, or begin one with git init.`,
  );
}

/** What the clone itself says, whatever the person's own settings are. */
function valueOf(repository: Repository, key: string): string | undefined {
  const { ok, out } = git(repository.top, ['config', '--local', '--get', key]);
  return ok ? out.toString('utf8').replace(/\n$/, '') : undefined;
}

function append(file: string, before: string): void {
  const ends = before === '' || before.endsWith('\n') ? '' : '\n';
  const text = `${before}${ends}${ATTRIBUTE}\n`;
  if (existsSync(file)) writeOver(file, text, '.gitattributes');
  else writeWhole(file, text, '.gitattributes');
}
