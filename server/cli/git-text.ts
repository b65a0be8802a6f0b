/** `draftwright git-text`: a pattern's text with its lengths beside the lines, for git to compare (textconv). */
import { basename, dirname, join } from 'node:path';
import type { Pattern } from '../drafting/model';
import { Workshop } from '../drafting/workshop';
import { print } from '../drafting/values/quantity';
import { Lines } from '../features/lines';
import { diskBehind, uriOfPath } from '../lsp/disk';
import { Files } from '../lsp/files';
import { git, parts } from '../lsp/versions/git';
import { Repository } from '../lsp/versions/revision';
import { readNamed } from './open';
import { CLEAN, type Exit, type Io } from './io';

/**
 * git hands over the old text as a file somewhere else; what it uses is read from the working tree, where a file of its
 * name lies. Where that can't be told, the lengths that rest on used files are left out.
 */
export function runGitText(path: string, io: Io): Exit {
  const { full, text } = readNamed(io, path, true);
  const files = new Files(diskBehind(io.cwd));
  const uri = uriOfPath(placeOf(full, io) ?? full);
  files.setBuffer(uri, text);
  const workshop = new Workshop(files);
  workshop.setText(uri, text);
  io.out(beside(text, workshop.pattern(uri), uri));
  return CLEAN;
}

/** Where a file of git's, such as `Xy12ab_skirt.draft`, lies in the working tree; undefined where several could be meant. */
function placeOf(full: string, io: Io): string | undefined {
  const repository = Repository.around(io.cwd);
  if (repository === undefined || dirname(full).startsWith(repository.top)) return undefined;
  const name = basename(full).replace(/^[^_]*_/, '');
  const found = parts(git(repository.top, ['ls-files', '-z'])).filter((path) => basename(path) === name);
  return found.length === 1 ? join(repository.top, found[0]!) : undefined;
}

/** The text, each line of an edge or a value that was worked out with its figure behind it as a remark. */
function beside(text: string, pattern: Pattern, uri: string): string {
  const lines = new Lines(text);
  const figures = new Map<number, string>();
  const note = (source: string, words: string): void => {
    const place = pattern.locate(source);
    if (place?.uri === uri) figures.set(lines.position(place.from).line, words);
  };
  for (const { edges, holes } of pattern.pieces)
    for (const { source, sewn } of [...edges, ...holes.flatMap((hole) => hole.edges)])
      note(source, print({ kind: 'length', amount: sewn }, pattern.unit));
  for (const [path, value] of pattern.values) {
    const at = path.lastIndexOf('.');
    const source = at < 0 ? `=${path}` : `${path.slice(0, at)}/=${path.slice(at + 1)}`;
    if (value.kind !== 'text' && !pattern.choices.some((one) => one.path === path))
      note(source, print(value, pattern.unit));
  }
  return Array.from({ length: lines.count }, (_, i) => {
    const line = lines.line(i);
    const figure = figures.get(i);
    return figure === undefined ? line : `${line}  # ${figure}`;
  }).join('\n');
}
