/** Problems where they are: a small sign at each place, that tells and leads to the text. */
import type { PreviewProblem, Sheet } from '../protocol';
import { svg } from './dom';
import { severityWord } from './problems';

/** What is wrong at one place of the sheet, the gravest first. */
interface Sign {
  readonly x: number;
  readonly y: number;
  readonly problems: readonly PreviewProblem[];
}

export class Flags {
  readonly element = svg('g', { class: 'flags', 'aria-hidden': 'true' });
  private shown = '';
  private signs: readonly Sign[] = [];

  /** Notes are listed only: a drawing full of signs says nothing. */
  update(sheet: Sheet): void {
    const signs = signsOf(sheet);
    const shown = JSON.stringify(signs);
    this.signs = signs;
    if (shown === this.shown) return;
    this.shown = shown;
    this.element.replaceChildren(...signs.map(drawn));
  }

  /** What a sign stands for: the gravest of the problems at its place. */
  problemOf(sign: Element): PreviewProblem | undefined {
    return this.signs[[...this.element.children].indexOf(sign)]?.problems[0];
  }

  /** Where a problem has its first sign on the sheet. */
  placeOf(problem: PreviewProblem): Sign | undefined {
    return this.signs.find(({ problems }) => problems.includes(problem));
  }
}

/** Problems at one place share a sign: of signs on one another only the last could be read. */
function signsOf({ problems, placements }: Sheet): Sign[] {
  const by = new Map(placements.map(({ piece, by: moved }) => [piece, moved]));
  const signs = new Map<string, Sign>();
  for (const severity of ['error', 'warning'] as const)
    for (const problem of problems.filter((one) => one.severity === severity))
      for (const { piece, at } of problem.spots ?? []) {
        const moved = by.get(piece);
        if (moved === undefined) continue;
        const [x, y] = [at.x + moved.x, at.y + moved.y];
        const key = `${x.toFixed(1)} ${y.toFixed(1)}`;
        signs.set(key, { x, y, problems: [...(signs.get(key)?.problems ?? []), problem] });
      }
  return [...signs.values()];
}

function drawn({ x, y, problems }: Sign): SVGGElement {
  const [{ severity, source }] = problems as [PreviewProblem];
  return svg(
    'g',
    {
      class: `flag ${severity}`,
      transform: `translate(${x} ${y})`,
      'data-source': source,
      'data-tip': problems.map((one) => `${severityWord(one.severity)}: ${one.message}`).join('\n'),
    },
    svg('circle', { class: 'steady', r: 7.5 }),
    svg('text', { class: 'steady', y: 4 }, problems.length > 1 ? String(problems.length) : '!'),
  );
}
