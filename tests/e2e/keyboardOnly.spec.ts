import { readFileSync } from 'node:fs';
import { expect, test, type Locator, type Page } from '@playwright/test';
import { chart, rowOf } from './bench.ts';

/* The whole of the bench by keys alone: what is wanted is reached by Tab, and the focus is never lost. */

test.use({ contextOptions: { reducedMotion: 'reduce' } });

const MOST_TABS = 200;

/** Goes on with Tab, or back, until something is in focus. */
async function reach(page: Page, target: Locator, way: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await expect(target).toBeVisible();
  for (let n = 0; n < MOST_TABS; n++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press(way);
  }
  await expect(target).toBeFocused();
}

async function choose(page: Page, target: Locator, way: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await reach(page, target, way);
  await page.keyboard.press('Enter');
}

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) }).first();
const undo = (page: Page): Locator => button(page, /^Undo/);

/** What a screen reader is told of the stitch that the keys stand on. */
const heard = (page: Page, section: string): Locator => chart(page, section).locator('[aria-live="polite"]');

async function startDemo(page: Page, section: string): Promise<void> {
  await page.goto('/');
  await choose(page, button(page, 'Try Puffin Quay'));
  await expect(page.getByRole('textbox', { name: 'Title of the pattern' })).toHaveValue('Puffin Quay');
  await choose(page, page.getByRole('navigation', { name: 'Piece' }).getByRole('button', { name: new RegExp(`^${section}`) }));
  await reach(page, chart(page, section));
}

/** Finds a place from anywhere on the bench; the chart is in focus then. */
async function find(page: Page, words: string, section: string): Promise<void> {
  await page.keyboard.press('/');
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
  await expect(chart(page, section)).toBeFocused();
}

test('From the shelf to the heel: along a row, into the base, a yarn, an increase, words and a count, and back by the list of steps', async ({ page }) => {
  await startDemo(page, 'Heel');
  await find(page, 'heel 5', 'Heel');
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowLeft');
  await expect(heard(page, 'Heel')).toHaveText(/^row 5, stitch \d+ of \d+, single crochet, .+, into stitch \d+ of row 4$/);
  const [, at, into] = /stitch (\d+) of \d+, .*into stitch (\d+) of row 4/.exec(await heard(page, 'Heel').innerText())!;
  await page.keyboard.press('ArrowDown');
  await expect(heard(page, 'Heel')).toHaveText(new RegExp(`^row 4, stitch ${into} of \\d+, `));
  await page.keyboard.press('ArrowUp');
  await expect(heard(page, 'Heel')).toHaveText(new RegExp(`^row 5, stitch ${at} of \\d+, .*into stitch ${into} of row 4$`));
  await page.keyboard.press('b');
  await expect(heard(page, 'Heel')).toContainText(', chalk, ');
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Lay B/);

  await find(page, 'foot 4', 'Foot');
  await choose(page, page.getByRole('group', { name: 'Stitches' }).getByRole('button', { name: 'Increase' }));
  await find(page, 'foot 4', 'Foot');
  await page.keyboard.press('ArrowLeft');
  await expect(heard(page, 'Foot')).toHaveText(/^round 4, stitch \d+ of \d+, /);
  const before = Number(/of (\d+)/.exec(await heard(page, 'Foot').innerText())![1]);
  await page.keyboard.press('Enter');
  await expect(rowOf(page, 'Round 4').getByRole('button', { name: `makes ${before + 1};` })).toBeVisible();

  const count = rowOf(page, 'Round 6').getByRole('button', { name: /makes \d+/ });
  const made = Number(await count.innerText());
  await choose(page, count);
  await page.keyboard.type(String(made + 4));
  await page.keyboard.press('Enter');
  await expect(rowOf(page, 'Round 6').getByRole('button', { name: `makes ${made + 4};` })).toBeFocused();

  const words = rowOf(page, 'Round 5').getByRole('button', { name: /^Edit the words/ });
  await choose(page, words);
  await page.keyboard.press('Control+a');
  await page.keyboard.type('hdc in each st around.');
  await page.keyboard.press('Enter');
  await expect(rowOf(page, 'Round 5')).toContainText('hdc in each st');
  await expect(words).toBeFocused();

  await choose(page, button(page, 'Steps'), 'Shift+Tab');
  await choose(page, page.getByRole('dialog').getByRole('button', { name: /Lay B/ }));
  await page.keyboard.press('Escape');
  await expect(button(page, 'Steps')).toBeFocused();
  await expect(rowOf(page, 'Round 5')).not.toContainText('hdc in each st');
  await expect(button(page, /^Redo/)).toBeEnabled();
});

test('Every sheet opens and closes by keys, and the focus comes back to what opened it', async ({ page }) => {
  await startDemo(page, 'Cuff');
  for (const name of ['Versions …', 'In the round …']) {
    await choose(page, button(page, name), 'Shift+Tab');
    await expect(page.getByRole('button', { name: 'Close the sheet' })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(button(page, name)).toBeFocused();
  }
  for (const name of ['Steps', 'Find', 'Earlier', 'Take away', 'Keys'].reverse()) {
    const opener = page.getByRole('button', { name, exact: true }).or(page.getByRole('link', { name, exact: true })).first();
    await choose(page, opener, 'Shift+Tab');
    await expect(page.getByRole('dialog')).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expect(opener).toBeFocused();
  }
  await choose(page, button(page, 'How it is drawn'));
  await page.keyboard.press('Escape');
  await expect(button(page, 'How it is drawn')).toBeFocused();
  await choose(page, button(page, 'as text'));
  await page.keyboard.press('Escape');
  await expect(button(page, 'as text')).toBeFocused();
  for (const name of ['Yarns …', 'What they do …', 'New motif …', 'From a picture …']) {
    await choose(page, button(page, name));
    await expect(page.getByRole('button', { name: 'Close the sheet' })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(button(page, name)).toBeFocused();
  }
  await reach(page, chart(page, 'Cuff'), 'Shift+Tab');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Shift+F10');
  await expect(page.getByRole('menu')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(chart(page, 'Cuff')).toBeFocused();
});

test('Tab through the rows takes none of them in hand; Enter does, and Ctrl+C copies the row that is in focus', async ({ page }) => {
  await startDemo(page, 'Heel');
  await find(page, 'heel 5', 'Heel');
  const inHand = page.getByRole('table', { name: 'Ledger and words' }).locator('[aria-current="true"]');
  await expect(inHand).toContainText('Row 5');
  await reach(page, rowOf(page, 'Row 3').getByRole('button', { name: /^Edit the words/ }));
  await expect(inHand).toContainText('Row 5');
  await page.keyboard.press('Shift+Tab');
  await expect(inHand).toContainText('Row 5');
  await choose(page, rowOf(page, 'Row 2').getByRole('button', { name: 'Row 2', exact: true }));
  await expect(inHand).toContainText('Row 2');
  await reach(page, rowOf(page, 'Row 4').getByRole('button', { name: /^Edit the words/ }), 'Shift+Tab');
  await expect(inHand).toContainText('Row 2');
  await choose(page, button(page, 'Choose nothing'));
  await reach(page, rowOf(page, 'Row 4').getByRole('button', { name: /^Edit the words/ }), 'Shift+Tab');
  await page.keyboard.press('Control+c');
  await expect(inHand).toContainText('Row 4');
  await expect(page.getByText('the copied row')).toBeVisible();
});

test('The menu of a row by keys: arrows, ends and first letters go through it, and an act asks for its number in a dialog', async ({ page }) => {
  await startDemo(page, 'Heel');
  await find(page, 'heel 5', 'Heel');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Shift+F10');
  const menu = page.getByRole('menu', { name: 'Row 5' });
  const items = menu.getByRole('menuitem');
  await expect(menu.getByRole('spinbutton')).toHaveCount(0);
  await expect(menu.locator('[aria-disabled="false"]').first()).toBeFocused();
  await page.keyboard.press('Home');
  await expect(items.first()).toBeFocused();
  await page.keyboard.press('ArrowUp');
  await expect(items.last()).toBeFocused();
  await page.keyboard.press('Home');
  await expect(items.first()).toBeFocused();
  await page.keyboard.press('End');
  await expect(items.last()).toBeFocused();
  await page.keyboard.press('m');
  await expect(menu.getByRole('menuitem', { name: 'Mirror it' })).toBeFocused();
  await page.keyboard.press('m');
  await expect(menu.getByRole('menuitem', { name: 'Move it on by one' })).toBeFocused();
  // What can't be done now is told, and does nothing.
  const off = menu.getByRole('menuitem', { name: 'Put what was copied after it' });
  await expect(off).toHaveAttribute('aria-disabled', 'true');
  await off.focus();
  await page.keyboard.press('Enter');
  await expect(menu).toBeVisible();
  await page.keyboard.press('Tab');
  await expect(menu).toHaveCount(0);
  await expect(chart(page, 'Heel')).toBeFocused();

  const rows = page.getByRole('table', { name: 'Ledger and words' }).getByRole('row', { name: /^Row \d/ });
  const before = await rows.count();
  const asked = page.getByRole('dialog', { name: 'Row 5: Work even after it' });
  for (const [leave, more] of [['Escape', 0], ['Enter', 3]] as const) {
    await page.keyboard.press('Shift+F10');
    await page.keyboard.press('w');
    await page.keyboard.press('Enter');
    await expect(asked.getByRole('spinbutton', { name: 'rows' })).toBeFocused();
    await page.keyboard.type('3');
    await page.keyboard.press(leave);
    await expect(asked).toHaveCount(0);
    await expect(rows).toHaveCount(before + more);
    await expect(chart(page, 'Heel')).toBeFocused();
  }
});

test('On to the sizes, along the rows as a maker, and out as a PDF', async ({ page }) => {
  await startDemo(page, 'Cuff');
  await choose(page, page.getByRole('link', { name: 'Sizes' }), 'Shift+Tab');
  await expect(page.getByRole('heading', { level: 1, name: /sizes and gauge/ })).toBeFocused();
  await choose(page, page.getByRole('link', { name: 'Bench' }), 'Shift+Tab');
  await expect(page.getByRole('link', { name: 'Sizes' })).toBeFocused();
  await choose(page, page.getByRole('link', { name: 'Make along' }));
  const where = page.getByRole('region', { name: /·/ });
  await expect(where).toContainText('Cuff · Foundation');
  await page.keyboard.press('PageDown');
  await expect(where).toContainText('Row 1');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(where).toContainText(/1 of \d+ made/);
  await choose(page, button(page, 'Next run'));
  await expect(where).toContainText(/\d of \d+ made/);
  await choose(page, button(page, 'Next row'));
  await choose(page, page.getByRole('link', { name: 'Bench' }), 'Shift+Tab');
  await choose(page, page.getByRole('link', { name: 'Publish' }));
  await expect(page.getByRole('status').filter({ hasText: /^[1-9]\d? sheets$/ })).toBeVisible({ timeout: 20_000 });
  await reach(page, button(page, 'PDF'));
  const [pdf] = await Promise.all([page.waitForEvent('download', { timeout: 40_000 }), page.keyboard.press('Enter')]);
  expect(readFileSync(await pdf.path()).subarray(0, 5).toString()).toBe('%PDF-');
});
