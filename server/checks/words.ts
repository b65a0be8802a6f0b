/** Words that several checks share. */
import { say } from '../../grammar/say';

/** Which way one point lies from another, as a cutter says it looking at the paper. */
export function compassWord(from: { x: number; y: number }, to: { x: number; y: number }): string {
  const [right, down] = [to.x - from.x, to.y - from.y];
  const size = Math.hypot(right, down);
  const across = Math.abs(right) > 0.38 * size ? (right > 0 ? say`to the right` : say`to the left`) : '';
  const up = Math.abs(down) > 0.38 * size ? (down > 0 ? say`below` : say`above`) : '';
  return [up, across].filter((word) => word !== '').join(say` and `);
}

/** `side`, `side and hem`, `side, hem and waist` */
export function listed(words: readonly string[], last = say`and`): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} ${last} ${words[words.length - 1]}`;
}
