import { expect, test, type Page } from '@playwright/test';
import { chart, kept, openDemo, rowOf, walk } from './bench.ts';

const sure = (page: Page) => page.getByRole('region', { name: 'Checks' }).getByRole('status');

test('A typed count spreads the shaping, the row menu repeats, moves and removes rows, and Steps goes back to any of it', async ({ page }) => {
  await openDemo(page, 'Foot');
  const row = rowOf(page, 'Round 4');
  const made = Number(await row.getByRole('button', { name: /makes \d+/ }).innerText());
  await row.getByRole('button', { name: /makes \d+/ }).click();
  await page.getByRole('spinbutton', { name: 'Stitches that round 4 is to make' }).fill(String(made + 4));
  await page.keyboard.press('Enter');
  await expect(row.getByRole('button', { name: `makes ${made + 4}` })).toBeVisible();
  await expect(row).toContainText('2 sc in next st');

  // The menu by right click, by its button's keys, and with a number asked for.
  const rounds = page.getByRole('table', { name: 'Ledger and words' }).getByRole('row', { name: /^Round \d/ });
  const before = await rounds.count();
  await rowOf(page, 'Round 2').click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Work it again …' }).click();
  await page.getByRole('spinbutton').fill('3');
  await page.keyboard.press('Enter');
  await expect(rounds).toHaveCount(before + 3);
  await rowOf(page, 'Round 2').click({ button: 'right' });
  await page.getByRole('menuitem', { name: 'Remove it' }).click();
  await expect(rounds).toHaveCount(before + 2);

  // Rows chosen by their numbers, copied by key and put elsewhere.
  await rowOf(page, 'Round 1').getByRole('button', { name: 'Round 1', exact: true }).click();
  await rowOf(page, 'Round 2').getByRole('button', { name: 'Round 2', exact: true }).click({ modifiers: ['Shift'] });
  await expect(page.getByText('2 rows chosen')).toBeVisible();
  await page.getByRole('group', { name: 'What is chosen' }).getByRole('button', { name: 'Copy' }).click();
  await rowOf(page, 'Round 5').hover();
  await page.getByRole('button', { name: 'Put 2 copied rows here' }).click();
  await expect(rounds).toHaveCount(before + 4);

  await page.getByRole('button', { name: 'Steps' }).click();
  await page.getByRole('button', { name: /As it was at first/ }).click();
  await page.getByRole('button', { name: 'Back to the bench' }).click();
  await expect(rounds).toHaveCount(before);
  await expect(sure(page)).toHaveText(/all numbers agree/);
  await page.getByRole('button', { name: 'Steps' }).click();
  await page.getByRole('button', { name: /Work round 4 to.*undone/ }).click();
  await page.getByRole('button', { name: 'Back to the bench' }).click();
  await expect(rowOf(page, 'Round 4').getByRole('button', { name: `makes ${made + 4}` })).toBeVisible();
  await kept(page);
  await page.reload();
  await page.getByRole('navigation', { name: 'Piece' }).getByRole('button', { name: /^Foot/ }).click();
  await expect(rowOf(page, 'Round 4').getByRole('button', { name: `makes ${made + 4}` })).toBeVisible();
});

test('By keys alone: a block is chosen, copied and put elsewhere, and a row is found', async ({ page }) => {
  await openDemo(page, 'Leg');
  await walk(page, 'Leg', [['ArrowLeft', 2]]);
  for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowLeft');
  for (let i = 0; i < 2; i++) await page.keyboard.press('Shift+ArrowUp');
  await expect(page.getByText(/\d × \d stitches chosen/)).toBeVisible();
  await page.keyboard.press('Control+c');
  await expect(page.getByRole('button', { name: 'Put the copied block here' })).toBeVisible();
  await page.keyboard.press('/');
  await page.getByRole('combobox', { name: /A row, a stitch/ }).fill('heel 9');
  await page.keyboard.press('Enter');
  await expect(chart(page, 'Heel')).toBeVisible();
  await expect(rowOf(page, 'Row 9')).toHaveAttribute('aria-current', 'true');
  await walk(page, 'Heel', [['ArrowLeft', 6]]);
  await page.keyboard.press('Control+v');
  await expect(page.getByRole('button', { name: /^Undo Lay a block of/ })).toBeEnabled();
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: /^Redo Lay a block of/ })).toBeEnabled();
});
