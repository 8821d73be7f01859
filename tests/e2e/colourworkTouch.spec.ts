import { expect, test, type Locator, type Page } from '@playwright/test';
import { chart, openDemo } from './bench.ts';
import { cell, drawnCells, fingerDoubleTap, fingerDrag, fingerTap, foot, sheet, undo, within } from './colourworkBench.ts';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

async function newMotif(page: Page): Promise<{ motif: Locator; grid: Locator; at: (x: number, y: number) => Promise<{ x: number; y: number }> }> {
  await openDemo(page, 'Leg');
  await fingerTap(page, foot(page).getByRole('button', { name: 'New motif …' }));
  const motif = sheet(page, 'Motif 1');
  const grid = motif.getByRole('application', { name: /^Cells of/ });
  await grid.scrollIntoViewIfNeeded();
  return { motif, grid, at: (x, y) => cell(grid, x, y, 12, 9) };
}

const cells = (page: Page): Promise<number> => drawnCells(page, 'Motif 1');

test('a motif is drawn by finger: pencil, line, rectangle, fill, with symmetry', async ({ page }) => {
  const { motif, grid, at } = await newMotif(page);
  await fingerDrag(page, [await at(0, 0), await at(3, 0)]);
  await expect.poll(() => cells(page)).toBe(4);
  await fingerTap(page, motif.getByRole('button', { name: 'Line', exact: true }));
  await grid.scrollIntoViewIfNeeded();
  await fingerDrag(page, [await at(0, 2), await at(4, 6)]);
  await expect.poll(() => cells(page)).toBe(9);
  await fingerTap(page, motif.getByRole('button', { name: 'Rectangle' }));
  await grid.scrollIntoViewIfNeeded();
  await fingerDrag(page, [await at(7, 3), await at(10, 6)]);
  await expect.poll(() => cells(page)).toBe(21);
  await fingerTap(page, motif.getByRole('button', { name: 'Fill', exact: true }));
  await grid.scrollIntoViewIfNeeded();
  const inside = await at(8, 4);
  await fingerDrag(page, [inside]);
  await expect.poll(() => cells(page)).toBe(25);
  await motif.getByRole('combobox', { name: 'with symmetry' }).selectOption('p1m1');
  await fingerTap(page, motif.getByRole('button', { name: 'Pencil' }));
  await grid.scrollIntoViewIfNeeded();
  const corner = await at(1, 8);
  await fingerDrag(page, [corner]);
  await expect.poll(() => cells(page)).toBe(27);
});

test('a part is chosen, moved and copied by finger, then the motif is mirrored, turned, cropped and widened', async ({ page }) => {
  const { motif, grid, at } = await newMotif(page);
  await fingerDrag(page, [await at(0, 0), await at(2, 0)]);
  await fingerTap(page, motif.getByRole('button', { name: 'Choose a part' }));
  await grid.scrollIntoViewIfNeeded();
  await fingerDrag(page, [await at(0, 0), await at(2, 1)]);
  await fingerDrag(page, [await at(1, 0), await at(5, 4)]);
  await expect(undo(page)).toHaveAttribute('title', 'Undo: Move within Motif 1');
  await fingerTap(page, motif.getByRole('button', { name: 'Copy', exact: true }));
  await fingerTap(page, motif.getByRole('button', { name: 'Mirror', exact: true }));
  await fingerTap(page, motif.getByRole('button', { name: 'Crop to it' }));
  await expect(motif).toContainText('3 stitches by 2 rows');
  await fingerTap(page, motif.getByRole('button', { name: 'Quarter turn' }));
  await expect(motif).toContainText('2 stitches by 3 rows');
  await fingerTap(page, motif.getByRole('button', { name: 'Flip', exact: true }));
  await fingerTap(page, motif.getByRole('button', { name: 'Widen' }));
  await expect(motif).toContainText('3 stitches by 3 rows');
  await fingerTap(page, motif.getByRole('button', { name: 'Lay the copy' }));
  await expect(undo(page)).toHaveAttribute('title', 'Undo: Copy within Motif 1');
});

test('a motif is dragged from the list onto the chart by finger, then moved there', async ({ page }) => {
  await openDemo(page, 'Leg');
  const surf = foot(page).getByRole('button', { name: 'Surf', exact: true });
  await surf.scrollIntoViewIfNeeded();
  const target = await within(chart(page, 'Leg'), 0.5, 0.5);
  const from = await within(surf, 0.5, 0.5);
  await fingerDrag(page, [from, { x: from.x, y: from.y - 40 }, target]);
  await expect(undo(page)).toHaveAttribute('title', 'Undo: Place Surf');
  await fingerTap(page, page.getByText('4 motifs are placed here'));
  await fingerTap(page, page.getByRole('group', { name: 'Move Surf' }).last().getByRole('button', { name: 'Drag' }));
  await chart(page, 'Leg').scrollIntoViewIfNeeded();
  const [a, b] = [await within(chart(page, 'Leg'), 0.5, 0.5), await within(chart(page, 'Leg'), 0.6, 0.4)];
  await fingerDrag(page, [a, b]);
  await expect(undo(page)).toHaveAttribute('title', 'Undo: Move Surf');
});

test('a yarn is laid by finger: along a drag, on one yarn by a double tap, on a whole row by a long press', async ({ page }) => {
  await openDemo(page, 'Foot');
  await fingerTap(page, foot(page).getByRole('button', { name: 'C lamp orange' }));
  await chart(page, 'Foot').scrollIntoViewIfNeeded();
  await fingerDrag(page, [await within(chart(page, 'Foot'), 0.4, 0.5), await within(chart(page, 'Foot'), 0.6, 0.5)]);
  await expect(undo(page)).toHaveAttribute('title', /Lay C lamp orange on \d+ stitches/);
  await fingerTap(page, foot(page).getByRole('button', { name: 'B chalk' }));
  await chart(page, 'Foot').scrollIntoViewIfNeeded();
  const spot = await within(chart(page, 'Foot'), 0.5, 0.5);
  await fingerDoubleTap(page, spot);
  await expect(undo(page)).toHaveAttribute('title', /Lay B chalk on 1\d stitches/);
  await fingerDrag(page, [await within(chart(page, 'Foot'), 0.5, 0.4)], 700);
  await fingerTap(page, page.getByRole('menu').getByRole('menuitem', { name: 'Lay B on the whole row' }));
  await expect(undo(page)).toHaveAttribute('title', /Lay B chalk on 48 stitches/);
});
