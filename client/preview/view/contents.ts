/** Everything that is drawn, as a tree for the keyboard and for a screen reader: pieces, their problems, lines, points. */
import { say } from '../../../grammar/say';
import type { PieceDrawing, Source } from '../../../server/drawing/model';
import type { PreviewProblem } from '../protocol';
import { html } from './dom';
import { findables } from './finding';
import { Popover } from './popover';
import { severityWord } from './problems';

export interface ContentsActions {
  pieces(): Iterable<PieceDrawing>;
  problems(): readonly PreviewProblem[];
  show(source: Source, piece: string, goto: boolean): void;
  showProblem(problem: PreviewProblem, goto: boolean): void;
}

interface Leaf {
  readonly words: string;
  readonly source: Source;
  readonly problem?: PreviewProblem;
}

export class Contents {
  private readonly popover = new Popover('contents', say`Contents`);
  readonly element = this.popover.element;
  private readonly tree = html('ul', { role: 'tree', 'aria-label': say`Pieces and what is drawn on them` });

  /** The items that are problems. */
  private readonly told = new Map<HTMLElement, PreviewProblem>();

  constructor(private readonly actions: ContentsActions) {
    this.popover.panel.append(this.tree);
    this.popover.button.addEventListener('click', () => this.build());
    this.tree.addEventListener('keydown', (event) => this.key(event));
    this.tree.addEventListener('click', (event) => this.click(event));
  }

  /** Built when it is opened, so that it costs nothing before. */
  open(): void {
    this.popover.open(true);
    this.build();
  }

  /** A tree that stands open is of the text as it is now: its open branches stay open, the keyboard stays where it was. */
  update(): void {
    if (this.popover.panel.hidden) return;
    const open = [...this.tree.querySelectorAll<HTMLElement>('[aria-expanded="true"]')].map(pieceIn);
    const rested = this.tree.querySelector<HTMLElement>('[tabindex="0"]');
    const held = rested !== null && rested === document.activeElement;
    const asProblem = rested !== null && this.told.has(rested);
    this.fill();
    for (const item of this.items()) if (isPiece(item) && open.includes(pieceIn(item))) expand(item, true);
    const next = (rested && this.successor(rested, asProblem)) ?? this.items()[0];
    next?.setAttribute('tabindex', '0');
    if (held) next?.focus({ preventScroll: true });
  }

  /** The item for what another was for: problems share the source of what they are about, and lines that of their ends. */
  private successor(old: HTMLElement, asProblem: boolean): HTMLElement | undefined {
    const near = this.items().filter(
      (item) => item.dataset.source === old.dataset.source && pieceIn(item) === pieceIn(old),
    );
    const level = old.getAttribute('aria-level');
    const alike = near.filter(
      (item) => item.getAttribute('aria-level') === level && this.told.has(item) === asProblem,
    );
    return alike.find(({ textContent }) => textContent === old.textContent) ?? alike[0] ?? near[0];
  }

  private build(): void {
    this.fill();
    const first = this.items()[0];
    first?.setAttribute('tabindex', '0');
    if (!this.popover.panel.hidden) first?.focus();
  }

  private fill(): void {
    const pieces = [...this.actions.pieces()];
    const names = new Set(pieces.map(({ source }) => source));
    const loose = this.actions.problems().filter(({ piece = '' }) => !names.has(piece));
    this.told.clear();
    this.tree.replaceChildren(
      ...loose.map((problem) => this.leaf(problemLeaf(problem), '', 1)),
      ...pieces.flatMap((piece) => this.branch(piece)),
    );
  }

  /** A piece, and below it what belongs to it: all of them in one list, told apart by level. */
  private branch(piece: PieceDrawing): HTMLElement[] {
    const problems = this.actions.problems().filter((problem) => problem.piece === piece.source);
    const drawn = findables([piece]).filter(({ source }) => source !== piece.source);
    const leaves = [
      ...problems.map(problemLeaf),
      ...drawn.map(({ tip, source }) => ({ words: tip, source })),
    ];
    const many = problems.length === 1 ? say`1 problem` : say`${problems.length} problems`;
    const count = problems.length === 0 ? '' : `, ${many}`;
    const own = this.leaf(
      { words: `${piece.spoken || piece.name}${count}`, source: piece.source },
      piece.name,
      1,
    );
    own.setAttribute('aria-expanded', 'false');
    const below = leaves.map((one) => this.leaf(one, piece.name, 2));
    for (const one of below) one.hidden = true;
    return [own, ...below];
  }

  private leaf({ words, source, problem }: Leaf, piece: string, level: number): HTMLElement {
    const item = html(
      'li',
      {
        ...{ role: 'treeitem', 'aria-level': level, tabindex: -1 },
        ...{ 'data-source': source, 'data-piece': piece },
      },
      words,
    );
    if (problem) this.told.set(item, problem);
    return item;
  }

  private items(): HTMLElement[] {
    const all = [...this.tree.querySelectorAll<HTMLElement>('[role="treeitem"]')];
    return all.filter((item) => !item.hidden);
  }

  private key(event: KeyboardEvent): void {
    const item = (event.target as Element).closest<HTMLElement>('[role="treeitem"]');
    if (!item || event.altKey || event.metaKey) return;
    const items = this.items();
    const at = items.indexOf(item);
    const open = item.getAttribute('aria-expanded');
    if (event.key === 'ArrowDown') this.rest(items[at + 1]);
    else if (event.key === 'ArrowUp') this.rest(items[at - 1]);
    else if (event.key === 'Home') this.rest(items[0]);
    else if (event.key === 'End') this.rest(items.at(-1));
    else if (event.key === 'ArrowRight' && open === 'false') expand(item, true);
    else if (event.key === 'ArrowRight' && open === 'true') this.rest(items[at + 1]);
    else if (event.key === 'ArrowLeft' && open === 'true') expand(item, false);
    else if (event.key === 'ArrowLeft') this.rest(items.slice(0, at).reverse().find(isPiece));
    else if (event.key === 'Enter' || event.key === ' ') this.choose(item, event.key === 'Enter');
    else if (event.key.length === 1 && !event.ctrlKey) this.rest(startingWith(items, at, event.key));
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  private click(event: MouseEvent): void {
    const item = (event.target as Element).closest<HTMLElement>('[role="treeitem"]');
    if (!item) return;
    if (isPiece(item)) expand(item, item.getAttribute('aria-expanded') === 'false');
    this.rest(item);
    this.choose(item, event.ctrlKey || event.metaKey);
  }

  /** The keyboard comes to an item: one of them is reached by Tab. */
  private rest(item: HTMLElement | undefined): void {
    if (!item) return;
    this.tree.querySelector('[tabindex="0"]')?.setAttribute('tabindex', '-1');
    item.setAttribute('tabindex', '0');
    item.focus();
  }

  private choose(item: HTMLElement, goto: boolean): void {
    const [problem, { dataset }] = [this.told.get(item), item];
    if (problem) this.actions.showProblem(problem, goto);
    else this.actions.show(dataset.source!, dataset.piece ?? '', goto);
  }
}

const problemLeaf = (problem: PreviewProblem): Leaf => ({
  words: `${severityWord(problem.severity)}: ${problem.message}`,
  source: problem.source,
  problem,
});

const pieceIn = ({ dataset }: HTMLElement): string => dataset.piece ?? '';

const isPiece = (item: HTMLElement): boolean => item.hasAttribute('aria-expanded');

/** Shows or hides what stands below a piece, up to the next. */
function expand(item: HTMLElement, open: boolean): void {
  item.setAttribute('aria-expanded', String(open));
  for (let below = item.nextElementSibling; below !== null && !isPiece(below as HTMLElement);) {
    (below as HTMLElement).hidden = !open;
    below = below.nextElementSibling;
  }
}

/** The next item after one that begins with a letter, round the end. */
function startingWith(items: readonly HTMLElement[], at: number, letter: string): HTMLElement | undefined {
  const after = [...items.slice(at + 1), ...items.slice(0, at + 1)];
  return after.find((item) => item.textContent!.toLowerCase().startsWith(letter.toLowerCase()));
}
