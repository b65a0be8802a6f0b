/**
 * What the page of a comparison does: shows the two on one another, side by side or to be swiped, moves and enlarges both
 * together, and leads from a row to its mark and back. Plain script, so that a kept page works by itself.
 */
import { say } from '../../grammar/say';

/** Words as a text of the script. */
const quoted = (words: string): string =>
  `'${words.replace(/[\\'<]/g, (sign) => `\\x${sign.charCodeAt(0).toString(16)}`)}'`;

export const pageScript = (): string =>
  SCRIPT.replace('{was}', () => quoted(say`As it was`))
    .replace('{now}', () => quoted(say`As it is now`))
    .replace('{share}', () => quoted(say`How much of the old drawing is shown`));

const SCRIPT = `
'use strict';
for (const stage of document.querySelectorAll('.stage')) {
  const first = stage.querySelector('svg');
  const whole = first.getAttribute('viewBox').split(' ').map(Number);
  let view = whole.slice();
  const drawings = () => stage.querySelectorAll('svg');
  const show = () => { for (const svg of drawings()) svg.setAttribute('viewBox', view.map((n) => n.toFixed(3)).join(' ')); };
  const figure = (only, words) => {
    const made = document.createElement('figure');
    const svg = first.cloneNode(true);
    svg.classList.add(only);
    const caption = document.createElement('figcaption');
    caption.textContent = words;
    made.append(caption, svg);
    return made;
  };
  const setMode = (mode) => {
    stage.dataset.mode = mode;
    stage.style.removeProperty('--at');
    if (mode === 'overlay') stage.replaceChildren(first);
    else stage.replaceChildren(figure('only-was', {was}), figure('only-now', {now}));
    if (mode === 'swipe') {
      const slider = document.createElement('input');
      slider.type = 'range';
      slider.setAttribute('aria-label', {share});
      slider.addEventListener('input', () => stage.style.setProperty('--at', slider.value + '%'));
      stage.append(slider);
    }
    for (const button of stage.parentElement.querySelectorAll('[data-mode][aria-pressed]'))
      button.setAttribute('aria-pressed', String(button.dataset.mode === mode));
    show();
  };
  for (const button of stage.parentElement.querySelectorAll('.modes [data-mode]'))
    button.addEventListener('click', () => setMode(button.dataset.mode));
  stage.parentElement.querySelector('[data-whole]').addEventListener('click', () => { view = whole.slice(); show(); });
  const spot = (svg, event) => {
    const point = svg.createSVGPoint();
    point.x = event.clientX;
    point.y = event.clientY;
    return point.matrixTransform(svg.getScreenCTM().inverse());
  };
  stage.addEventListener('wheel', (event) => {
    const svg = event.target.closest('svg');
    if (svg === null) return;
    event.preventDefault();
    const at = spot(svg, event);
    const by = Math.min(Math.max(Math.exp(event.deltaY / 400), 0.5), 2);
    const scale = Math.min(Math.max(view[2] * by, whole[2] / 60), whole[2] * 2) / view[2];
    view = [at.x - (at.x - view[0]) * scale, at.y - (at.y - view[1]) * scale, view[2] * scale, view[3] * scale];
    show();
  }, { passive: false });
  let held;
  stage.addEventListener('pointerdown', (event) => {
    const svg = event.target.closest('svg');
    if (svg === null || event.target.closest('.mark')) return;
    held = { svg, at: spot(svg, event) };
    stage.setPointerCapture(event.pointerId);
  });
  stage.addEventListener('pointermove', (event) => {
    if (held === undefined) return;
    const now = spot(held.svg, event);
    view = [view[0] + held.at.x - now.x, view[1] + held.at.y - now.y, view[2], view[3]];
    show();
  });
  for (const end of ['pointerup', 'pointercancel']) stage.addEventListener(end, () => { held = undefined; });
  const sheet = stage.closest('.sheet');
  const choose = (row) => {
    for (const one of sheet.querySelectorAll('.chosen')) one.classList.remove('chosen');
    for (const one of sheet.querySelectorAll('[data-row="' + row + '"]')) one.classList.add('chosen');
    return sheet.querySelector('svg [data-row="' + row + '"]');
  };
  const near = (element) => {
    const box = element.getBBox();
    const matrix = element.ownerSVGElement.getScreenCTM().inverse().multiply(element.getScreenCTM());
    const point = element.ownerSVGElement.createSVGPoint();
    point.x = box.x + box.width / 2;
    point.y = box.y + box.height / 2;
    const middle = point.matrixTransform(matrix);
    if (middle.x < view[0] || middle.y < view[1] || middle.x > view[0] + view[2] || middle.y > view[1] + view[3]) {
      view = [middle.x - view[2] / 2, middle.y - view[3] / 2, view[2], view[3]];
      show();
    }
  };
  const act = (event) => {
    const row = event.target.closest('[data-row]');
    if (row === null || !sheet.contains(row)) return;
    const mark = choose(row.dataset.row);
    if (row.closest('svg') === null) { if (mark !== null) near(mark); }
    else sheet.querySelector('.rows [data-row="' + row.dataset.row + '"]').scrollIntoView({ block: 'nearest' });
  };
  sheet.addEventListener('click', act);
  sheet.addEventListener('keydown', (event) => {
    if (event.key === 'Enter' || event.key === ' ') { if (event.target.closest('[data-row]')) event.preventDefault(); act(event); }
  });
}
`;
