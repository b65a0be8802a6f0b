/** What there is to say of a pattern's files as a whole: syntax, names given twice, `use` lines, the body. */
import { keptFor } from '../../grammar/kept';
import { say } from '../../grammar/say';
import type { Statement, TopLevel } from '../../grammar/syntax';
import type { Finding, Fix, Related, SourcedFinding } from './finding';
import type { BodyChoice } from './model';
import type { Declaration } from './names/declarations';
import type { Clash, FileNames, FileSet, Use } from './names/files';
import { nearest } from './names/spelling';
import { losesFiles, visibleFiles } from './names/resolve';
import { sizesOf, type Body } from './values/body';
import { measurementNamed } from './values/measurements';

const made = (
  code: string,
  statement: Statement,
  at: Finding['at'],
  message: string,
  extra: Partial<Finding> = {},
): Finding => ({
  code,
  message,
  statement,
  at,
  related: [],
  fixes: [],
  ...extra,
});

/** Findings of a top-level statement's syntax, kept while it stays the same object. */
const syntaxOf = keptFor((top: TopLevel): readonly Finding[] => {
  const found: Finding[] = [];
  const visit = (statement: Statement): void => {
    for (const { code, at, message, fixes } of statement.problems) {
      const edits = fixes.map((fix) => ({
        title: fix.title,
        edits: fix.edits.map((edit) => ({ statement, ...edit })),
      }));
      found.push(made(code, statement, at, message, { fixes: edits }));
    }
    statement.block?.forEach(visit);
  };
  visit(top.statement);
  return found;
});

/** The path under which a top-level statement is found again. */
const sourceOf = (file: FileNames, top: TopLevel): string => file.key + (file.of(top)[0]?.id ?? '');

export function syntaxFindings(files: FileSet): SourcedFinding[] {
  const found: SourcedFinding[] = [];
  for (const file of files.files()) {
    for (const top of file.faulty()) {
      for (const finding of syntaxOf(top)) found.push({ source: sourceOf(file, top), finding });
    }
  }
  return found;
}

const CLASH_WORDS: Readonly<Record<Clash['why'], (clash: Clash) => string>> = {
  twice: ({ second }) =>
    say`${second.name} is defined already. A name is given once; rename this one or take it out.`,
  case: ({ first, second }) =>
    say`${second.name} and ${first.name} differ in capitals alone, which nobody hears when they are read out. Rename one of them.`,
  'draft-and-piece': ({ second }) =>
    say`${second.name} is a draft and a piece at once, so ${second.name}.waist could mean either. Rename one of them.`,
};

export function clashFindings(file: FileNames): SourcedFinding[] {
  return file.clashes().map((clash) => {
    const { first, second } = clash;
    const related: Related[] = [
      { source: file.key + first.id, message: say`${first.name} is defined first here.` },
    ];
    const finding = made('defined-twice', second.statement, second.nameAt, CLASH_WORDS[clash.why](clash), {
      related,
    });
    return { source: ownerOf(file, second), finding };
  });
}

/** Values in a draft that hide one of the file, and values that hide a measurement: whoever reads the name may take the other. */
export function hidingFindings(file: FileNames): SourcedFinding[] {
  const files = visibleFiles(file);
  const others = new Set(measurementNamed.keys());
  for (const one of files) {
    for (const name of one.measurements()) others.add(name);
    if (one !== file) for (const name of one.values()) others.add(name);
  }
  return file.hiding(others).map(({ scope, name, statement, nameAt, id }) => {
    const owner = files.find((one) => (one !== file || scope !== '') && one.get(`=${name}`) !== undefined);
    const outer = owner?.get(`=${name}`);
    const where = owner === file ? say`the whole file` : fileName(owner?.uri ?? '');
    const what = outer === undefined ? say`the measurement ${name}` : say`the ${name} of ${where}`;
    const said = owner === file ? say`the file` : where;
    const related =
      outer === undefined
        ? []
        : [{ source: owner!.key + outer.id, message: say`${name} of ${said} is defined here.` }];
    const message = say`${name} hides ${what}: in this file the name means this one. Give it a name of its own.`;
    return { source: file.key + id, finding: made('hidden-name', statement, nameAt, message, { related }) };
  });
}

/** Rows of a size table with too few or too many cells, and tables without a row of sizes. */
export function tableFindings(file: FileNames): SourcedFinding[] {
  const found: SourcedFinding[] = [];
  for (const { statement, id } of file.bodies()) {
    if (statement.node.kind !== 'sizes') continue;
    const sizes = sizesOf(statement);
    const source = file.key + id;
    if (sizes.length === 0) {
      const message = say`${statement.node.name.text} names no sizes: its first row is size, followed by their names, such as size S M L.`;
      found.push({ source, finding: made('uneven-table', statement, statement.node.name.at, message) });
      continue;
    }
    for (const row of statement.block ?? []) {
      if (row.node.kind !== 'row') continue;
      const { name, cells } = row.node;
      const missing = sizes.filter((_, i) => cells[i] === undefined);
      if (missing.length === 0 && cells.length === sizes.length) continue;
      const values = cells.filter((cell) => cell !== undefined).length;
      const message =
        missing.length > 0
          ? say`${name.text} has ${valuesInWords(values)} for ${sizes.length} sizes: ${without(missing)}.`
          : say`${name.text} has ${cells.length} values, but there are only ${sizes.length} sizes (${sizes.join(', ')}).`;
      found.push({ source, finding: made('uneven-table', row, name.at, message) });
    }
  }
  return found;
}

const valuesInWords = (count: number): string => (count === 1 ? say`1 value` : say`${count} values`);
const without = (sizes: readonly string[]): string =>
  sizes.length === 1 ? say`${sizes[0]!} has none` : say`${sizes.join(', ')} have none`;

/** A second definition is no node of its own; its top-level statement is. */
const ownerOf = (file: FileNames, declaration: Declaration): string =>
  declaration.statement === declaration.top.statement
    ? file.key + declaration.id
    : sourceOf(file, declaration.top);

export function useFindings(files: FileSet): SourcedFinding[] {
  const found: SourcedFinding[] = [];
  const all = files.files();
  for (const file of all) {
    for (const use of file.uses) {
      const source = `${file.key}line:${use.statement.text}`;
      const finding = useFinding(use);
      if (finding !== undefined) found.push({ source, finding });
      for (const one of givenFindings(use)) found.push({ source, finding: one });
      if (use.failure === 'circle' && file !== files.root) found.push(...whereItBegins(files.root, use));
    }
  }
  return found;
}

/** A circle that closes in another file is said at the pattern's own `use` line as well: that is where it can be mended. */
function whereItBegins(root: FileNames, closing: Use): SourcedFinding[] {
  const first = root.uses.find(({ file }) => file !== undefined && closing.circle?.includes(file.uri));
  if (first === undefined || !closing.circle?.includes(root.uri)) return [];
  const finding = useFinding({ ...first, failure: 'circle', circle: closing.circle });
  return finding === undefined ? [] : [{ source: `line:${first.statement.text}`, finding }];
}

/** Values set in a used file that has none of that name. */
function givenFindings({ node, statement, file }: Use): readonly Finding[] {
  if (file === undefined) return [];
  return node.given.flatMap(({ name }) => {
    if (file.get(`=${name.text}`) !== undefined) return [];
    const known = [...file.all()]
      .filter(({ space, scope }) => space === 'value' && scope === '')
      .map((one) => one.name);
    const near = nearest(name.text, known);
    const advice = near === undefined ? say`Its values: ${known.join(', ')}.` : say`Did you mean ${near}?`;
    const fixes =
      near === undefined
        ? []
        : [{ title: say`Change to ${near}`, edits: [{ statement, at: name.at, text: near }] }];
    return [
      made(
        'unknown-name',
        statement,
        name.at,
        say`${node.path.text} has no value called ${name.text} to be set. ${advice}`,
        { fixes },
      ),
    ];
  });
}

const fileName = (uri: string): string => decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));

function useFinding({ failure, node, statement, circle }: Use): Finding | undefined {
  const { text, at } = node.path;
  switch (failure) {
    case 'missing':
      return made(
        'missing-file',
        statement,
        at,
        say`There is no file ${text} that can be read, seen from this one. Correct the path, or create the file.`,
      );
    case 'outside':
      return made(
        'outside-workspace',
        statement,
        at,
        say`${text} lies outside the folder that is open. A pattern uses files of its own workspace only: copy the file into it.`,
      );
    case 'circle': {
      const way = (circle ?? []).map(fileName);
      const round =
        way.length === 1 ? say`${way[0]!} uses itself` : say`${way.join(say` uses `)} uses ${way[0]!}`;
      return made(
        'circular-use',
        statement,
        at,
        say`These files use each other in a circle: ${round}. Take out one of the use lines.`,
      );
    }
    case undefined:
      return undefined;
  }
}

/** Who the pattern is drafted for, by its own words. */
export interface DraftedFor {
  readonly choice: BodyChoice;
  readonly statement: Statement;
  readonly source: string;
}

export function draftedFor(file: FileNames): DraftedFor | undefined {
  for (const top of file.ofKind('drafted-for')) {
    const { node } = top.statement;
    if (node.kind !== 'drafted-for') continue;
    const choice = { name: node.body.text, ...(node.size !== undefined && { size: node.size.text }) };
    return { choice, statement: top.statement, source: sourceOf(file, top) };
  }
  return undefined;
}

/** Every body and size table that can be named from a file, by name. */
export function bodiesFrom(file: FileNames): ReadonlyMap<string, Statement> {
  const found = new Map<string, Statement>();
  for (const one of visibleFiles(file)) {
    for (const { name, statement } of one.bodies()) if (!found.has(name)) found.set(name, statement);
  }
  return found;
}

/** Why a body or size can't be had, as a sentence; undefined when it can. */
export function bodyRefusal(
  choice: BodyChoice,
  bodies: ReadonlyMap<string, Statement>,
): { message: string; near?: string } | undefined {
  const table = bodies.get(choice.name);
  if (table === undefined) {
    const near = nearest(choice.name, bodies.keys());
    const known =
      bodies.size === 0
        ? say`No body is defined here or in a used file.`
        : say`Known: ${[...bodies.keys()].join(', ')}.`;
    return {
      message: say`No body or size table is called ${choice.name}. ${near === undefined ? known : say`Did you mean ${near}?`}`,
      ...(near !== undefined && { near }),
    };
  }
  if (table.node.kind !== 'sizes') {
    return choice.size === undefined
      ? undefined
      : { message: say`${choice.name} is one body: it has no size ${choice.size}.` };
  }
  const sizes = sizesOf(table);
  if (choice.size !== undefined && sizes.includes(choice.size)) return undefined;
  const list = say`${choice.name} has the sizes ${sizes.join(', ')}`;
  return {
    message:
      choice.size === undefined
        ? say`${list}: say which, such as ${choice.name} ${sizes[0] ?? 'M'}.`
        : say`${list}, not ${choice.size}.`,
  };
}

/** What the `drafted for` line names and can't have. */
export function draftedForFinding(
  file: FileNames,
  own: DraftedFor,
  bodies: ReadonlyMap<string, Statement>,
): SourcedFinding | undefined {
  const refusal = bodyRefusal(own.choice, bodies);
  const { statement, source } = own;
  if (refusal === undefined || statement.node.kind !== 'drafted-for') return undefined;
  // it may stand in the file that can't be had, which was told
  if (refusal.near === undefined && !bodies.has(own.choice.name) && losesFiles(file)) return undefined;
  const { body, size } = statement.node;
  const at =
    refusal.near === undefined && size !== undefined && bodies.has(own.choice.name) ? size.at : body.at;
  const fix = (title: string, span: Finding['at'], text: string): Fix => {
    return { title, edits: [{ statement, at: span, text }] };
  };
  const sized = ({ at: span }: { at: Finding['at'] }, name: string): Fix =>
    size === undefined
      ? fix(say`Draft for ${body.text} ${name}`, { from: span.to, to: span.to }, ` ${name}`)
      : fix(say`Draft for ${body.text} ${name}`, size.at, name);
  const sizes = offeredSizes(bodies.get(own.choice.name));
  const fixes =
    refusal.near === undefined
      ? sizes.map((name) => sized(body, name))
      : [fix(say`Change to ${refusal.near}`, body.at, refusal.near)];
  return { source, finding: made('unknown-name', statement, at, refusal.message, { fixes }) };
}

/** More are no help to choose from. */
const MOST_SIZES = 5;

const offeredSizes = (table: Statement | undefined): readonly string[] =>
  table?.node.kind === 'sizes' ? sizesOf(table).slice(0, MOST_SIZES) : [];

/** One finding for all measurements that are needed and were not taken. */
export function lackFinding(
  file: FileNames,
  own: DraftedFor | undefined,
  body: Body | undefined,
  chosen: BodyChoice | undefined,
  lacking: ReadonlyMap<string, ReadonlySet<string>>,
): SourcedFinding | undefined {
  if (lacking.size === 0) return undefined;
  const names = [...lacking.keys()].sort();
  const place = (id: string): number => {
    const declaration = file.get(id);
    return declaration === undefined ? Infinity : declaration.top.offset + declaration.statement.start;
  };
  const first = (ids: Iterable<string>): string =>
    [...ids].sort((a, b) => place(a) - place(b) || (a < b ? -1 : 1))[0]!;
  const askers = [...new Set(names.map((name) => first(lacking.get(name)!)))];
  const list =
    names.length === 1 ? names[0]! : say`${names.slice(0, -1).join(', ')} and ${names[names.length - 1]!}`;
  const related = askers.slice(0, 5).map((source) => ({ source, message: say`It is needed here.` }));
  const rest =
    names.length === 1 ? say`What rests on it is not drafted.` : say`What rests on them is not drafted.`;
  const top = file.ofKind('pattern')[0] ?? file.topLevels[0];
  const statement = own?.statement ?? top?.statement;
  if (statement === undefined) return undefined;
  const source = own?.source ?? sourceOf(file, top!);
  const at =
    statement.node.kind === 'drafted-for'
      ? statement.node.body.at
      : { from: 0, to: statement.text.split('\n')[0]!.length };
  if (body !== undefined && chosen !== undefined) {
    const who = [chosen.name, chosen.size ?? ''].join(' ').trim();
    return {
      source,
      finding: made(
        'missing-measurement',
        statement,
        at,
        names.length === 1
          ? say`${who} lacks the measurement ${list}. ${rest} ${nextStep(body, names)}, or draft for another body.`
          : say`${who} lacks the measurements ${list}. ${rest} ${nextStep(body, names)}, or draft for another body.`,
        { related },
      ),
    };
  }
  if (own !== undefined) return undefined;
  const message = say`This pattern needs ${list}, but does not say whose: add drafted for BODY, and a use line for the file if the body stands in another.`;
  return { source, finding: made('nobody-to-draft-for', statement, at, message, { related }) };
}

/** A name of the body that is none of the trade's, and all but one that is lacking, is mostly a slip of the pen. */
function nextStep({ measures }: Body, lacking: readonly string[]): string {
  const one = lacking.length === 1;
  for (const name of measures.keys()) {
    const meant = measurementNamed.has(name) ? undefined : nearest(name, lacking);
    if (meant !== undefined)
      return one
        ? say`Correct the name of its \`${name}\`, if that is meant for ${meant}; else take it`
        : say`Correct the name of its \`${name}\`, if that is meant for ${meant}; else take them`;
  }
  return one ? say`Take it` : say`Take them`;
}
