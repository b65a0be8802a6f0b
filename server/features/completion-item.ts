/** One thing that is offered for completion, before it is known what accepting it replaces. */
export type CompletionKind =
  | 'word'
  | 'value'
  | 'choice'
  | 'measurement'
  | 'shape'
  | 'piece'
  | 'draft'
  | 'edge'
  | 'seam'
  | 'body'
  | 'function'
  | 'statement'
  | 'file';

export interface Item {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail: string;
  readonly doc: string;
  /** Of a shape: a line or a curve, not a point. */
  readonly line?: true;
  /** A dart, which is spoken of among the edges of its piece. */
  readonly dart?: true;
  /** What is typed to find it, where that is not its label. */
  readonly typed?: string;
  /** What it writes, in the notation of editors for places to fill in; its label where there is none. */
  readonly snippet?: string;
}

export const item = (label: string, kind: CompletionKind, detail = '', doc = ''): Item => ({
  label,
  kind,
  detail,
  doc,
});

/** Things that are known, and behind them those of others whose names are not among them. */
export function besides(known: readonly Item[], others: readonly Item[]): Item[] {
  const labels = new Set(known.map(({ label }) => label));
  return [...known, ...others.filter(({ label }) => !labels.has(label))];
}
