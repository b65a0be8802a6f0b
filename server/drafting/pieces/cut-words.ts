/** The cutting words of a piece: how many are cut, how they lie, of which cloth. */
import { isEnglish, say } from '../../../grammar/say';
import type { CutLayer as CutLayerNode, CutNode } from '../../../grammar/syntax';
import type { CutLayer, CutWords } from '../model';
import { ofKind } from '../values/arithmetic';
import { report, type Reader } from '../values/reader';

/** More of one piece than this is a slip. */
const MOST = 999;

/** `cut pair in silk, pair in coutil, right side up` */
export function cutWords(reader: Reader, node: CutNode): CutWords | undefined {
  const layers = node.layers.map((layer) => cutLayer(reader, layer));
  if (layers.some((layer) => layer === undefined)) return undefined;
  return wordsFor(layers as CutLayer[], node.rightSideUp);
}

function cutLayer(reader: Reader, node: CutLayerNode): CutLayer | undefined {
  const bare = typeof node.count === 'number';
  const count = typeof node.count === 'number' ? node.count : ofKind(reader, node.count, 'ratio', 'cut');
  if (count === undefined) return undefined;
  if (!Number.isInteger(count) || count < 1 || count > MOST) {
    return report(
      reader,
      'no-such-number',
      typeof node.count === 'number' ? node.at : node.count.at,
      say`Pieces are cut in whole numbers from 1 to ${MOST}; this comes to ${Math.round(count * 1000) / 1000}.`,
    );
  }
  const as = node.as ?? 'single';
  // "2 pairs" are four pieces; "pair" by itself has its two counted
  return { count: as === 'pairs' && !bare ? 2 * count : count, as, cloth: node.cloth?.text ?? '' };
}

/** Layers with the words that are printed on the piece. */
export function wordsFor(layers: readonly CutLayer[], rightSideUp: boolean): CutWords {
  const words = [...layers.map(layerWords), ...(rightSideUp ? [say`right side up`] : [])];
  return { layers, rightSideUp, text: say`cut ${words.join(', ')}` };
}

/** "pair in silk", "2 pairs", "1 on fold", "8 alike", "1 right" */
export function layerWords({ count, as, cloth }: CutLayer): string {
  const of = cloth === '' ? '' : say` in ${cloth}`;
  return `${countWords(count, as)}${of}`;
}

function countWords(count: number, as: CutLayer['as']): string {
  switch (as) {
    case 'pairs':
      return count === 2 ? say`pair` : say`${count / 2} pairs`;
    case 'fold':
      return say`${count} on fold`;
    case 'alike':
      return say`${count} alike`;
    case 'open':
      return say`${count} open`;
    case 'left':
      return say`${count} left`;
    case 'right':
      return say`${count} right`;
    case 'single':
      // elsewhere a bare number would be read as a measure
      return isEnglish() ? `${count}` : `${count}×`;
  }
}

/** The words for a part of a piece that has no share of the fold: one for each half. */
export function unfolded({ layers, rightSideUp }: CutWords): CutWords {
  const apart = layers.map((layer): CutLayer => {
    return layer.as === 'fold' ? { ...layer, count: 2 * layer.count, as: 'pairs' } : layer;
  });
  return wordsFor(apart, rightSideUp);
}

/** `cut pair` of a piece that differs from side to side comes out as one of each, right side of the cloth up. */
export function sidedCut({ layers }: CutWords, side: 'left' | 'right'): CutWords {
  const own = layers.map((layer): CutLayer => {
    if (layer.as === 'pairs') return { ...layer, count: layer.count / 2, as: side };
    return layer.as === 'single' || layer.as === 'alike' ? { ...layer, as: side } : layer;
  });
  return wordsFor(own, true);
}

/** Both halves of a piece on the fold differ and are drawn: it is cut flat, and nothing of it is left to be mirrored. */
export function openCut({ layers, rightSideUp }: CutWords): CutWords {
  const { text } = wordsFor(
    layers.map((layer) => ({ ...layer, as: 'open' })),
    rightSideUp,
  );
  return { layers: layers.map((layer) => ({ ...layer, as: 'single' })), rightSideUp, text };
}
