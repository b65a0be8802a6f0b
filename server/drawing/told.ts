/** Words that stand in several places of what is drawn and printed: for whom it is, and on which side of the wearer. */
import { say } from '../../grammar/say';

/** `for ferrywoman` */
export const forWhom = (body: string): string => say`for ${body}`;

/** What the whole drawing is called: `Harbour skirt, for ferrywoman`. */
export const titleOf = ({ title, body }: { readonly title: string; readonly body: string }): string =>
  [title || say`Pattern`, body && forWhom(body)].filter(Boolean).join(', ');

export const sideWord = (side: 'left' | 'right'): string => (side === 'left' ? say`left` : say`right`);
