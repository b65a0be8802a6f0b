/** Addresses of files: one spelling for each, what lies in a folder, and what a `use` means. */

/**
 * The one spelling of an address. Editors differ in what they escape and in the case of a drive letter; every
 * character but the unreserved ones is escaped here, as the most common client does it.
 */
export function canonical(uri: string): string {
  const match = /^file:\/\/([^/]*)(\/.*)?$/i.exec(uri);
  if (match === null) return uri;
  const path = (match[2] ?? '/').split('/').map(escaped).join('/');
  return `file://${match[1]!.toLowerCase()}${path.replace(/^\/([A-Za-z])%3A/, (drive) => drive.toLowerCase().replace('%3a', '%3A'))}`;
}

function escaped(segment: string): string {
  const sign = (mark: string) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`;
  return encodeURIComponent(unescaped(segment)).replace(/[!'()*]/g, sign);
}

function unescaped(segment: string): string {
  try {
    return decodeURIComponent(segment);
  } catch {
    return segment; // a percent sign that encodes nothing stands for itself
  }
}

/** Scheme and host, and the path after them; folders on no disk often have no host: `attic:/wardrobe`. */
const PARTS = /^((?!untitled:)[a-z][a-z0-9+.-]*:(?:\/\/[^/]*)?)(\/.*)?$/i;

/** True for an address that has folders; an untitled text has none. */
const hasFolders = (uri: string): boolean => PARTS.exec(uri)?.[2] !== undefined;

/**
 * True for an address that has folders of its own beside those of a workspace. Without a host it may be another version
 * of a file that lies elsewhere (`git:/wardrobe/skirt.draft`), so there a folder of the workspace has to be of its kind.
 */
export function hasFoldersBeside(uri: string, folders: readonly string[]): boolean {
  if (!hasFolders(uri)) return false;
  const scheme = uri.slice(0, uri.indexOf(':') + 1);
  return uri.startsWith(`${scheme}//`) || folders.some((folder) => folder.startsWith(scheme));
}

/** An address without a host that names a place, with what may stand behind it: `git:/wardrobe/skirt.draft?…`. */
const PLACE = /^[a-z][a-z0-9+.-]*:(\/(?!\/)[^?#]*)/i;

/**
 * The file of a workspace in whose place a text stands that has no folders of its own: an older version of it, or a new
 * text that will be saved there. Undefined where its path leads into none of the folders.
 */
export function standsFor(uri: string, folders: readonly string[]): string | undefined {
  const path = PLACE.exec(uri)?.[1];
  if (path === undefined) return undefined;
  return folders
    .flatMap((folder) => {
      const file = canonical(`${PARTS.exec(folder)?.[1] ?? ''}${path}`);
      return isInside(file, folder) ? [file] : [];
    })
    .at(0);
}

/** The folder a file lies in, with its last slash; '' where there are no folders. */
export const folderOf = (uri: string): string =>
  hasFolders(uri) ? uri.slice(0, uri.lastIndexOf('/') + 1) : '';

export function isInside(uri: string, folder: string): boolean {
  return uri.startsWith(folder.endsWith('/') ? folder : `${folder}/`);
}

/** `path`, as written with `/`, counted from a folder; undefined where it climbs above the root. */
export function joined(folder: string, path: string): string | undefined {
  const match = PARTS.exec(folder);
  if (match === null) return undefined;
  const steps = (match[2] ?? '/').split('/').filter(Boolean);
  for (const step of path.split('/')) {
    if (step === '' || step === '.') continue;
    if (step !== '..') steps.push(encodeURIComponent(step));
    else if (steps.pop() === undefined) return undefined;
  }
  return canonical(`${match[1]}/${steps.join('/')}`);
}
