/** Which dart of which garment a dart is, as far as the names of its piece and its edge say so. */
import { say } from '../../grammar/say';
import type { Expr } from '../../grammar/syntax';
import type { Dart, Piece } from '../drafting/model';
import { called } from './seam-ends';

export type DartKind =
  'skirt-front' | 'skirt-back' | 'bodice-waist-front' | 'bodice-waist-back' | 'bust' | 'back-shoulder';

/** How each is spoken of. */
export const DART_WORDS: Readonly<Record<DartKind, () => string>> = {
  'skirt-front': () => say`a dart of a skirt’s front`,
  'skirt-back': () => say`a dart of a skirt’s back`,
  'bodice-waist-front': () => say`a waist dart of a bodice’s front`,
  'bodice-waist-back': () => say`a waist dart of a bodice’s back`,
  bust: () => say`a bust dart`,
  'back-shoulder': () => say`a dart of a back shoulder`,
};

const BODICE = ['shoulder', 'armhole', 'scye', 'neck', 'neckline'] as const;
const LEGS = ['rise', 'crotch', 'fork', 'inseam', 'inside-leg', 'inner-leg'] as const;

/** Undefined where the names leave it open; of trousers nothing is said. */
export function kindOf({ base, edges }: Piece, { name, edge }: Dart): DartKind | undefined {
  const has = (...words: readonly string[]): boolean => edges.some((one) => called(one.name, ...words));
  const bodice = has(...BODICE);
  const side = called(base, 'front') ? 'front' : called(base, 'back') ? 'back' : undefined;
  if (called(name, 'bust') && side !== 'back') return 'bust';
  if (side === undefined) return undefined;
  if (called(edge, 'waist', 'waistline')) {
    if (bodice) return `bodice-waist-${side}`;
    return has('hem') && !has(...LEGS) ? `skirt-${side}` : undefined;
  }
  if (!bodice) return undefined;
  if (side === 'back') return called(edge, 'shoulder') ? 'back-shoulder' : undefined;
  return called(edge, 'side', ...BODICE) ? 'bust' : undefined;
}

/** Whether what a dart swings about bears the bust in its name: the point of the body, not the end of the dart. */
export function swingsAboutBust({ name, statement: { node } }: Dart): boolean {
  const about =
    node.kind === 'dart'
      ? node.swingsAbout
      : node.kind === 'edge'
        ? node.runs.flatMap((run) => (run.kind === 'dart' && run.name.text === name ? [run.by] : []))[0]
        : undefined;
  return about !== undefined && called(lastName(about), 'bust');
}

const lastName = (expr: Expr): string => (expr.kind === 'ref' ? expr.path.at(-1)!.text : '');
