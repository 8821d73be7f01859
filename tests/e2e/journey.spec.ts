import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { chart, goTo, kept, openDemo, rowOf } from './bench.ts';

test('open the demo, lay a yarn, place a motif, edit a row, reload, undo, export', async ({ page }) => {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));

  await openDemo(page, 'Leg');
  await expect(page.getByText('Checks: all numbers agree')).toBeVisible();
  await expect(rowOf(page, 'Row 40')).toContainText('48');

  // Lay a yarn by drag.
  await page.getByRole('button', { name: 'C lamp orange' }).click();
  const box = (await chart(page, 'Leg').boundingBox())!;
  const [middle, low] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(middle - 60, low);
  await page.mouse.down();
  await page.mouse.move(middle, low, { steps: 5 });
  await page.mouse.move(middle + 60, low, { steps: 5 });
  await page.mouse.up();
  const undo = page.getByRole('button', { name: /^Undo/ });
  await expect(undo).toContainText(/Lay C lamp orange on \d+ stitches/);

  // Place a motif: repeats and remainder are said as it moves, then it lies.
  await page.getByRole('button', { name: /more$/ }).click();
  await page.getByRole('button', { name: /^Rope/ }).click();
  await page.mouse.move(middle, box.y + box.height * 0.6);
  await expect(page.getByRole('region', { name: 'What the next touch of the chart does' })).toContainText(/repeats/);
  await page.mouse.click(middle, box.y + box.height * 0.6);
  await expect(undo).toContainText(/Rope/);

  // Edit a row in the heel: one stitch too few is found at the very words; mend it again.
  await goTo(page, 'Heel');
  await rowOf(page, 'Row 2').getByRole('button', { name: /^Edit the words/ }).click();
  const field = page.getByRole('textbox', { name: /Row 2/ });
  await expect(field).toHaveValue(/17 \(20, 23\)/);
  await field.fill('ch 1, turn, sc in next 16 (20, 23) sts. Leave 7 (8, 9) unworked. (17 (20, 23) sc)');
  await field.press('Enter');
  await expect(rowOf(page, 'Row 2')).toContainText('16');
  await expect(page.getByText(/Says 17, makes 16/).first()).toBeVisible();

  // It is there after a reload, and undo goes back step by step.
  await kept(page);
  await page.reload();
  await goTo(page, 'Heel');
  await expect(rowOf(page, 'Row 2')).toContainText('16');
  await undo.click();
  await expect(rowOf(page, 'Row 2')).toContainText('17');
  await expect(page.getByText('Checks: all numbers agree')).toBeVisible();
  await expect(undo).toContainText(/Rope/);
  await undo.click();
  await expect(undo).toContainText(/Lay C/);
  await undo.click();
  await expect(undo).toBeDisabled();
  await page.getByRole('button', { name: /^Redo/ }).click();
  await expect(undo).toContainText(/Lay C/);

  // The chart of this section as SVG, in millimetres.
  await page.getByRole('button', { name: 'Take away' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Chart as SVG' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('puffin-quay-heel-s.svg');
  const svg = readFileSync(await file.path(), 'utf8');
  expect(svg).toMatch(/^<\?xml[^>]*>\s*<svg [^>]*width="[\d.]+mm"/);
  expect(svg).not.toMatch(/<script|foreignObject|href="http/);
  expect(errors).toEqual([]);
});

test('turn a row short on the chart: the rows above follow', async ({ page }) => {
  await openDemo(page, 'Leg');
  await page.getByRole('button', { name: 'Turn here' }).click();
  const box = (await chart(page, 'Leg').boundingBox())!;
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await expect(page.getByRole('button', { name: /^Undo/ })).toContainText(/[Tt]urn/);
  await expect(page.getByRole('table', { name: 'Ledger and words' })).toContainText(/[Ll]eave \d+/);
});

test('the three readings light up together', async ({ page }) => {
  await openDemo(page, 'Foot');
  const box = (await chart(page, 'Foot').boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await expect(page.getByRole('row', { selected: true }).or(page.locator('[role=row][aria-current]'))).toHaveCount(1);
});

test('a size is one choice for all readings', async ({ page }) => {
  await openDemo(page, 'Heel');
  await page.getByRole('combobox', { name: 'Size' }).selectOption('L');
  await expect(rowOf(page, 'Row 21')).toContainText('32');
  await expect(page.getByRole('button', { name: /^Heel 21 rows/ })).toBeVisible();
  await expect(page.getByText('Checks: all numbers agree')).toBeVisible();
});

test('words in UK terms name no US stitch', async ({ page }) => {
  await openDemo(page, 'Leg');
  await page.getByRole('combobox', { name: 'Terms of the words' }).selectOption({ label: 'in UK terms' });
  await expect(rowOf(page, 'Row 40')).toContainText('dc in each st across');
});
