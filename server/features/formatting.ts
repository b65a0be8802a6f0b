/** The edits that bring a text into its canonical layout. */

export interface LayoutEdit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** What to replace in a text to make it `laid`, and nothing more than what differs: at most one stretch. */
export function layoutEdits(text: string, laid: string): readonly LayoutEdit[] {
  if (laid === text) return [];
  const from = sharedStart(text, laid);
  const shared = sharedEnd(text.slice(from), laid.slice(from));
  return [{ from, to: text.length - shared, text: laid.slice(from, laid.length - shared) }];
}

/** The characters two texts begin with alike, back to the start of the line where they part. */
function sharedStart(a: string, b: string): number {
  let i = 0;
  while (i < a.length && i < b.length && a[i] === b[i]) i++;
  return i === 0 ? 0 : a.lastIndexOf('\n', i - 1) + 1;
}

/** The characters two texts end with alike; a line end of two characters is not taken apart. */
function sharedEnd(a: string, b: string): number {
  let i = 0;
  while (i < a.length && i < b.length && a[a.length - 1 - i] === b[b.length - 1 - i]) i++;
  const apart = (text: string) => text.at(-i - 1) === '\r' && text.at(-i) === '\n';
  return i > 0 && (apart(a) || apart(b)) ? i - 1 : i;
}
