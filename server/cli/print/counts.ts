/** So many of a thing that a command made or found, in words. */
import { say } from '../../../grammar/say';

export { errorsIn, notesIn, piecesIn, warningsIn } from '../../review/counts';

export const pagesIn = (n: number): string => (n === 1 ? say`1 page` : say`${n} pages`);
export const sheetsIn = (n: number): string => (n === 1 ? say`1 sheet` : say`${n} sheets`);
