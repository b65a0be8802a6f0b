/** A workshop that shows one tree after the other: what is the same in both is read and drafted once. */
import { say } from '../../../grammar/say';
import type { Choice } from '../../drafting/workshop';
import { Workshop } from '../../drafting/workshop';
import type { Pattern } from '../../drafting/model';
import { canonical, folderOf, joined } from '../uris';
import { take, takenSize, type Taken } from '../../review';
import { Refusal, unsettled, unsettledLine, type Tree } from './tree';

const TOP = 'file:///';

/** Paths of a tree as addresses of a workspace of its own, which no `use` may leave. */
export const uriOf = (path: string): string => canonical(TOP + path);
export const pathOf = (uri: string): string => decodeURIComponent(uri.slice(TOP.length));

export class TwoSided {
  private tree: Tree | undefined;
  private readonly read = new Map<string, string | undefined>();
  private readonly workshop: Workshop;

  constructor() {
    this.workshop = new Workshop({
      read: (uri) => {
        const text = this.textOf(uri);
        this.read.set(uri, text);
        return text;
      },
      resolve: (from, path) => {
        const absolute = /^([a-z][a-z0-9+.-]*:|[/\\])/i.test(path);
        const uri = absolute ? undefined : joined(folderOf(from), path);
        return uri === undefined ? { outside: true } : { uri };
      },
    });
  }

  /** What a comparison needs of a pattern of a tree, for every size of its table. */
  taken(tree: Tree, path: string, choice: Choice): Taken {
    this.show(tree);
    const uri = uriOf(path);
    const pattern = this.workshop.pattern(uri, choice);
    const refused = pattern.refused;
    if (refused.length > 0)
      throw new Refusal(refused.map((why) => say`${path} in ${tree.name}: ${why}`).join('\n'));
    this.settled(pattern);
    const sizes = sizesOf(pattern, choice).map((size) => {
      const body = { name: pattern.body!.name, size };
      return takenSize(this.workshop.tried(uri, 'sizes', { ...choice, for: body }), size);
    });
    return take({ pattern, source: (of) => this.workshop.source(of), shown: pathOf }, sizes);
  }

  /** Forgets a pattern that nobody will ask for again. */
  forget(path: string): void {
    this.workshop.close(uriOf(path));
    this.read.delete(uriOf(path));
  }

  private show(tree: Tree): void {
    if (tree === this.tree) return;
    this.tree = tree;
    for (const [uri, before] of [...this.read]) {
      const now = this.textOf(uri);
      if (now === before) continue;
      this.read.set(uri, now);
      if (before === undefined || now === undefined) this.workshop.refresh(uri);
      else this.workshop.edit(uri, [replacement(before, now)]);
    }
  }

  private textOf(uri: string): string | undefined {
    const content = this.tree!.read(pathOf(uri));
    return 'text' in content ? content.text : undefined;
  }

  /** Used files have to be settled as well. */
  private settled(pattern: Pattern): void {
    for (const uri of pattern.files) {
      const line = unsettledLine(this.workshop.source(uri)?.text ?? '');
      if (line !== undefined) throw unsettled(pathOf(uri), this.tree!, line);
    }
  }
}

/** All sizes of the table, unless one was asked for. */
const sizesOf = ({ sizes, body }: Pattern, choice: Choice): readonly string[] =>
  body === undefined || choice.for?.size !== undefined || sizes.length < 2 ? [] : sizes;

/** The one stretch of a text in which it differs from another. */
function replacement(before: string, now: string): { from: number; to: number; text: string } {
  const shorter = Math.min(before.length, now.length);
  let from = 0;
  while (from < shorter && before.charCodeAt(from) === now.charCodeAt(from)) from++;
  let tail = 0;
  while (
    tail < shorter - from &&
    before.charCodeAt(before.length - 1 - tail) === now.charCodeAt(now.length - 1 - tail)
  )
    tail++;
  return { from, to: before.length - tail, text: now.slice(from, now.length - tail) };
}
