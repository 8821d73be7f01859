import { expect, test, type Page } from '@playwright/test';
import { chart, openDemo, rowOf, walk } from './bench.ts';

const touch = (page: Page) => page.getByRole('region', { name: 'What the next touch of the chart does' });
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ }).first();

test('Any stitch is set anywhere, several in one place, and what can’t be done says why', async ({ page }) => {
  await openDemo(page, 'Foot');
  await touch(page).getByRole('combobox', { name: 'Replace by' }).selectOption('dc');
  await touch(page).getByRole('combobox', { name: 'Where the hook goes in' }).selectOption({ label: 'around the post from the front' });
  await expect(touch(page)).toContainText('Set FPdc in the place of the stitch you touch.');
  await walk(page, 'Foot', [['ArrowUp', 2], ['ArrowLeft', 3], ['Enter', 1]]);
  await expect(undo(page)).toContainText(/Set FPdc in round \d/);
  await expect(page.getByRole('table', { name: 'Ledger and words' })).toContainText(/FPdc/);

  await touch(page).getByRole('button', { name: 'More …' }).click();
  await touch(page).getByRole('button', { name: 'Several in one place' }).click();
  await touch(page).getByRole('spinbutton', { name: 'How many in one place' }).fill('3');
  await touch(page).getByRole('combobox', { name: 'Stitch of the group' }).selectOption('hdc');
  await walk(page, 'Foot', [['ArrowLeft', 2], ['Enter', 1]]);
  await expect(undo(page)).toContainText(/Set 3 hdc in one place in round \d/);
  await expect(page.getByRole('table', { name: 'Ledger and words' })).toContainText(/3 hdc in next st/);

  await touch(page).getByRole('button', { name: 'Decrease' }).click();
  await walk(page, 'Foot', [['Enter', 1]]);
  await expect(undo(page)).toContainText(/Decrease in round \d/);
  await openDemoSection(page, 'Cuff');
  await touch(page).getByRole('button', { name: 'Increase' }).click();
  await walk(page, 'Cuff', [['ArrowDown', 40], ['Enter', 1]]);
  await expect(page.getByRole('alert').filter({ hasText: 'A foundation is changed in its words.' })).toBeVisible();
});

async function openDemoSection(page: Page, section: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Piece' }).getByRole('button', { name: new RegExp(`^${section}`) }).click();
  await expect(chart(page, section)).toBeVisible();
}

test('A section of a recipe that is edited by hand says so, and is made from its recipe again', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start a pattern' }).click();
  await page.getByRole('button', { name: 'Put it on the bench' }).click();
  const drawing = page.getByRole('application').first();
  await touch(page).getByRole('button', { name: 'Increase' }).click();
  await drawing.focus();
  for (const key of ['ArrowUp', 'ArrowUp', 'ArrowLeft', 'ArrowLeft', 'ArrowLeft', 'Enter']) await page.keyboard.press(key);
  await expect(undo(page)).toContainText(/Increase in/);
  const told = page.getByRole('status').filter({ hasText: 'is now written by hand; its recipe no longer changes it.' });
  await expect(told).toBeVisible();
  await told.getByRole('button', { name: 'Undo that' }).click();
  await expect(told).toBeHidden();
  await page.getByRole('button', { name: /^Redo/ }).click();
  await told.getByRole('button', { name: 'Make it from the recipe again' }).click();
  await expect(told).toBeHidden();
  await expect(undo(page)).toContainText(/from its recipe again/);

  // At any later time by the row menu.
  await page.keyboard.press('Control+z');
  await drawing.focus();
  await page.keyboard.press('Shift+F10');
  await page.getByRole('menuitem', { name: 'Make this section from its recipe again' }).click();
  await expect(undo(page)).toContainText(/from its recipe again/);

  // And on the page of sizes.
  await page.keyboard.press('Control+z');
  await page.getByRole('link', { name: 'Sizes' }).click();
  await page.getByRole('button', { name: /^Make .* from its recipe again/ }).click();
  await expect(page.getByText('The rows on the bench are made to these numbers.')).toBeVisible();
});

test('Fill goes row over row by button and by key', async ({ page }) => {
  await openDemo(page, 'Leg');
  await touch(page).getByRole('button', { name: 'C lamp orange' }).click();
  await touch(page).getByRole('button', { name: 'Fill' }).click();
  await expect(touch(page)).toContainText('hang together');
  const many = async () => Number(/on (\d+) stitches/.exec((await undo(page).innerText()) + (await undo(page).getAttribute('title')))?.[1] ?? 0);
  await walk(page, 'Leg', [['ArrowLeft', 2], ['Enter', 1]]);
  await expect(undo(page)).toContainText(/Lay C lamp orange on \d+ stitches/);
  const filled = await many();
  expect(filled).toBeGreaterThan(48);
  await page.keyboard.press('Control+z');
  await touch(page).getByRole('button', { name: 'Fill' }).click();
  await chart(page, 'Leg').focus();
  await page.keyboard.press('Control+Shift+Enter');
  await expect.poll(many).toBe(filled);
});

test.describe('by finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('A long press opens the row menu on the chart and in the list; a straight line is drawn without a key', async ({ page }) => {
    await openDemo(page, 'Leg');
    const hand = await page.context().newCDPSession(page);
    const press = async (x: number, y: number) => {
      await hand.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
      await page.waitForTimeout(650);
      await hand.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    };
    await chart(page, 'Leg').scrollIntoViewIfNeeded();
    const box = (await chart(page, 'Leg').boundingBox())!;
    await press(box.x + box.width / 2, box.y + box.height / 2);
    await expect(page.getByRole('menuitem', { name: 'Insert a row after it' })).toBeVisible();
    await expect(undo(page)).toBeDisabled();
    await page.keyboard.press('Escape');
    await expect(page.getByRole('menu')).toHaveCount(0);

    await touch(page).getByRole('button', { name: 'C lamp orange' }).click();
    await touch(page).getByRole('button', { name: 'Straight' }).click();
    await chart(page, 'Leg').scrollIntoViewIfNeeded();
    const at = (await chart(page, 'Leg').boundingBox())!;
    // Words of the rows with runs in C, of which only one may change.
    const runsOfC = () => page.locator('[data-row]').evaluateAll((rows) => rows.map((row) => [...(row.textContent ?? '').matchAll(/C sc/g)].length));
    const before = await runsOfC();
    const [x, y] = [at.x + at.width * 0.4, at.y + at.height * 0.5];
    await hand.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
    // Out over other rows and back: only the row it began in is laid.
    for (const [along, up] of [[20, 0], [40, 60], [70, 60], [90, 0]] as const) {
      await hand.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [{ x: x + along, y: y - up }] });
      await page.waitForTimeout(40);
    }
    await hand.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await expect(undo(page)).toHaveAttribute('title', /Lay C lamp orange on \d+ stitches/);
    const after = await runsOfC();
    expect(after.filter((count, row) => count !== before[row])).toHaveLength(1);

    await page.locator('.tabs button', { hasText: 'words' }).click();
    const row = rowOf(page, 'Row 3');
    await row.scrollIntoViewIfNeeded();
    const line = (await row.boundingBox())!;
    await press(line.x + line.width / 2, line.y + line.height / 2);
    await expect(page.getByRole('menuitem', { name: 'Insert a row after it' })).toBeVisible();
    await expect(page.getByRole('textbox', { name: /Words of/ })).toHaveCount(0);
  });
});
