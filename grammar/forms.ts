/** How each statement is written: the form that a message or a completion shows. */
import { say } from './say';
import type { BlockKind } from './words';

export interface Form {
  /** What the statement is called, with its article. */
  readonly what: string;
  readonly form: string;
  readonly example: string;
}

const form = (what: string, written: string, example: string): Form => ({ what, form: written, example });

/** By the name of the rule that reads the statement. */
export const FORMS: Readonly<Record<string, Form>> = {
  pattern: form('The pattern’s title', 'pattern "TITLE"', 'pattern "Harbour skirt"'),
  use: form('Another file', 'use "PATH"', 'use "bodies/company.draft"'),
  units: form('The unit of the drawings', 'units cm', 'units cm'),
  tolerance: form('A tolerance', 'tolerance LENGTH', 'tolerance 2mm'),
  draftedFor: form('The body', 'drafted for BODY', 'drafted for ferrywoman'),
  measure: form('A measurement of your own', 'measure NAME "how it is taken"', 'measure fist "round the closed hand" in 15cm .. 35cm'),
  usual: form('A usual range of your own', 'usual RANGE in LOW .. HIGH', 'usual dart-angle in 0deg .. 30deg'),
  accept: form('An accepted finding', 'accept CODE at NAME because "REASON"', 'accept unfinished-edge at front.hem because "the cloth does not fray"'),
  let: form('A value', 'let NAME = VALUE', 'let quarter = bust / 4'),
  choose: form('A choice', 'choose NAME = VALUE in LOW .. HIGH', 'choose ease = 4cm in 2cm .. 10cm'),
  solve: form('An unknown', 'solve NAME in LOW .. HIGH so that A = B', 'solve radius in 10cm .. 30cm so that length(neckline) = neck'),
  expect: form('An expectation', 'expect A = B', 'expect length(front.side) = length(back.side) within 1mm'),
  body: form('A body', 'body NAME {', 'body ferrywoman {'),
  taken: form('The day of measuring', 'taken YEAR-MONTH-DAY', 'taken 2026-09-14'),
  measured: form('A measurement', 'NAME LENGTH', 'waist 74.5cm'),
  sizes: form('A size table', 'sizes NAME {', 'sizes chorus {'),
  sizeRow: form('The row of sizes', 'size NAME NAME …', 'size S M L'),
  row: form('A row of the table', 'NAME LENGTH LENGTH …', 'bust 84cm 92cm 100cm'),
  draft: form('A draft', 'draft NAME {', 'draft skirt {'),
  drawnAs: form('The side of a draft', 'drawn as left', 'drawn as left'),
  shape: form('A point, line, curve or arc', 'point NAME = …', 'point hem-cf = waist-cf down 60cm'),
  circle: form('A circle', 'circle NAME = centre POINT radius LENGTH', 'circle k = centre middle radius 9cm'),
  piece: form('A piece', 'piece NAME of DRAFT { or piece NAME worked from PIECE {', 'piece front of skirt {'),
  lining: form('A lining', 'lining NAME of PIECE {', 'lining front-lining of front {'),
  outline: form('An outline', 'outline from POINT {', 'outline from waist-cf {'),
  hole: form('A hole', 'hole NAME from POINT {', 'hole keyhole from top {'),
  edge: form('An edge', 'NAME along CURVE to POINT or NAME straight to POINT', 'side along hip-curve to hip-side'),
  cut: form('How a piece is cut', 'cut pair or cut 1 on fold', 'cut 1 on fold'),
  fold: form('The fold', 'fold EDGE', 'fold centre'),
  grain: form('The grain', 'grain along EDGE', 'grain along centre'),
  allow: form('An allowance', 'allow WIDTH at EDGE', 'allow 4cm at hem'),
  inlay: form('An inlay', 'inlay WIDTH at EDGE', 'inlay 2.5cm at side'),
  corner: form('A corner', 'corner at POINT mitred', 'corner at wrist-b turned back'),
  notch: form('A notch', 'notch NAME on EDGE at PLACE', 'notch balance on side at 8cm from pit, single'),
  dart: form('A dart', 'dart NAME on EDGE at PLACE, WIDTH wide, LENGTH long, pressed toward EDGE', 'dart inner on waist at 1/3 from waist-cf, 2cm wide, 9cm long, pressed toward centre'),
  fishDart: form('A fish dart', 'fish dart NAME from P to Q, WIDTH wide at PLACE', 'fish dart waist-dart from top to foot, 2cm wide at halfway'),
  mark: form('A mark', 'WORD NAME = POINT', 'button top-button = neck-cf down 2cm'),
  marks: form('A row of marks', 'WORD NAME = COUNT along LINE', 'buttons fronts = 8 along front-edge from 2cm below neck-cf to hem-cf'),
  balance: form('A balance line', 'balance line NAME from A to B', 'balance line hip-line from hip-cf to hip-f'),
  label: form('A label', 'label "TEXT"', 'label "top of pocket" at pocket-top'),
  pleats: form('A row of pleats', 'pleats NAME = COUNT knife on EDGE at PLACES', 'pleats fan = 3 knife on top at 5cm, 10cm, 15cm from cb, taking 3cm each'),
  gathers: form('A stretch of gathers', 'gathers NAME on EDGE, to LENGTH', 'gathers sleeve-top on head, to 18cm'),
  swing: form('Swinging a dart', 'swing DART to EDGE at PLACE', 'swing bust-dart to shoulder at halfway'),
  close: form('Closing a dart', 'close DART into EDGE', 'close waist-dart into hem'),
  slash: form('A slash', 'slash from P to Q, hinge at Q, open LENGTH', 'slash from hem-mid to hip-mid, hinge at hip-mid, open 4cm'),
  spread: form('Spreading', 'spread LENGTH along P to Q', 'spread 6cm along hem-mid to waist-mid'),
  lengthen: form('Lengthening', 'lengthen LENGTH at LINE', 'lengthen 3cm at hip-line'),
  trueEdge: form('Truing', 'true EDGE', 'true waist'),
  smooth: form('Smoothing', 'smooth POINT by LENGTH each side', 'smooth bust-point by 1.5cm each side'),
  divide: form('Dividing', 'divide PIECE at LINE into NAME, NAME', 'divide front at style-line into yoke holding neck, lower'),
  share: form('A share', 'NAME holding EDGE', 'yoke holding neck'),
  join: form('Joining', 'join PIECE.EDGE to PIECE.EDGE into NAME', 'join yoke.shoulder to back-yoke.shoulder into whole-yoke'),
  facing: form('A facing', 'facing NAME of PIECE along EDGE, DEPTH deep', 'facing neck-facing of front along neck, 6cm deep'),
  band: form('A band', 'band NAME for EDGES, WIDTH wide', 'band waistband for front.waist + back.waist, 4cm wide, underlap 3cm at left'),
  strip: form('A strip', 'strip NAME LENGTH by WIDTH', 'strip binding 90cm by 4cm on bias'),
  seam: form('A seam', 'seam NAME PIECE.EDGE = PIECE.EDGE', 'seam side front.side = back.side'),
  finish: form('A finish', 'finish NAME PIECE.EDGE turned up WIDTH', 'finish hem front.hem, back.hem turned up 4cm'),
  trace: form('A trace', 'trace NAME {', 'trace drape {'),
  photo: form('A photograph', 'photo "FILE" corners (X, Y) (X, Y) (X, Y) (X, Y) of WIDTH by HEIGHT', 'photo "drape.jpg" corners (0, 0) (90, 0) (90, 60) (0, 60) of 60cm by 80cm'),
  traced: form('A traced point or curve', 'curve NAME through (X, Y), (X, Y)', 'point neck at (233, 402)'),
  grade: form('A grading', 'grade TRACE for SIZES {', 'grade drape for chorus {'),
  graded: form('A graded point', 'POINT DIRECTION LENGTH each size', 'neck-cf up 2mm left 1mm each size'),
  fitting: form('A fitting', 'fitting "NAME" YEAR-MONTH-DAY {', 'fitting "first toile" 2026-10-14 {'),
  pin: form('A note of a fitting', 'take in EDGE by LENGTH each edge', 'take in seam side by 8mm each edge at waist to nothing at hip'),
  undo: form('Undoing', 'undo "FITTING"', 'undo "first toile"'),
  follow: form('Following', 'follow PIECE', 'follow sleeve'),
  cutDay: form('The day of cutting', 'cut YEAR-MONTH-DAY', 'cut 2026-10-24'),
  cloth: form('A cloth', 'cloth NAME {', 'cloth wool {'),
  width: form('The width of a cloth', 'width LENGTH', 'width 148cm'),
  price: form('A price', 'price AMOUNT CURRENCY per m', 'price 24.50 EUR per m'),
  nap: form('A nap', 'one-way', 'one-way'),
  shrinks: form('Shrinkage', 'shrinks SHARE along, SHARE across', 'shrinks 3% along, 1% across'),
  stretch: form('Stretch', 'stretch SHARE across, SHARE along', 'stretch 40% across, 10% along'),
  biasHang: form('The drop of the bias', 'bias-hang LENGTH over LENGTH', 'bias-hang 12mm over 60cm, narrows 14mm'),
  repeat: form('A repeat', 'repeat LENGTH by LENGTH', 'repeat 12cm by 9cm'),
  stock: form('What is in stock', 'in stock LENGTH', 'in stock 5.6m'),
  turn: form('The turn of the cloth', 'turn LENGTH', 'turn 2mm'),
  notion: form('A notion', 'notion NAME = COUNT', 'notion shirt-button = 8, 0.40 EUR each'),
}; // prettier-ignore

/** A block as it is called in a sentence. */
export const BLOCKS: Readonly<Record<BlockKind, string>> = {
  get file() {
    return say`the file, outside every block`;
  },
  get draft() {
    return say`a draft`;
  },
  get piece() {
    return say`a piece`;
  },
  get work() {
    return say`a worked piece`;
  },
  get outline() {
    return say`an outline`;
  },
  get body() {
    return say`a body`;
  },
  get sizes() {
    return say`a size table`;
  },
  get trace() {
    return say`a trace`;
  },
  get grade() {
    return say`a grading`;
  },
  get fitting() {
    return say`a fitting`;
  },
  get cloth() {
    return say`a cloth`;
  },
};
