/** So many of a thing, in words: one and many are texts of their own. */
import { say } from '../../grammar/say';

export const piecesIn = (n: number): string => (n === 1 ? say`1 piece` : say`${n} pieces`);
export const errorsIn = (n: number): string => (n === 1 ? say`1 error` : say`${n} errors`);
export const warningsIn = (n: number): string => (n === 1 ? say`1 warning` : say`${n} warnings`);
export const notesIn = (n: number): string => (n === 1 ? say`1 note` : say`${n} notes`);
