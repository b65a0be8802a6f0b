/** What the view of the preview draws, in a real browser, in the page that the extension sets. */
import assert from 'node:assert/strict';
import type { ViewState } from '../../client/preview/protocol';
import { drawing, skirt, smallPiece } from '../support/drawings';
import { fullSheet, URI } from '../support/preview-page';
import { describeView, onLine, painted, problems, transform } from '../support/preview-suite';

describeView('view of the preview', ({ opened, withSkirt }) => {
  it('a view that starts says so, and shows that the drawing is coming', async () => {
    const v = await opened();
    assert.deepEqual(await v.told(), [
      { type: 'ready', protocol: 1, trial: { set: {} }, pinned: true, want: {} },
    ]);
    assert.equal(await v.page.locator('.empty h1').textContent(), 'Drawing …');
  });

  it('every piece of a full sheet is drawn, with a sentence for the screen reader', async () => {
    const v = await withSkirt();
    const spoken = await v.page
      .locator('.piece')
      .evaluateAll((all) => all.map((node) => node.getAttribute('aria-label')));
    assert.deepEqual(spoken, [
      'back, cut pair, 4 edges',
      'front, cut 1 on fold, 4 edges',
      'waistband, cut 1 on fold, 4 edges',
    ]);
    assert.equal(await v.page.locator('.empty').isVisible(), false);
  });

  it('only the node of the changed piece is replaced', async () => {
    const v = await withSkirt();
    await v.page.evaluate(() =>
      document.querySelectorAll('.piece').forEach((node) => node.setAttribute('data-old', '')),
    );
    const front = skirt().pieces[1]!;
    await v.send(fullSheet(skirt(), { full: false, version: 2, since: 1, pieces: [front] }));
    const old = await v.page
      .locator('.piece')
      .evaluateAll((all) => all.map((node) => node.hasAttribute('data-old')));
    assert.deepEqual(old, [true, false, true]);
  });

  it('a sheet built on an unknown version makes the view ask for a full one', async () => {
    const v = await withSkirt();
    await v.send(fullSheet(skirt(), { full: false, version: 9, since: 8, pieces: [] }));
    assert.deepEqual(await v.told(), [{ type: 'ask', have: 1 }]);
  });

  it('zoom, place and selection survive a new sheet', async () => {
    const v = await withSkirt();
    await v.page.keyboard.press('+');
    await v.page.keyboard.press('ArrowRight');
    await painted(v);
    const { x, y } = await onLine(v, 'front/inner');
    await v.page.mouse.click(x, y);
    const before = await transform(v);
    await v.send(fullSheet(skirt(), { full: false, version: 2, since: 1, pieces: [skirt().pieces[1]!] }));
    assert.equal(await transform(v), before);
    assert.equal(await v.page.locator('.thing.selected[data-source="front/inner"]').count(), 1);
  });

  it('what the cursor in the text stands on is drawn in the colour of the focus, solid', async () => {
    const v = await withSkirt();
    await v.send({ type: 'marked', sources: ['front/side'] });
    const style = await v.page.locator('[data-source="front/side"] > .line').evaluate((node) => {
      const { stroke, strokeDasharray } = getComputedStyle(node);
      return [stroke, strokeDasharray];
    });
    assert.deepEqual(style, ['rgb(0, 95, 184)', 'none']);
    await v.send({ type: 'marked', sources: [] });
    assert.equal(await v.page.locator('.marked').count(), 0);
  });

  it('the cursor on an edge marks that edge and not its whole piece, which it marks where nothing smaller is drawn', async () => {
    const v = await withSkirt();
    const marked = () =>
      v.page
        .locator('.marked')
        .evaluateAll((all) => [...new Set(all.map((node) => (node as SVGElement).dataset.source))]);
    await v.send({ type: 'marked', sources: ['front/side', 'front'] });
    assert.deepEqual(await marked(), ['front/side']);
    await v.send({ type: 'marked', sources: ['front/allow', 'front'] });
    assert.deepEqual(await marked(), ['front']);
  });

  it('a stale piece is hatched and says why', async () => {
    const v = await opened();
    await v.send(fullSheet(skirt(), { stale: [{ piece: 'back', reason: 'its outline is open' }] }));
    const note = await v.page.locator('.piece.stale .stale-note').textContent();
    assert.equal(note, 'as last drawn');
    assert.match(
      (await v.page.locator('.piece.stale').getAttribute('aria-label'))!,
      /As last drawn: its outline is open$/,
    );
    assert.match(
      await v.page.locator('.stale .body').evaluate((node) => getComputedStyle(node).fill),
      /hatch/,
    );
  });

  it('a problem stands where it is, and a click on it leads to both what it is about and its text', async () => {
    const v = await opened();
    const spots = [{ piece: 'pocket', at: { x: 50, y: 60 } }];
    const raw = { ...problems[0]!, spots };
    const note = { ...problems[0]!, severity: 'note' as const, spots };
    await v.send(fullSheet(drawing([smallPiece()]), { problems: [raw, note] }));
    assert.equal(await v.page.locator('.flag').count(), 1);
    const box = (await v.page.locator('.flag circle').boundingBox())!;
    await v.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    assert.equal(await v.page.locator('.tip.shown').textContent(), 'warning: The hem is raw.');
    await v.told();
    await v.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    assert.deepEqual(await v.told(), [
      { type: 'select', source: 'back/hem' },
      {
        ...{ type: 'goto', source: 'back/hem' },
        problem: { code: 'unfinished-edge', message: 'The hem is raw.' },
      },
    ]);
  });

  it('problems at one place share a sign, which counts them and leads to the gravest', async () => {
    const v = await opened();
    const spots = [{ piece: 'pocket', at: { x: 50, y: 60 } }];
    const both = problems.map((one) => ({ ...one, spots }));
    await v.send(fullSheet(drawing([smallPiece()]), { problems: both }));
    assert.deepEqual(await v.page.locator('.flag.error text').allTextContents(), ['2']);
    assert.equal(await v.page.locator('.flag').count(), 1);
    const box = (await v.page.locator('.flag circle').boundingBox())!;
    await v.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    assert.equal(
      await v.page.locator('.tip.shown').innerText(),
      'error: The sides differ by 5 mm.\nwarning: The hem is raw.',
    );
    const { code, message } = problems[1]!;
    assert.deepEqual((await v.told()).at(-1), {
      ...{ type: 'goto', source: 'front/side', problem: { code, message } },
    });
  });

  it('sizes on one another are told by dash and weight', async () => {
    const v = await opened();
    const piece = smallPiece();
    const [cutting] = piece.lines;
    const lines = ['S', 'M'].map((ofSize) => ({ ...cutting!, ofSize, tip: `size ${ofSize}` }));
    await v.send(fullSheet(drawing([{ ...piece, lines }]), { sizes: ['S', 'M'], nested: ['S', 'M'] }));
    const looks = await v.page.locator('.sheet .line.cutting').evaluateAll((all) =>
      all.map((node) => {
        const { strokeDasharray, strokeWidth } = getComputedStyle(node);
        return `${strokeDasharray} ${strokeWidth}`;
      }),
    );
    assert.equal(new Set(looks).size, 2);
    assert.match(looks[0]!, /^none/);
    const key = v.page.locator('.key li');
    assert.deepEqual(await key.allTextContents(), ['S', 'M']);
    const dashOf = (size: number) =>
      key
        .nth(size)
        .locator('.line')
        .evaluate((node) => getComputedStyle(node).strokeDasharray);
    assert.deepEqual(
      [await dashOf(0), await dashOf(1)],
      looks.slice(0, 2).map((look) => look.replace(/ \S+$/, '')),
    );
    await v.send(fullSheet(skirt(), { version: 2 }));
    assert.equal(await v.page.locator('.key').isVisible(), false);
  });

  it('lengths of edges can be shown without their names, and names without lengths', async () => {
    const v = await opened();
    const text = {
      source: 'pocket/top',
      text: 'top 10cm',
      length: '10cm',
      at: { x: 50, y: 8 },
      size: 4,
      turn: 0,
    };
    await v.send(fullSheet(drawing([{ ...smallPiece(), texts: [{ role: 'edge', ...text }] }])));
    const said = () =>
      v.page.locator('.words.edge').evaluate(
        (node) =>
          (node as unknown as HTMLElement).innerText?.trim() ??
          [...node.querySelectorAll('tspan')]
            .filter((one) => getComputedStyle(one).display !== 'none')
            .map((one) => one.textContent!.trim())
            .join(' '),
      );
    await v.page.click('button.show');
    await v.page.click('input[name="names"]');
    assert.equal(await said(), '10cm');
    await v.page.click('input[name="names"]');
    await v.page.click('input[name="lengths"]');
    assert.equal(await said(), 'top');
  });

  it('a pattern without pieces says how a piece begins', async () => {
    const v = await opened();
    await v.send(fullSheet(drawing([])));
    assert.match((await v.page.locator('.empty').textContent())!, /No pieces yet.*piece front of skirt/);
  });

  it('a pattern whose text is broken says where to look', async () => {
    const v = await opened();
    await v.send(fullSheet(drawing([]), { problems }));
    assert.match((await v.page.locator('.empty').textContent())!, /list of problems/);
  });

  it('a page that begins again stands where the last one stood', async () => {
    const state: ViewState = {
      schema: 1,
      uri: URI,
      zoom: 2,
      left: 40,
      top: 50,
      selected: 'back/side',
      shown: ['sewing'],
    };
    const v = await withSkirt({ state });
    assert.equal(await transform(v), 'matrix(2 0 0 2 -80 -100)');
    assert.equal(await v.page.locator('.thing.selected').count(), 1);
    assert.equal(await v.page.locator('.line.balance').first().isVisible(), false);
  });

  it('the state of another file is not taken over', async () => {
    const state: ViewState = {
      schema: 1,
      uri: 'file:///other.draft',
      zoom: 2,
      left: 40,
      top: 50,
      selected: '',
      shown: [],
    };
    const v = await withSkirt({ state });
    assert.notEqual(await transform(v), 'matrix(2 0 0 2 -80 -100)');
  });

  it('the file is remembered before anything was drawn, so that a reload finds it', async () => {
    const v = await opened();
    await v.page.waitForTimeout(250);
    assert.equal((await v.state())?.uri, URI);
  });

  it('names that look like markup are drawn as words', async () => {
    const evil = '<img src=x onerror="document.title=1"> & "quotes"';
    const made = smallPiece();
    const v = await opened();
    await v.send(
      fullSheet(
        drawing([{ ...made, name: evil, texts: made.texts.map((t) => ({ ...t, text: evil })) }], {
          title: evil,
        }),
      ),
    );
    assert.equal(await v.page.locator('text.title').textContent(), evil);
    assert.equal(await v.page.locator('img').count(), 0);
  });

  for (const theme of ['light', 'dark', 'high-contrast', 'high-contrast-light'] as const) {
    it(`ground and ink are those of the theme: ${theme}`, async () => {
      const v = await withSkirt({ theme });
      const [ground, ink, paper, text] = await v.page.evaluate(() => {
        const style = (selector: string) => getComputedStyle(document.querySelector(selector)!);
        const root = style(':root');
        const asRgb = (value: string) => {
          const probe = document.body.appendChild(document.createElement('i'));
          probe.style.color = value;
          const rgb = getComputedStyle(probe).color;
          probe.remove();
          return rgb;
        };
        return [
          style('.preview').backgroundColor,
          style('.line.cutting').stroke,
          asRgb(root.getPropertyValue('--vscode-editor-background')),
          asRgb(root.getPropertyValue('--vscode-editor-foreground')),
        ];
      });
      assert.deepEqual([ground, ink], [paper, text]);
    });
  }
});
