/** A person moves points of a draft by hand and by keys, sees all sizes and both sides, and follows a problem both ways. */
import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Preview } from '../drawing';
import type { Scene, Story } from '../scene';

const DRAFT = 'flag.draft';

/** One place of each kind that a hand can change, and one that it can't. */
const TEXT = `drafted for gatekeeper
body gatekeeper {
  shoulder left 13cm right 12cm
}

draft sheet {
  point a = origin
  point b = a right 30cm
  point c = b down 20cm
  point d = a down 20cm
  line hoist = a to d
  point pocket = on hoist 7cm from a
  curve belly = d to c hollow 1.2cm toward a
  point third = on hoist 1/3 from d
}

piece flag of sheet {
  cut 1
  outline from a {
    top straight to b
    fly straight to c
    foot along belly to d
    staff straight to a
  }
  grain along staff
  allow 1cm
}

draft yoke {
  point neck = origin
  point tip = neck right shoulder down 3cm
  point foot = neck down 16cm
  point side = foot right 14cm
}

piece front of yoke each side {
  cut pair
  outline from neck {
    shoulder straight to tip
    armhole straight to side
    waist straight to foot
    centre straight to neck
  }
  grain along centre
  allow 1cm
}
`;

const dotOf = (preview: Preview, name: string) =>
  preview.at(`.piece .dot[data-source="sheet/${name}"] > .spot`);

/** What the tip near the pointer or the point says. */
const tip = async (preview: Preview) =>
  (await preview
    .at('.tip.shown')
    .textContent()
    .catch(() => '')) ?? '';

async function choose(preview: Preview, list: string, what: string): Promise<void> {
  await preview.at(`button.${list}`).click();
  await preview.at(`.${list}-list ${what}`).press(what.startsWith('input') ? 'Space' : 'Enter');
  if (what.startsWith('input')) await preview.at(`button.${list}`).click();
}

/** The line of a name in the text as the editor shows it, which writes every space as one that does not break. */
async function lineOf(scene: Scene, name: string): Promise<string> {
  const lines = (await scene.page.locator('.view-line').allInnerTexts()).map((line) =>
    line.replace(/\u00a0/g, ' ').trim(),
  );
  return lines.find((line) => line.split(' = ')[0]!.endsWith(` ${name}`)) ?? '';
}

const reads = (scene: Scene, name: string, line: RegExp | string) =>
  scene.until(`${name} as ${line}`, async () => {
    const now = await lineOf(scene, name);
    return typeof line === 'string' ? now === line : line.test(now);
  });

async function undo(scene: Scene): Promise<void> {
  await scene.focusText(DRAFT);
  await scene.press('Control+z');
}

export const theDraftIsShownBeneathThePieces: Story = async (scene) => {
  writeFileSync(join(scene.folder, DRAFT), TEXT);
  await scene.openFile(DRAFT);
  await scene.press('Control+K');
  await scene.press('v');
  const preview = await Preview.of(scene);
  assert.equal(await preview.at('.line.construction').count(), 0);
  await choose(preview, 'show', 'input[name="construction"]');
  await preview.at('.piece[data-piece="flag"] .line.construction').first().waitFor({ state: 'attached' });
  await dotOf(preview, 'pocket').waitFor({ state: 'attached' });
  await scene.picture('the-draft-beneath');
};

export const aPointIsDrawnAlongALineAndUndoneAtOnce: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.drag(dotOf(preview, 'pocket'), 0, 40);
  await reads(scene, 'pocket', /^point pocket = on hoist (?!7cm)[\d.]+cm from a$/);
  await undo(scene);
  await reads(scene, 'pocket', 'point pocket = on hoist 7cm from a');
};

export const aHollowCurveIsDrawnDeeperAndUndoneAtOnce: Story = async (scene) => {
  const preview = await Preview.of(scene);
  const before = await preview.tip('flag/foot');
  await preview.drag(dotOf(preview, 'belly'), 0, -40);
  await reads(scene, 'belly', /^curve belly = d to c hollow (?!1\.2cm)[\d.]+cm toward a$/);
  await scene.until('a longer foot', async () => (await preview.tip('flag/foot')) !== before);
  await scene.picture('a-hollow-is-drawn-deeper');
  await undo(scene);
  await reads(scene, 'belly', 'curve belly = d to c hollow 1.2cm toward a');
};

export const arrowKeysMoveAPointAndOneUndoTakesThemBack: Story = async (scene) => {
  const preview = await Preview.of(scene);
  const { x, y } = await preview.middle(dotOf(preview, 'b'));
  await scene.page.mouse.click(x, y);
  await preview.hasKeyboard();
  await scene.press('Space');
  await scene.until('the point in the hand', async () => /arrow keys move it/.test(await tip(preview)));
  for (const key of ['ArrowRight', 'ArrowRight', 'Shift+ArrowRight']) {
    const before = await tip(preview);
    await scene.press(key);
    await scene.until('its new length', async () => (await tip(preview)) !== before);
  }
  await reads(scene, 'b', 'point b = a right 31cm');
  await scene.picture('a-point-is-moved-by-keys');
  await scene.press('Enter');
  await undo(scene);
  await reads(scene, 'b', 'point b = a right 30cm');
};

export const aPointThatIsWorkedOutSaysFromWhat: Story = async (scene) => {
  const preview = await Preview.of(scene);
  const { x, y } = await preview.middle(dotOf(preview, 'third'));
  const { mouse } = scene.page;
  await mouse.move(x, y);
  await mouse.down();
  await mouse.move(x + 30, y + 20, { steps: 5 });
  await scene.until('the reason', async () => /worked out from hoist, d/.test(await tip(preview)));
  await scene.picture('a-point-that-is-worked-out');
  await mouse.up();
  assert.equal(await lineOf(scene, 'third'), 'point third = on hoist 1/3 from d');
};

export const theLeftLiesOverTheRight: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await choose(preview, 'tools', '.tool.sides');
  await preview.at('.laid-out .piece').nth(1).waitFor({ state: 'attached' });
  await scene.until('what differs', async () =>
    /shoulder/.test((await preview.at('.sentences').textContent()) ?? ''),
  );
  await scene.picture('left-over-right');
  await preview.at('.strip .done').click();
};

export const aProblemInTheListLeadsToTheTextAndToItsPlace: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.at('button.problems').click();
  const row = preview.at('.problem').filter({ hasText: 'flag' }).first();
  await row.waitFor();
  await scene.picture('problems-of-the-flag');
  await row.click();
  await preview.at('.selected').first().waitFor({ state: 'attached' });
  await scene.textHasKeyboard();
};

export const aFlagOnTheDrawingLeadsToTheWordsThatAreUnderlined: Story = async (scene) => {
  const preview = await Preview.of(scene);
  const flag = preview.at('.flag').first();
  await scene.focusText(DRAFT);
  await scene.goTo(1);
  await scene.until('the cursor at the beginning', async () => (await scene.cursor()).startsWith('Ln 1,'));
  await flag.click();
  const line = TEXT.split('top straight')[0]!.split('\n').length;
  await scene.until('the words of the problem', async () =>
    (await scene.cursor()).startsWith(`Ln ${line}, Col 8 (3 selected)`),
  );
  // what the cursor stands on is the edge, not the whole piece round it
  await preview.at('.thing.marked[data-source="flag/top"]').waitFor({ state: 'attached' });
  assert.equal(await preview.at('.piece.marked').count(), 0);
};

export const everySizeLiesOnTheOthersAndHalvesAreWholes: Story = async (scene) => {
  await scene.openFile('crew-shirt.draft');
  await scene.command('Draftwright: Open Preview to the Side');
  await scene.page.locator('.tab', { hasText: 'Preview: crew-shirt.draft' }).waitFor();
  await scene.until('the sleeve', async () => {
    const counts = await Promise.all(
      scene.page.frames().map((frame) => frame.locator('#preview .piece[data-piece="sleeve"]').count()),
    );
    return counts.some((count) => count === 1);
  });
  const preview = await Preview.of(scene);
  await choose(preview, 'show', 'input[name="whole"]');
  await preview.at('.line.centre').first().waitFor({ state: 'attached' });
  await choose(preview, 'show', 'input[name="sizes"]');
  await preview.at('text.size').first().waitFor({ state: 'attached' });
  const dashes = await preview
    .at('.piece[data-piece="sleeve"] .line.cutting')
    .evaluateAll(
      (all) => new Set(all.map((node) => (node as SVGElement).style.getPropertyValue('--dash'))).size,
    );
  assert.ok(dashes >= 4, `${dashes} dashes`);
  await scene.picture('sizes-on-one-another');
};
