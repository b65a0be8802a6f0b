/** Problems where they are: a small sign at each place, that tells and leads to the text. */
import type { Sheet } from '../protocol';
import { svg } from './dom';
import { severityWord } from './problems';

export class Flags {
  readonly element = svg('g', { class: 'flags', 'aria-hidden': 'true' });
  private shown = '';

  /** Notes are listed only: a drawing full of signs says nothing. */
  update({ problems, placements }: Sheet): void {
    const by = new Map(placements.map(({ piece, by: moved }) => [piece, moved]));
    const signs = problems
      .filter(({ severity }) => severity !== 'note')
      .flatMap(({ severity, message, source, spots = [] }) =>
        spots.flatMap(({ piece, at }) => {
          const moved = by.get(piece);
          return moved ? [{ severity, message, source, x: at.x + moved.x, y: at.y + moved.y }] : [];
        }),
      );
    const shown = JSON.stringify(signs);
    if (shown === this.shown) return;
    this.shown = shown;
    this.element.replaceChildren(
      ...signs.map(({ severity, message, source, x, y }) =>
        svg(
          'g',
          {
            class: `flag ${severity}`,
            transform: `translate(${x} ${y})`,
            'data-source': source,
            'data-tip': `${severityWord(severity)}: ${message}`,
          },
          svg('circle', { class: 'steady', r: 7.5 }),
          svg('text', { class: 'steady', y: 4 }, '!'),
        ),
      ),
    );
  }
}
