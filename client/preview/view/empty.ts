/** What is said where nothing is drawn. */
import { say } from '../../../grammar/say';
import type { Frame } from '../../../server/drawing/model';
import type { Sheet } from '../protocol';
import { html } from './dom';

/** About the room of a skirt, for the rulers of a sheet without pieces. */
export const EMPTY_FRAME: Frame = { left: 0, top: 0, right: 700, bottom: 700 };

export class Empty {
  readonly element = html('div', { class: 'empty', role: 'note' });

  update(sheet: Sheet): void {
    if (sheet.placements.length > 0) return this.say('', '');
    const broken = sheet.problems.some(({ severity }) => severity === 'error');
    const how = broken
      ? say`They are drawn here as soon as the text can be read. The list of problems says where it can’t.`
      : say`Write a piece with its outline, such as “piece front of skirt { … }”, and it is drawn here.`;
    this.say(say`No pieces yet`, how);
  }

  say(heading: string, words: string): void {
    this.element.hidden = heading === '';
    this.element.replaceChildren(html('h1', {}, heading), html('p', {}, words));
  }
}
