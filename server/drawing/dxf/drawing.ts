/**
 * A drawing as a plain DXF of release 12, for cutters and plotters: lines, polylines and words in full size, on layers
 * named by what they are, curves as short chords. One unit is one millimetre; a test square lies on a layer of its own.
 * Groups after the published DXF reference, release 12, *from memory*.
 */
import { inWords, say } from '../../../grammar/say';
import { apply, rotation, translation, type Point } from '../../geometry';
import {
  arrowHeads,
  HEAD_HALF_WIDTH_MM,
  HEAD_LENGTH_MM,
  lineTypeOf,
  paintOrder,
  type ArrowHead,
  type LineType,
} from '../lines';
import type { Drawing, DrawnLine, DrawnText, LineRole, PieceDrawing } from '../model';
import { pathOf } from '../path';
import { asciiOf, Names, spelt } from './ascii';
import { flatOf } from './flat';
import { END, fileOf, lineTags, pointTags, polylineTags, real, section, textTags, type Tag } from './tags';

/** What the layers are called, by the roles of the drawing. */
const LAYER_NAMES: Readonly<Record<LineRole, string>> = {
  cutting: 'CUTTING',
  hole: 'CUT-OUT',
  notch: 'NOTCH',
  sewing: 'SEWING',
  inlay: 'INLAY',
  dart: 'DART',
  fold: 'FOLD',
  grain: 'GRAIN',
  centre: 'CENTRE',
  mark: 'MARK',
  tape: 'TAPE',
  topstitch: 'TOPSTITCH',
  crease: 'CREASE',
  balance: 'BALANCE',
  construction: 'CONSTRUCTION',
};
const WORDS = 'WORDS';
const DRILL = 'DRILL';
const TEST_SQUARE = 'TEST-SQUARE';

interface Layer {
  readonly name: string;
  /** Undefined: a solid line. */
  readonly type?: LineType;
}

export function toDrawingDxf(drawing: Drawing): string {
  const layers = new Layers(drawing.sizes ?? []);
  const named = new Map(drawing.pieces.map((piece) => [piece.name, piece]));
  const entities = drawing.placements.flatMap(({ piece: name, by }) => {
    const piece = named.get(name);
    if (piece === undefined) return [];
    const { title, body, sizes = [] } = drawing;
    return pieceTags(piece, by, layers, [title, body, ...sizes, ...(piece.authored ?? [])]);
  });
  const square = testSquareTags(drawing, layers);
  return fileOf([
    ...section('HEADER', HEADER),
    ...section('TABLES', [...lineTypeTable(layers.all), ...layerTable(layers.all)]),
    ...section('BLOCKS', []),
    ...section('ENTITIES', [...entities, ...square]),
    END,
  ]);
}

const HEADER: readonly Tag[] = [
  [9, '$ACADVER'],
  [1, 'AC1009'],
  [9, '$LTSCALE'],
  [40, '1.0'],
];

/** The layers that are drawn on, each made when it is first used; those of a nest have their size in the name. */
class Layers {
  private readonly found = new Map<string, Layer>();
  private readonly names = new Names();

  constructor(private readonly sizes: readonly string[]) {}

  get all(): readonly Layer[] {
    return [...this.found.values()];
  }

  ofLine({ role, ofSize }: Pick<DrawnLine, 'role' | 'ofSize'>): string {
    return this.named(LAYER_NAMES[role], ofSize, lineTypeOf({ role, ofSize }, this.sizes));
  }

  named(name: string, ofSize?: string, type?: LineType): string {
    const key = ofSize === undefined ? name : `${name}_${ofSize}`;
    const before = this.found.get(key);
    if (before !== undefined) return before.name;
    const layer = { name: this.names.of(key), ...(type && type.dash.length > 0 && { type }) };
    this.found.set(key, layer);
    return layer.name;
  }
}

const table = (name: string, entries: readonly (readonly Tag[])[]): readonly Tag[] => [
  [0, 'TABLE'],
  [2, name],
  [70, String(entries.length)],
  ...entries.flat(),
  [0, 'ENDTAB'],
];

const CONTINUOUS: readonly Tag[] = [
  [0, 'LTYPE'],
  [2, 'CONTINUOUS'],
  [70, '0'],
  [3, 'Solid line'],
  [72, '65'],
  [73, '0'],
  [40, '0.0'],
];

/** A dash is a length, a gap one below nothing. */
const lineTypeTable = (layers: readonly Layer[]): readonly Tag[] =>
  table('LTYPE', [
    CONTINUOUS,
    ...layers.flatMap(({ name, type }): readonly (readonly Tag[])[] =>
      type === undefined
        ? []
        : [
            [
              [0, 'LTYPE'],
              [2, name],
              [70, '0'],
              [3, asciiOf(spelt(inWords(type.words)))],
              [72, '65'],
              [73, String(type.dash.length)],
              [40, real(type.dash.reduce((sum, mm) => sum + mm, 0))],
              ...type.dash.map((mm, i): Tag => [49, real(i % 2 === 0 ? mm : -mm)]),
            ],
          ],
    ),
  ]);

/** One ink: colour 7 is black on white and white on black. */
const layerTable = (layers: readonly Layer[]): readonly Tag[] =>
  table('LAYER', [
    layerEntry('0', 'CONTINUOUS'),
    ...layers.map(({ name, type }) => layerEntry(name, type === undefined ? 'CONTINUOUS' : name)),
  ]);

const layerEntry = (name: string, lineType: string): readonly Tag[] => [
  [0, 'LAYER'],
  [2, name],
  [70, '0'],
  [62, '7'],
  [6, lineType],
];

/** From the loudest line to the quietest, so that the layers of a file are listed with the cutting lines first. */
const ORDER = [...paintOrder].reverse();

function pieceTags(
  piece: PieceDrawing,
  by: Point,
  layers: Layers,
  authored: readonly string[],
): readonly Tag[] {
  const laid = ({ x, y }: Point): Point => ({ x: x + by.x, y: y + by.y });
  const lines = ORDER.filter((role) => role !== 'construction').flatMap((role) =>
    piece.lines.filter((line) => line.role === role),
  );
  return [
    ...lines.flatMap((line) => lineOf(line, laid, layers)),
    ...lines.flatMap(({ drilled, ofSize }) =>
      drilled === undefined ? [] : pointTags(layers.named(DRILL, ofSize), laid(drilled)),
    ),
    ...piece.texts.flatMap((text) => textOf(text, laid, layers, authored)),
  ];
}

function lineOf(line: DrawnLine, laid: (at: Point) => Point, layers: Layers): readonly Tag[] {
  const layer = layers.ofLine(line);
  const { points, closed } = flatOf(pathOf(line), line.closed);
  const [from, to] = points;
  const body =
    points.length === 2 && !closed
      ? lineTags(layer, laid(from!), laid(to!))
      : polylineTags(layer, points.map(laid), closed);
  const heads = arrowHeads(line).map((head) => polylineTags(layer, headOf(head).map(laid), true));
  return [...body, ...heads.flat()];
}

function headOf({ at, turn }: ArrowHead): readonly Point[] {
  const turned = rotation({ x: 0, y: 0 }, (turn * Math.PI) / 180);
  const corners = [
    { x: 0, y: 0 },
    { x: -HEAD_LENGTH_MM, y: HEAD_HALF_WIDTH_MM },
    { x: -HEAD_LENGTH_MM, y: -HEAD_HALF_WIDTH_MM },
  ];
  return corners.map((corner) => apply(translation(at), apply(turned, corner)));
}

const textOf = (
  { role, text, at, size, turn, ofSize }: DrawnText,
  laid: (at: Point) => Point,
  layers: Layers,
  authored: readonly string[],
): readonly Tag[] =>
  // only the lines of the label hold sentences of ours: the others are names, sizes and notes
  textTags(layers.named(WORDS, ofSize), laid(at), role === 'detail' ? spelt(text, authored) : text, {
    ...{ height: size, turn, middle: true },
  });

const INCH_MM = 25.4;
const ABOVE_SQUARE = 15;

/** A print or a cut in another size is found by it: one unit of the file is one millimetre. */
function testSquareTags({ frame, unit }: Drawing, layers: Layers): readonly Tag[] {
  const side = unit === 'in' ? 4 * INCH_MM : 100;
  const words = unit === 'in' ? '4 in' : '100 mm';
  const layer = layers.named(TEST_SQUARE);
  const [left, top] = [frame.left, frame.bottom + ABOVE_SQUARE];
  const corners = [
    { x: left, y: top },
    { x: left + side, y: top },
    { x: left + side, y: top + side },
    { x: left, y: top + side },
  ];
  const middle = { x: left + side / 2, y: top + side / 2 };
  return [
    ...polylineTags(layer, corners, true),
    ...textTags(layer, middle, say`${words} by ${words}`, { height: 5, middle: true }),
    ...textTags(layer, { x: middle.x, y: middle.y + 10 }, spelt(say`measure before you cut`), {
      height: 4,
      middle: true,
    }),
  ];
}
