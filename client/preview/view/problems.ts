/** The count of problems in words, and the list that leads from each to its text. */
import { say } from '../../../grammar/say';
import type { PreviewProblem } from '../protocol';
import { html } from './dom';
import { Popover } from './popover';

const SEVERITIES = ['error', 'warning', 'note'] as const;

export class Problems {
  private readonly popover = new Popover('problems', '');
  /** Read aloud when the count changes. */
  private readonly status = html('div', { class: 'spoken', role: 'status' });
  readonly element = this.popover.element;

  constructor(private readonly choose: (problem: PreviewProblem) => void) {
    this.element.append(this.status);
    this.update([]);
  }

  update(problems: readonly PreviewProblem[]): void {
    const words = countInWords(problems);
    const worst = SEVERITIES.find((severity) => problems.some((problem) => problem.severity === severity));
    if (this.status.textContent !== words) this.status.textContent = words;
    this.popover.button.replaceChildren(words);
    this.popover.button.dataset.worst = worst ?? 'none';
    this.popover.button.disabled = problems.length === 0;
    if (problems.length === 0) this.popover.open(false);
    this.popover.panel.replaceChildren(
      html('ul', {}, ...sorted(problems).map((problem) => this.row(problem))),
    );
  }

  private row(problem: PreviewProblem): HTMLElement {
    const { severity, message, piece, code } = problem;
    const button = html(
      'button',
      { type: 'button', class: 'problem', title: code },
      html('span', { class: `severity ${severity}` }, severityWord(severity)),
      html('span', { class: 'message' }, message),
      ...(piece ? [html('span', { class: 'where' }, piece)] : []),
    );
    button.addEventListener('click', () => {
      this.popover.open(false); // it covers the drawing, where the problem is
      this.choose(problem);
    });
    return html('li', {}, button);
  }
}

/** What a severity is called. */
export function severityWord(severity: PreviewProblem['severity']): string {
  if (severity === 'note') return say`note`;
  return severity === 'error' ? say`error` : say`warning`;
}

/** `2 errors, 1 warning`; notes are counted only where there is nothing graver. */
export function countInWords(problems: readonly PreviewProblem[]): string {
  const count = (severity: string) => problems.filter((problem) => problem.severity === severity).length;
  const [errors, warnings, notes] = SEVERITIES.map(count) as [number, number, number];
  const words = [errorsInWords(errors), warningsInWords(warnings)].filter(Boolean).join(', ');
  return words || notesInWords(notes) || say`No problems`;
}

// every count has a sentence of its own, for languages form their plurals each in its way
const errorsInWords = (n: number): string => (n > 1 ? say`${n} errors` : n === 1 ? say`1 error` : '');
const warningsInWords = (n: number): string => (n > 1 ? say`${n} warnings` : n === 1 ? say`1 warning` : '');
const notesInWords = (n: number): string => (n > 1 ? say`${n} notes` : n === 1 ? say`1 note` : '');

/** The gravest first, in the order of the file. */
function sorted(problems: readonly PreviewProblem[]): PreviewProblem[] {
  return SEVERITIES.flatMap((severity) => problems.filter((problem) => problem.severity === severity));
}
