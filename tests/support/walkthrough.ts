/** The pictures of the walkthrough, drawn from the template of the skirt in the colours of whatever theme is worn. */
import type { PieceDrawing } from '../../server/drawing/model';
import { draw } from '../../server/drawing/draw';
import { pathData } from '../../server/drawing/lines';
import { tried } from './pages';
import { read } from './sources';

const [WIDTH, HEIGHT] = [520, 320];
const INK = 'var(--vscode-foreground, #1f1f1f)';
const GROUND = 'var(--vscode-editor-background, #ffffff)';
const FAULT = 'var(--vscode-editorError-foreground, #a1260d)';
/** Pixels a millimetre, so that the longest skirt fits. */
const SCALE = 0.32;

const template = read('client/templates/skirt.draft');
const skirt = (text = template) => draw(tried({ section: '', text, beside: new Map() }).pattern);

const shorter = (text: string): string => text.replace('skirt-length = 68cm', 'skirt-length = 58cm');

function pieceOf(name: string, text?: string): PieceDrawing {
  return skirt(text).pieces.find((piece) => piece.name === name)!;
}

type Look = Partial<Record<string, string>>;

/** A line as wide and dashed as this on the picture, whatever the scale of the pieces. */
function stroke(width: number, ...dash: readonly number[]): string {
  const [wide, ...dashed] = [width, ...dash].map((pixels) => (pixels / SCALE).toFixed(1));
  return `stroke-width="${wide}"` + (dashed.length > 0 ? ` stroke-dasharray="${dashed.join(' ')}"` : '');
}

/** Weight and dash of the lines that are read at this size. */
const LOOK: Look = {
  cutting: stroke(2),
  sewing: stroke(1, 5, 4),
  fold: stroke(1.4, 14, 4, 3, 4),
  grain: stroke(1),
  dart: stroke(1, 5, 4),
};

/** A piece with its upper left corner at a place. */
function laid(piece: PieceDrawing, x: number, y: number, look = LOOK): string {
  const lines = piece.lines.filter(({ role }) => look[role] !== undefined);
  const paths = lines.map((line) => `<path ${look[line.role]} d="${pathData(line)}"/>`);
  const place = `translate(${x} ${y}) scale(${SCALE}) translate(${-piece.frame.left} ${-piece.frame.top})`;
  return `<g fill="none" stroke="${INK}" transform="${place}">${paths.join('')}</g>`;
}

/** Lines of a pattern, as an editor shows them. */
function code(lines: readonly string[], x: number, y: number): string {
  const font = 'font-family="var(--vscode-editor-font-family, monospace), monospace" font-size="13"';
  const rows = lines.map(
    (line, i) => `<text xml:space="preserve" x="${x}" y="${y + 20 * i}">${escaped(line)}</text>`,
  );
  return `<g ${font} fill="${INK}">${rows.join('')}</g>`;
}

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;');

const words = (text: string, x: number, y: number, fill = INK): string =>
  `<text x="${x}" y="${y}" font-family="var(--vscode-font-family, sans-serif), sans-serif" font-size="14" fill="${fill}">${escaped(text)}</text>`;

const page = (...parts: readonly string[]): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}">
<rect x="1" y="1" width="${WIDTH - 2}" height="${HEIGHT - 2}" fill="${GROUND}" stroke="${INK}" stroke-opacity="0.35"/>
${parts.join('\n')}
</svg>
`;

const [BACK, FRONT] = [288, 396];
const TOP = 40;

function sample(): string {
  const lines = [
    'pattern "Straight skirt"',
    'drafted for wearer',
    '',
    'body wearer {',
    '  waist 74cm',
    '  hip 99cm',
    '}',
    '',
    'piece front of skirt {',
    '  cut 1 on fold',
  ];
  return page(code(lines, 22, 66), laid(pieceOf('back'), BACK, TOP), laid(pieceOf('front'), FRONT, TOP));
}

/** What a piece was, where only its outline counts. */
const WAS: Look = { cutting: stroke(1, 2, 3) };

function number(): string {
  const now = shorter(template);
  return page(
    code(['choose skirt-length', '  = 58cm', '  in 40cm .. 95cm'], 22, 110),
    `<rect x="52" y="115" width="46" height="21" fill="none" stroke="${INK}" stroke-width="1.5"/>`,
    words('was 68cm', 118, 130),
    laid(pieceOf('back'), BACK, TOP, WAS),
    laid(pieceOf('front'), FRONT, TOP, WAS),
    laid(pieceOf('back', now), BACK, TOP),
    laid(pieceOf('front', now), FRONT, TOP),
  );
}

/** A wave under words, as an editor underlines an error. */
function wave(x: number, y: number, width: number): string {
  const waves = Array.from({ length: Math.round(width / 8) }, () => 'q2 -4 4 0 q2 4 4 0').join(' ');
  return `<path d="M${x} ${y} ${waves}" fill="none" stroke="${FAULT}" stroke-width="1.5"/>`;
}

function seam(): string {
  return page(
    code(['seam side', '  front.side = back.side'], 22, 110),
    wave(36, 137, 176),
    words('front.side is longer', 22, 180, FAULT),
    words('than back.side', 22, 202, FAULT),
    laid(pieceOf('back'), BACK, TOP),
    laid(pieceOf('front'), FRONT, TOP),
    `<ellipse cx="384" cy="92" rx="28" ry="58" fill="none" stroke="${FAULT}" stroke-width="2"/>`,
  );
}

/** A4, upright, in the scale of the pieces. */
const [PAPER_WIDE, PAPER_HIGH] = [190 * SCALE, 277 * SCALE];

function print(): string {
  const papers = [0, 1, 2].flatMap((row) =>
    [0, 1, 2, 3].map(
      (column) =>
        `<rect x="${268 + column * PAPER_WIDE}" y="${28 + row * PAPER_HIGH}" width="${PAPER_WIDE}" height="${PAPER_HIGH}"/>`,
    ),
  );
  return page(
    `<g fill="none" stroke="${INK}" stroke-opacity="0.5">${papers.join('')}</g>`,
    laid(pieceOf('back'), BACK, TOP),
    laid(pieceOf('front'), FRONT, TOP),
    `<rect x="60" y="92" width="100" height="100" fill="none" stroke="${INK}" stroke-width="1.5"/>`,
    words('10 cm', 90, 147),
    words('Measure this square', 44, 224),
    words('before you cut', 62, 246),
  );
}

function compare(): string {
  const hatch = `<pattern id="lost" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V7" stroke="${INK}" stroke-width="1.4"/></pattern>`;
  const now = shorter(template);
  const fill = (name: string, x: number) => {
    const cut = pieceOf(name).lines.find(({ role }) => role === 'cutting')!;
    const { frame } = pieceOf(name);
    const from = pieceOf(name, now).frame.bottom;
    const place = `translate(${x} ${TOP}) scale(${SCALE}) translate(${-frame.left} ${-frame.top})`;
    return `<clipPath id="below-${name}"><rect x="${frame.left - 9}" y="${from}" width="999" height="999"/></clipPath><g transform="${place}"><g clip-path="url(#below-${name})"><path d="${pathData(cut)}" fill="url(#lost-scaled)"/></g></g>`;
  };
  const scaled = hatch
    .replace('id="lost"', 'id="lost-scaled"')
    .replace('rotate(45)', `scale(${1 / SCALE}) rotate(45)`);
  return page(
    `<defs>${scaled}</defs>`,
    code(['- skirt-length = 68cm', '+ skirt-length = 58cm'], 22, 100),
    words('back and front: 10 cm shorter', 22, 160),
    words('the seams still match', 22, 182),
    fill('back', BACK),
    fill('front', FRONT),
    laid(pieceOf('back'), BACK, TOP, WAS),
    laid(pieceOf('front'), FRONT, TOP, WAS),
    laid(pieceOf('back', now), BACK, TOP),
    laid(pieceOf('front', now), FRONT, TOP),
  );
}

/** By the name of the file. */
export const walkthroughPictures: Readonly<Record<string, () => string>> = {
  'open-a-sample': sample,
  'change-a-number': number,
  'break-a-seam': seam,
  print,
  compare,
};
