/** Every word that the language knows, by what it is for: the one table behind parser, colours, completions and formatter. */

/** Words that may never be a name. */
export const RESERVED = [
  'to', 'from', 'of', 'on', 'at', 'in', 'by', 'for', 'into', 'and', 'or', 'not', 'through', 'toward', 'along',
  'across', 'up', 'down', 'left', 'right', 'start', 'end', 'where', 'run', 'join', 'then',
] as const; // prettier-ignore

/** Function words: a call only where the bracket touches. */
export const FUNCTIONS = [
  'length', 'drawn', 'distance', 'slope', 'angle', 'area', 'round', 'min', 'max', 'abs', 'sqrt', 'sin', 'cos',
  'tan', 'asin', 'acos', 'atan', 'if',
] as const; // prettier-ignore

/** Names that are given, not words of the grammar. */
export const GIVEN = ['origin', 'pi', 'nothing', 'halfway'] as const;

export const UNITS = ['cm', 'mm', 'm', 'in', 'yd', 'deg', '%'] as const;

/** What a block holds; decides which heads its lines may begin with. */
export type BlockKind =
  | 'file'
  | 'draft'
  | 'piece'
  | 'work'
  | 'outline'
  | 'body'
  | 'sizes'
  | 'trace'
  | 'grade'
  | 'fitting'
  | 'cloth';

const DEFINITIONS = { let: 'let', choose: 'choose', solve: 'solve', expect: 'expect' } as const;
const SHAPES = { point: 'shape', line: 'shape', curve: 'shape', arc: 'shape', circle: 'circle' } as const;
const CUTTING = {
  cut: 'cut', fold: 'fold', grain: 'grain', allow: 'allow', inlay: 'inlay', corner: 'corner', notch: 'notch',
  dart: 'dart', fish: 'fishDart', mark: 'mark', button: 'mark', buttonhole: 'mark', drill: 'mark', eyelet: 'mark',
  bone: 'mark', tape: 'mark', topstitch: 'mark', crease: 'mark', balance: 'balance', marks: 'marks',
  buttons: 'marks', buttonholes: 'marks', drills: 'marks', eyelets: 'marks', bones: 'marks', label: 'label',
  pleats: 'pleats', gathers: 'gathers',
} as const; // prettier-ignore

/** The heads of each kind of block, and the rule that reads a statement beginning so. */
export const HEADS = {
  file: {
    pattern: 'pattern', use: 'use', units: 'units', tolerance: 'tolerance', drafted: 'draftedFor', measure: 'measure',
    usual: 'usual', accept: 'accept',
    ...DEFINITIONS,
    body: 'body', sizes: 'sizes', draft: 'draft', piece: 'piece', lining: 'lining', divide: 'divide', join: 'join',
    facing: 'facing', band: 'band', strip: 'strip', seam: 'seam', notch: 'notch', finish: 'finish',
    trace: 'trace', grade: 'grade', fitting: 'fitting', cut: 'cutDay', cloth: 'cloth', notion: 'notion',
  },
  draft: { drawn: 'drawnAs', ...DEFINITIONS, ...SHAPES },
  piece: { ...CUTTING, outline: 'outline', hole: 'hole', true: 'trueEdge', ...DEFINITIONS, ...SHAPES },
  work: {
    ...CUTTING, hole: 'hole', swing: 'swing', close: 'close', slash: 'slash', spread: 'spread',
    lengthen: 'lengthen', shorten: 'lengthen', widen: 'lengthen', true: 'trueEdge', smooth: 'smooth',
    ...DEFINITIONS, ...SHAPES,
  },
  outline: {},
  body: { taken: 'taken' },
  sizes: { size: 'sizeRow' },
  trace: { photo: 'photo', point: 'traced', line: 'traced', curve: 'traced', arc: 'traced', ...DEFINITIONS },
  grade: {},
  fitting: {
    try: 'pin', take: 'pin', let: 'pin', give: 'pin', shift: 'pin', fold: 'pin', open: 'pin', full: 'pin',
    pad: 'pin', undo: 'undo', follow: 'follow',
  },
  cloth: {
    width: 'width', price: 'price', 'one-way': 'nap', shrinks: 'shrinks', stretch: 'stretch',
    'bias-hang': 'biasHang', repeat: 'repeat', in: 'stock', turn: 'turn',
  },
} as const satisfies Record<BlockKind, Record<string, string>>; // prettier-ignore

/** Words that mean something inside a statement and may be names everywhere else. */
export const CONTEXTUAL = [
  'above', 'added', 'after', 'alike', 'all', 'among', 'anticlockwise', 'arriving', 'as', 'back', 'because', 'before', 'below',
  'between', 'beyond', 'bias', 'bound', 'box', 'buttoned', 'centre', 'clockwise', 'cm', 'corners', 'dated', 'deep', 'double',
  'each', 'easing', 'edge', 'faced', 'flatter', 'folds', 'fuller', 'gathered', 'going', 'hinge', 'holding', 'hollow',
  'hooked', 'inverted', 'its', 'knife', 'laced', 'laid', 'leaving', 'left-hand', 'long', 'lower', 'meets', 'midpoint',
  'mirrored', 'mitred', 'mm', 'moved', 'narrows', 'nearest', 'none', 'onto', 'out', 'over', 'pair', 'pairs', 'parallel',
  'part', 'per', 'pressed', 'radius', 'raw', 'reach', 'reversed', 'revision', 'right-hand', 'rolled', 'round', 'running', 'scale',
  'selvedge', 'sewn', 'short', 'side', 'single', 'so', 'square', 'squared', 'stepped', 'stitched', 'stock', 'straight',
  'stretched', 'stretching', 'swings', 'taking', 'that', 'the', 'triple', 'turned', 'twice', 'underlap', 'untrued',
  'upper', 'way', 'when', 'wide', 'with', 'within', 'worked', 'zip', 'about', 'bust', 'line', 'seam', 'size', 'width',
] as const; // prettier-ignore

/** Contextual words that name edges and points more often than they mean something: they take no colour of their own. */
export const OFTEN_NAMES = [
  'back', 'bust', 'centre', 'corners', 'edge', 'fold', 'line', 'lower', 'part', 'scale', 'seam', 'side', 'size', 'stock',
  'upper', 'way', 'width',
] as const; // prettier-ignore

type HeadTable = typeof HEADS;
type HeadOf<K extends BlockKind> = K extends BlockKind ? keyof HeadTable[K] : never;
export type Word = (typeof RESERVED)[number] | (typeof CONTEXTUAL)[number] | HeadOf<BlockKind>;

/** The rule for a head word in a block, or undefined. */
export function ruleOf(kind: BlockKind, word: string): string | undefined {
  const heads: Record<string, string> = HEADS[kind];
  return Object.hasOwn(heads, word) ? heads[word] : undefined;
}

/** Every statement head, over all kinds of block, in the table's order. */
export function allHeads(): string[] {
  return [...new Set(Object.values(HEADS).flatMap((heads) => Object.keys(heads)))];
}

/** Every word that has a token type of its own. */
export function allWords(): Word[] {
  return [...new Set<string>([...RESERVED, ...allHeads(), ...CONTEXTUAL])] as Word[];
}

const reserved: ReadonlySet<string> = new Set(RESERVED);
const functions: ReadonlySet<string> = new Set(FUNCTIONS);
const units: ReadonlySet<string> = new Set(UNITS);

export function isReserved(word: string): boolean {
  return reserved.has(word);
}
export function isFunction(word: string): boolean {
  return functions.has(word);
}
export function isUnit(word: string): boolean {
  return units.has(word);
}

/** Which words may stand where: for completions. */
export interface WordList {
  /** Words a line of this block may begin with. */
  readonly heads: readonly string[];
  readonly reserved: readonly string[];
  readonly contextual: readonly string[];
  readonly functions: readonly string[];
  readonly given: readonly string[];
  readonly units: readonly string[];
}

export function wordsOf(kind: BlockKind): WordList {
  return {
    heads: Object.keys(HEADS[kind]),
    reserved: RESERVED,
    contextual: CONTEXTUAL,
    functions: FUNCTIONS,
    given: GIVEN,
    units: UNITS,
  };
}
