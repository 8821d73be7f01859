import { expect, test, type Locator, type Page } from '@playwright/test';
import { openDemo, rowOf, walk } from './bench.ts';
import { drawnCells, foot, sheet, undo } from './colourworkBench.ts';

/** Presses keys one after another. */
async function press(page: Page, keys: readonly string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key);
}

/** Presses a button by key. */
async function enter(button: Locator): Promise<void> {
  await button.focus();
  await button.press('Enter');
}

test('every tool of the motif sheet is used by keys alone', async ({ page }) => {
  await openDemo(page, 'Leg');
  await enter(foot(page).getByRole('button', { name: 'New motif …' }));
  const motif = sheet(page, 'Motif 1');
  const grid = motif.getByRole('application', { name: /^Cells of/ });
  const drawn = () => drawnCells(page, 'Motif 1');

  await grid.focus();
  // Pencil, line, rectangle, fill.
  await press(page, ['Enter']);
  await expect.poll(drawn).toBe(1);
  await press(page, ['2', 'ArrowDown', 'ArrowDown', 'Enter', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'Enter']);
  await expect.poll(drawn).toBe(5);
  await press(page, ['3', 'ArrowDown', 'ArrowDown', 'Enter', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'Enter']);
  await expect.poll(drawn).toBe(17);
  await press(page, ['4', 'ArrowUp', 'ArrowLeft', 'Enter']);
  await expect.poll(drawn).toBe(21);
  // A line that is begun is called off, and the sheet stays.
  await press(page, ['2', 'Enter', 'ArrowUp', 'Escape']);
  await expect(motif).toBeVisible();
  await expect.poll(drawn).toBe(21);
  // A part is chosen, copied to another place, cropped to.
  await press(page, ['5', 'Enter', 'ArrowLeft', 'Enter', 'Control+Enter', 'ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowUp', 'Enter']);
  await expect(undo(page)).toContainText('Copy within Motif 1');
  await expect.poll(drawn).toBe(23);
  await press(page, ['?']);
  const list = page.getByRole('dialog', { name: 'Keys' });
  await expect(list.getByRole('heading', { name: 'On the cells of a motif' })).toBeVisible();
  await press(page, ['Escape']);
  await enter(motif.getByRole('button', { name: 'Crop to it' }));
  await expect(motif).toContainText('2 stitches by 1 rows');
  await enter(motif.getByRole('button', { name: 'Widen' }));
  await enter(motif.getByRole('button', { name: 'Mirror', exact: true }));
  await enter(motif.getByRole('button', { name: 'Flip', exact: true }));
  await enter(motif.getByRole('button', { name: 'Quarter turn' }));
  await expect(motif).toContainText('1 stitches by 3 rows');
  await motif.getByRole('combobox', { name: 'with symmetry' }).focus();
  await press(page, ['End']);
  await expect(motif.getByRole('combobox', { name: 'with symmetry' })).not.toHaveValue('none');
  await press(page, ['Escape']);
  await expect(motif).toBeHidden();
});

test('a motif is placed and moved by keys alone', async ({ page }) => {
  await openDemo(page, 'Leg');
  await enter(foot(page).getByRole('button', { name: 'Surf', exact: true }));
  // Away from the edge, where the turning chains stand.
  await walk(page, 'Leg', [['ArrowRight', 1], ['ArrowLeft', 6], ['ArrowRight', 3], ['ArrowUp', 3]]);
  await expect(foot(page)).toContainText('Surf: 6 repeats');
  await press(page, ['Enter']);
  await expect(undo(page)).toContainText('Place Surf');
  const summary = page.getByText('4 motifs are placed here');
  await summary.focus();
  await press(page, ['Enter']);
  await enter(page.getByRole('group', { name: 'Move Surf' }).last().getByRole('button', { name: 'Drag' }));
  await walk(page, 'Leg', [['Enter', 1], ['ArrowUp', 3], ['ArrowRight', 2]]);
  await expect(foot(page)).toContainText('Surf: 6 repeats of 8 in 48 stitches');
  await press(page, ['Enter']);
  await expect(undo(page)).toContainText('Move Surf');
});

test('a yarn is laid by keys: on a stitch, along the row, on all of one yarn, on the whole row', async ({ page }) => {
  await openDemo(page, 'Foot');
  await walk(page, 'Foot', [['ArrowRight', 1], ['ArrowUp', 1], ['Home', 1], ['c', 1]]);
  await expect(undo(page)).toContainText('Lay C lamp orange on 1 stitch');
  await walk(page, 'Foot', [['ArrowRight', 5], ['Shift+Enter', 1]]);
  await expect(undo(page)).toContainText('Lay C lamp orange on 6 stitches');
  await walk(page, 'Foot', [['ArrowRight', 1], ['Control+Enter', 1]]);
  await expect(undo(page)).toHaveAccessibleName(/Lay C lamp orange on \d\d stitches/);
  await walk(page, 'Foot', [['ArrowUp', 2], ['Shift+F10', 1]]);
  const whole = page.getByRole('menuitem', { name: 'Lay C on the whole row' });
  await whole.focus();
  await press(page, ['Enter']);
  await expect(undo(page)).toContainText('Lay C lamp orange on 48 stitches');
});

test('the ledger tells what the yarns do, by mouse and by keys', async ({ page }) => {
  await openDemo(page, 'Leg');
  const tells = page.getByRole('group', { name: 'What the ledger tells' });
  await tells.getByRole('button', { name: 'yarns' }).click();
  const table = page.getByRole('table', { name: 'Ledger and words' });
  await expect(table.getByRole('columnheader', { name: /longest carry/ })).toBeVisible();
  // As on the sheet of what the yarns do: 12 changes, B over 5 stitches of 10 cm / 18.
  await expect(rowOf(page, 'Row 5')).toContainText('12');
  await expect(rowOf(page, 'Row 5')).toContainText('B 5 · 2.8 cm');
  await expect(rowOf(page, 'Row 6')).toContainText('B back 1');
  await enter(tells.getByRole('button', { name: 'numbers' }));
  await expect(table.getByRole('columnheader', { name: 'made' })).toBeVisible();
  await expect(rowOf(page, 'Row 5')).toContainText('48');
  // A section in one yarn has nothing to tell.
  await page.getByRole('navigation', { name: 'Piece' }).getByRole('button', { name: /^Heel/ }).click();
  await expect(tells).toBeHidden();
});

test('a yarn that rows are worked in is taken out with another in its place, as one step', async ({ page }) => {
  await openDemo(page, 'Toe');
  await page.getByRole('button', { name: 'Yarns …' }).click();
  const yarns = sheet(page, 'Yarns');
  await enter(yarns.getByRole('button', { name: 'Take out C lamp orange' }));
  await expect(yarns).toContainText('It is in 40 rows and 11 cells; in its place');
  await page.keyboard.press('Enter');
  await expect(undo(page)).toHaveAccessibleName(/Take out C lamp orange: 40 rows and 11 cells in A slate/);
  await expect(foot(page).getByRole('button', { name: 'C lamp orange' })).toBeHidden();
  await page.keyboard.press('Escape');
  await expect(rowOf(page, 'Round 1')).toContainText('with A,');
  await page.keyboard.press('Control+z');
  await expect(rowOf(page, 'Round 1')).toContainText('with C,');
});
