/** Papers that a pattern is printed on. Millimetres, upright. */

export interface Paper {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

const INCH_MM = 25.4;

/** The longest side that a page of a PDF may have without a unit of its own (ISO 32000-1, annex C): 14,400 points. */
export const LONGEST_MM = (14_400 / 72) * INCH_MM;

/** A series: ISO 216. Letter and Legal: ANSI/ASME Y14.1 has Letter (8½ by 11 in) as size A; Legal (8½ by 14 in) *from memory*. */
export const papers: readonly Paper[] = [
  { name: 'A4', width: 210, height: 297 },
  { name: 'A3', width: 297, height: 420 },
  { name: 'Letter', width: 8.5 * INCH_MM, height: 11 * INCH_MM },
  { name: 'Legal', width: 8.5 * INCH_MM, height: 14 * INCH_MM },
];

/** A paper by its name, whatever the case. */
export const paperNamed = (name: string): Paper | undefined =>
  papers.find((paper) => paper.name.toLowerCase() === name.toLowerCase());

export const turned = ({ name, width, height }: Paper): Paper => ({ name, width: height, height: width });
