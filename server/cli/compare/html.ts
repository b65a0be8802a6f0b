/** A comparison as one page that can be kept and sent: no other file, no network, no script but its own. */
import { tongue } from '../../../grammar/say';
import { createHash } from 'node:crypto';
import { group, text } from '../../drawing/xml';
import {
  pageScript,
  PAGE_STYLE,
  sheetElement,
  followedWords,
  problemWords,
  undraftedWords,
} from '../../review';
import { platesIn } from './drawn';
import { listOfPieces, noneDiffers, titleWords } from './phrases';
import { Places } from '../../lsp/versions/places';
import type { Compared, Comparison } from './run';

export function compareHtml(comparison: Comparison): string {
  const { before, after, patterns } = comparison;
  const title = `${before} → ${after}`;
  const sheets = patterns.map((one) => sheetOf(one, comparison));
  if (sheets.length === 0) sheets.push(text('p', { class: 'verdict' }, noneDiffers(before, after)));
  const script = pageScript();
  const policy = `default-src 'none'; style-src '${digest(PAGE_STYLE)}'; script-src '${digest(script)}'; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="${tongue()}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
${text('title', {}, title)}
<style>${PAGE_STYLE}</style>
</head>
<body>
${group('main', {}, [text('h1', {}, title), ...sheets])}
<script>${script}</script>
</body>
</html>
`;
}

const digest = (content: string): string =>
  `sha256-${createHash('sha256').update(content, 'utf8').digest('base64')}`;

function sheetOf(compared: Compared, comparison: Comparison): string {
  const { review } = compared;
  const title = titleWords(compared, comparison);
  if (review === undefined)
    return group('section', { class: 'sheet' }, [
      text('h2', {}, title),
      text('p', { class: 'verdict' }, listOfPieces(compared)),
    ]);
  const places = new Places(compared);
  return sheetElement({
    // the page's own heading says it
    title: title === `${comparison.before} → ${comparison.after}` ? '' : title,
    ...{ review, plates: platesIn(compared) },
    problems: review.problems.map((one) => problemWords(one, places.words)),
    undrafted: undraftedWords(review, comparison),
    followed: followedWords(review),
  });
}
