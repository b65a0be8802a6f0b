/** The figures of a drafted pattern as tables in the file's own unit. */
import { say } from '../../../grammar/say';
import type { Pattern, Piece, Seam, Shape } from '../../drafting/model';
import { print, printAngle } from '../../drafting/values/quantity';
import { lengthText } from '../../drawing/written/lengths';
import { table } from './ink';
import { bodyName } from './measure-json';

export function measureText(pattern: Pattern): string {
  const lengthOf = (mm: number) => lengthText(mm, pattern.unit);
  const sections = [
    section(say`values`, valueRows(pattern)),
    section(say`points`, pointRows(pattern, lengthOf), ['', say`right`, say`down`]),
    section(say`lines and curves`, curveRows(pattern, lengthOf), ['', say`length`]),
    ...pattern.pieces.map((piece) => pieceSection(piece, pattern, lengthOf)),
    section(
      say`seams`,
      pattern.seams.map((seam) => seamRow(seam, lengthOf)),
      ['', say`left`, say`right`, say`difference`],
    ),
  ];
  return [headline(pattern), ...sections.filter((text) => text !== '')].join('\n\n') + '\n';
}

function headline(pattern: Pattern): string {
  const body = bodyName(pattern);
  const title = pattern.title === '' ? say`Pattern` : pattern.title;
  return body === null
    ? say`${title}. Lengths in ${pattern.unit}.`
    : say`${title}, drafted for ${body}. Lengths in ${pattern.unit}.`;
}

function section(title: string, rows: readonly (readonly string[])[], heads?: readonly string[]): string {
  if (rows.length === 0) return '';
  if (heads === undefined) return [title, ...table(rows, '  ')].join('\n');
  const [first, ...rest] = table([[title, ...heads.slice(1)], ...rows.map(indented)]);
  return [first, ...rest].join('\n');
}

const indented = ([name, ...cells]: readonly string[]): readonly string[] => [`  ${name}`, ...cells];

function valueRows({ values, unit }: Pattern): string[][] {
  return [...values].map(([name, value]) => {
    if (value.kind === 'text') return [name, value.text];
    if (value.kind === 'length') return [name, lengthText(value.amount, unit)];
    return [name, value.kind === 'angle' ? printAngle(value.amount) : print(value, unit)];
  });
}

function pointRows({ shapes }: Pattern, lengthOf: (mm: number) => string): string[][] {
  return [...shapes].flatMap(([name, shape]) =>
    shape.kind === 'point' ? [[name, lengthOf(shape.point.x), lengthOf(shape.point.y)]] : [],
  );
}

function curveRows({ shapes }: Pattern, lengthOf: (mm: number) => string): string[][] {
  const curve = (shape: Shape) => (shape.kind === 'point' ? undefined : shape.path);
  return [...shapes].flatMap(([name, shape]) => {
    const path = curve(shape);
    return path === undefined ? [] : [[name, lengthOf(path.length)]];
  });
}

function pieceSection(
  { name, cut, area, edges }: Piece,
  { unit }: Pattern,
  lengthOf: (mm: number) => string,
): string {
  const words = [cut?.text, print({ kind: 'area', amount: area }, unit)].filter(Boolean).join(', ');
  const rows = edges.map((edge) => [edge.name, lengthOf(edge.drawn), lengthOf(edge.sewn)]);
  return `${say`piece ${name}: ${words}`}\n${section('', rows, ['', say`drawn`, say`sewn`])}`;
}

function seamRow(seam: Seam, lengthOf: (mm: number) => string): string[] {
  if (seam.itsPair) return [seam.name, lengthOf(seam.leftLength), say`its pair`, ''];
  if (!seam.comparable)
    return [seam.name, lengthOf(seam.leftLength), lengthOf(seam.rightLength), say`not compared`];
  return [seam.name, ...[seam.leftLength, seam.rightLength, seam.difference].map(lengthOf)];
}
