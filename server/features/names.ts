/** The names of one file and of the files it uses, looked up without drafting anything: what following a name rests on. */
import type { SourceFile } from '../../grammar/syntax';
import type { Door } from '../drafting/model';
import { FileSet, type FileNames } from '../drafting/names/files';
import { Network } from '../drafting/names/network';

export class Names {
  readonly files: FileSet;
  readonly network: Network;

  /** @param source the present syntax of a file; the names follow it whenever they are brought up to date */
  constructor(uri: string, door: Door, source: (uri: string) => SourceFile | undefined) {
    this.files = new FileSet(uri, door, source);
    this.network = new Network(this.files);
  }

  /** Follows the texts to their present state, from where they were looked at last. */
  upToDate(): this {
    this.network.update();
    return this;
  }

  get root(): FileNames {
    return this.files.root;
  }

  get uri(): string {
    return this.files.root.uri;
  }

  /** Files it rests on, itself first. */
  uris(): readonly string[] {
    return [...new Set(this.files.files().map(({ uri }) => uri))];
  }
}

/** The files that `use` lines tie to a file, whichever way they lead and over however many steps, itself among them. */
export function tiedTo(uri: string, all: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const tied = new Set([uri]);
  for (let before = 0; before < tied.size;) {
    before = tied.size;
    for (const [from, used] of all) {
      if (!tied.has(from) && !used.some((one) => tied.has(one))) continue;
      tied.add(from);
      used.forEach((one) => tied.add(one));
    }
  }
  return [...tied];
}
