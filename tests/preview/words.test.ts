/** The preview's page in another language: no word of it is left in English, and long words leave the bar whole. */
import assert from 'node:assert/strict';
import { skirt } from '../support/drawings';
import { fullSheet, type Opened } from '../support/preview-page';
import { describeView, problems } from '../support/preview-suite';
import { everythingSaid } from '../support/said';
import { read } from '../support/sources';

const german: Record<string, string> = JSON.parse(read('client/l10n/bundle.l10n.de.json'));
/** Every text in marks, so that whatever stands without them was not asked for. */
const marked = Object.fromEntries(everythingSaid().map(({ key }) => [key, `«${key}»`]));

/** What a person reads and what is read aloud, the lists opened or not. */
function shown(v: Opened): Promise<string[]> {
  return v.page.evaluate(() => {
    const found: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) found.push(walker.currentNode.textContent ?? '');
    for (const node of document.querySelectorAll('*'))
      for (const name of ['aria-label', 'aria-roledescription', 'title', 'placeholder', 'data-tip'])
        found.push(node.getAttribute(name) ?? '');
    return found;
  });
}

const choices = [
  { path: 'hip-ease', doc: '', value: '4cm', written: '4cm', low: '2cm', high: '9cm', among: [] },
];

describeView('the preview in another language', ({ opened }) => {
  it('says nothing of its own in English', async () => {
    const v = await opened({ words: marked });
    const stale = [{ piece: 'back', reason: '«reason»' }];
    const everybody = ['ferrywoman', 'miller'];
    const trial = { set: {} };
    await v.send(fullSheet(skirt(), { problems, stale, choices, everybody, trial, body: 'ferrywoman' }));
    await v.send({ type: 'do', tool: 'contents' });
    const { title, body, pieces } = skirt();
    const own = [
      title,
      body,
      ...everybody,
      'hip-ease',
      ...problems.map(({ message, code }) => [message, code]).flat(),
    ];
    const drawn = pieces.flatMap(({ name, source, spoken, texts, lines, dots }) => [
      ...[name, source, spoken],
      ...[...texts.map(({ text }) => text), ...lines.map(({ tip }) => tip), ...dots.map(({ name }) => name)],
    ]);
    const known = [...own, ...drawn].filter(Boolean).sort((a, b) => b!.length - a!.length) as string[];
    const bare = (await shown(v))
      .map((text) => text.replace(/«[^»]*»/g, ''))
      .map((text) => known.reduce((left, one) => left.replaceAll(one, ''), text))
      .filter((text) => /\p{L}{2,}/u.test(text) && !/^[−\d\s]*(cm|mm|in)$/.test(text));
    assert.deepEqual(bare, []);
  });

  it('speaks German from the bundle, and the page says that it does', async () => {
    const v = await opened({ words: german });
    assert.equal(await v.page.locator('html').getAttribute('lang'), 'de');
    await v.send(fullSheet(skirt(), { problems, choices }));
    assert.equal(await v.page.locator('.opens.problems').textContent(), '1 Fehler, 1 Warnung');
    await v.page.locator('.opens.show').click();
    assert.match((await v.page.locator('.show-list').textContent())!, /Nahtlinien.*Fadenlauf.*Passzeichen/);
  });

  for (const width of [900, 420]) {
    it(`keeps its bar within the page in German, ${width} pixels wide`, async () => {
      const v = await opened({ words: german, width });
      await v.send(fullSheet(skirt(), { problems, choices, everybody: ['ferrywoman'], body: 'ferrywoman' }));
      const over = await v.page.evaluate(() => {
        const bar = document.querySelector('.bar')!;
        const buttons = [...bar.querySelectorAll('button')].filter((button) => button.offsetParent !== null);
        const cut = buttons.filter((button) => button.scrollWidth > button.clientWidth + 1);
        const outside = buttons.filter((button) => button.getBoundingClientRect().right > innerWidth + 1);
        return [...cut, ...outside].map((button) => button.textContent);
      });
      assert.deepEqual(over, []);
    });

    it(`keeps its lists within the page in German, and no button on another, ${width} pixels wide`, async () => {
      const v = await opened({ words: german, width });
      await v.send(fullSheet(skirt(), { problems, choices, everybody: ['ferrywoman'], body: 'ferrywoman' }));
      for (const list of ['problems', 'choices', 'show', 'find', 'tools', 'export']) {
        await v.page.locator(`.opens.${list}`).click();
        const wrong = await v.page.evaluate((name) => {
          const panel = document.querySelector(`.${name}-list`)!;
          const { left, right } = panel.getBoundingClientRect();
          const cut = [...panel.querySelectorAll('button')].filter(
            (one) => one.scrollWidth > one.clientWidth + 1,
          );
          const told = cut.map((button) => button.textContent);
          return left < 0 || right > innerWidth ? [`from ${left} to ${right}`, ...told] : told;
        }, list);
        assert.deepEqual(wrong, [], list);
        await v.page.keyboard.press('Escape');
      }
    });
  }
});
