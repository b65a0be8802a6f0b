/** Files that are packed with the program, above all the open font in which every printer writes. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Beside the bundled program, or in the packages of the project. */
const FONT_PLACES = [
  'fonts/NotoSans-Regular.ttf',
  'node_modules/@expo-google-fonts/noto-sans/400Regular/NotoSans_400Regular.ttf',
];

/** The font's bytes; undefined where it was not packed. */
export function readBundledFont(): Uint8Array | undefined {
  const file = bundledFont();
  return file === undefined ? undefined : readFileSync(file);
}

export const bundledFont = (): string | undefined => nearest(FONT_PLACES);

/** The first of some files that lies beside this program or in a folder above it. */
export function nearest(places: readonly string[]): string | undefined {
  for (let folder = here(); ; folder = dirname(folder)) {
    const found = places.map((place) => join(folder, place)).find((file) => existsSync(file));
    if (found || dirname(folder) === folder) return found;
  }
}

/** The folder of this program, bundled as an ES module or as a CommonJS one. */
function here(): string {
  return typeof __dirname === 'string' ? __dirname : dirname(fileURLToPath(import.meta.url));
}
