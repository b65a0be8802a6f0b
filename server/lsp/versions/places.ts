/** Where what is told of a comparison stands: files by their names, places by lines and characters. */
import type { FileRange } from '../../drafting/model';
import { Lines, type PositionRange } from '../../features/lines';
import type { Both, Taken } from '../../review';

export interface Place {
  readonly file: string;
  readonly range: PositionRange;
}

/** Looks places up in the files of either side. */
export class Places {
  private readonly lines = new Map<string, { readonly shown: string; readonly lines: Lines }>();

  constructor({ was, now }: Both<Taken>) {
    for (const [side, taken] of [['was', was] as const, ['now', now] as const])
      for (const { uri, shown, source } of taken?.files ?? [])
        this.lines.set(`${side} ${uri}`, { shown, lines: new Lines(source.text) });
  }

  of(side: 'was' | 'now', place: FileRange | undefined): Place | undefined {
    const file = place && this.lines.get(`${side} ${place.uri}`);
    return file && { file: file.shown, range: file.lines.range(place.from, place.to) };
  }

  both({ was, now }: Both<FileRange>): Both<Place> {
    const [old, fresh] = [this.of('was', was), this.of('now', now)];
    return { ...(old && { was: old }), ...(fresh && { now: fresh }) };
  }

  /** `skirt.draft:12`, where it stands now, or stood. */
  readonly words = (place: Both<FileRange>): string => {
    const { was, now } = this.both(place);
    const at = now ?? was;
    return at === undefined ? '' : `${at.file}:${at.range.start.line + 1}`;
  };
}
