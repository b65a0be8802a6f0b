/**
 * The layers of the exchange format ASTM D6673 (after ANSI/AAMA-292): what lies on which number. The numbers are *from
 * memory* of the standard and were not checked against a bought copy; what the format asks for that is not written is
 * said in server/cli/FORMATS.md.
 */
export const LAYERS = {
  /** The boundary of the piece, and the words about style and piece. */
  boundary: '1',
  /** Corners, and ends of straight stretches, of the lines on layers 1, 8, 11 and 14. */
  turnPoint: '2',
  /** Points of the curves of these lines. */
  curvePoint: '3',
  notch: '4',
  mirrorLine: '6',
  grain: '7',
  /** Drawn inside the piece and not cut. */
  internal: '8',
  cutOut: '11',
  drillHole: '13',
  sewLine: '14',
  annotation: '15',
} as const;
