/** Where the thing under the cursor is defined. */
import type { FileRange, Pattern } from '../drafting/model';

/** The place of the innermost definition that the offset names; undefined where nothing is named. */
export function definition(pattern: Pattern, uri: string, offset: number): FileRange | undefined {
  for (const source of pattern.sourcesAt(uri, offset)) {
    const place = pattern.locate(source);
    if (place !== undefined) return place;
  }
  return undefined;
}
