/** Words that stand in several places of what is drawn and printed: for whom it is, on which side of the wearer, what a band names. */
import { say } from '../../grammar/say';
import type { Piece } from '../drafting/model';

/** `for ferrywoman` */
export const forWhom = (body: string): string => say`for ${body}`;

/** What the whole drawing is called: `Harbour skirt, for ferrywoman`. */
export const titleOf = ({ title, body }: { readonly title: string; readonly body: string }): string =>
  [title || say`Pattern`, body && forWhom(body)].filter(Boolean).join(', ');

export const sideWord = (side: 'left' | 'right'): string => (side === 'left' ? say`left` : say`right`);

/** A band names the lines and notches that it makes by itself; an author's name stays as it is. */
export function lineName({ statement }: Piece, name: string): string {
  if (statement.node.kind !== 'band') return name;
  return name === 'fold' ? say`fold` : name === 'underlap' ? say`underlap` : name;
}
