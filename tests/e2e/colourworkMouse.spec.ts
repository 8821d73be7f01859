import { expect, test } from '@playwright/test';
import { chart, openDemo, walk } from './bench.ts';
import { cell, drawnCells, foot, mouseDrag, sheet, undo, within } from './colourworkBench.ts';

test('a part of a motif is chosen, moved and copied by mouse, then the motif is mirrored, turned, cropped and widened', async ({ page }) => {
  await openDemo(page, 'Leg');
  await foot(page).getByRole('button', { name: 'New motif …' }).click();
  const motif = sheet(page, 'Motif 1');
  const grid = motif.getByRole('application', { name: /^Cells of/ });
  const at = (x: number, y: number) => cell(grid, x, y, 12, 9);
  const cells = () => drawnCells(page, 'Motif 1');
  await mouseDrag(page, [await at(0, 0), await at(2, 0)]);
  await motif.getByRole('button', { name: 'Choose a part' }).click();
  await mouseDrag(page, [await at(0, 0), await at(2, 1)]);
  await mouseDrag(page, [await at(1, 0), await at(5, 4)]);
  await expect(undo(page)).toContainText('Move within Motif 1');
  await expect.poll(cells).toBe(3);
  // With Control a copy is moved, and what it was copied from stays.
  await mouseDrag(page, [await at(5, 4), await at(2, 7)], 'Control');
  await expect(undo(page)).toContainText('Copy within Motif 1');
  await expect.poll(cells).toBe(6);
  await motif.getByRole('button', { name: 'Flip', exact: true }).click();
  await expect(undo(page)).toContainText('Flip Motif 1');
  await motif.getByRole('button', { name: 'Crop to it' }).click();
  await expect(motif).toContainText('3 stitches by 2 rows');
  await motif.getByRole('button', { name: 'Quarter turn' }).click();
  await motif.getByRole('button', { name: 'Mirror', exact: true }).click();
  await motif.getByRole('button', { name: 'Widen' }).click();
  await expect(motif).toContainText('3 stitches by 3 rows');
});

test('a yarn is laid by mouse: along a drag, straight with Shift, on one yarn by a double press, on a whole row', async ({ page }) => {
  await openDemo(page, 'Foot');
  const laid = page.getByRole('table', { name: 'Ledger and words' }).getByRole('row').filter({ hasText: /\bC sc\b/ });
  const at = (x: number, y: number) => within(chart(page, 'Foot'), x, y);
  await foot(page).getByRole('button', { name: 'C lamp orange' }).click();
  // Aslant over several rounds, then the same way with Shift: all on the round where it began.
  await mouseDrag(page, [await at(0.4, 0.55), await at(0.6, 0.45)]);
  await expect(undo(page)).toContainText(/Lay C lamp orange on \d+ stitches/);
  expect(await laid.count()).toBeGreaterThan(1);
  await page.keyboard.press('Control+z');
  await expect(laid).toHaveCount(0);
  await mouseDrag(page, [await at(0.4, 0.55), await at(0.6, 0.45)], 'Shift');
  await expect(laid).toHaveCount(1);
  // A double press fills what is of one yarn: the rest of the round on that side of what was laid.
  const beside = await at(0.3, 0.55);
  await page.mouse.dblclick(beside.x, beside.y);
  await expect(undo(page)).toContainText(/Lay C lamp orange on \d\d stitches/);
  await expect(laid).toHaveCount(1);
  const other = await at(0.5, 0.48);
  await page.mouse.click(other.x, other.y, { button: 'right' });
  await page.getByRole('menuitem', { name: 'Lay C on the whole row' }).click();
  await expect(undo(page)).toContainText('Lay C lamp orange on 48 stitches');
  // In every size: the others have it too.
  await page.getByRole('checkbox', { name: 'in every size' }).check();
  await foot(page).getByRole('button', { name: 'B chalk' }).click();
  await mouseDrag(page, [await at(0.45, 0.5), await at(0.55, 0.5)]);
  await expect(undo(page)).toContainText(/Lay B chalk on/);
  await page.getByRole('combobox', { name: 'Size' }).selectOption({ label: 'L' });
  await expect(page.getByRole('table', { name: 'Ledger and words' }).getByRole('row').filter({ hasText: /\bB sc\b/ })).toHaveCount(1);
});

test('The menu of a stitch leads to the motif that lies there, and the stitches that are chosen become a motif', async ({ page }) => {
  await openDemo(page, 'Leg');
  const leg = chart(page, 'Leg');
  await walk(page, 'Leg', [['ArrowLeft', 5]]);
  await page.keyboard.press('/');
  await page.keyboard.type('leg 20');
  await page.keyboard.press('Enter');
  await expect(leg).toBeFocused();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+F10');
  await page.getByRole('menuitem', { name: 'Adjust Puffins …' }).click();
  await expect(sheet(page, 'Puffins, placed').getByRole('status')).toContainText(/Along a row: .* \(p1\w*\), every 16 stitches\./);
  await page.keyboard.press('Escape');
  await expect(leg).toBeFocused();
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowUp');
  await page.getByRole('button', { name: 'Make a motif of it' }).click();
  await expect(sheet(page, 'Motif 1')).toContainText('2 stitches by 2 rows.');
  await expect(undo(page)).toHaveAttribute('title', 'Undo: New motif Motif 1');
});
