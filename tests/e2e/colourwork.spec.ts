import { expect, test } from '@playwright/test';
import { chart, goTo, kept, openDemo } from './bench.ts';
import { cell, foot, halves, sheet, undo } from './colourworkBench.ts';

test('yarns: name, colour, mark, add, swap, look at, take out', async ({ page }) => {
  await openDemo(page, 'Leg');
  await page.getByRole('button', { name: 'Yarns …' }).click();
  const yarns = sheet(page, 'Yarns');
  await yarns.getByRole('textbox', { name: 'Name of yarn A' }).fill('harbour');
  await yarns.getByRole('textbox', { name: 'Name of yarn A' }).press('Enter');
  await expect(foot(page).getByRole('button', { name: 'A harbour' })).toBeVisible();
  await yarns.getByRole('textbox', { name: 'Colour of A harbour, typed' }).fill('#204060');
  await yarns.getByRole('textbox', { name: 'Colour of A harbour, typed' }).press('Enter');
  await expect(undo(page)).toContainText('Change A');
  await yarns.getByRole('combobox', { name: 'Print mark of A harbour' }).selectOption('dot');
  await expect(yarns.getByRole('row', { name: /A B/ })).toContainText('same print mark');
  await yarns.getByRole('button', { name: 'Tell the print marks apart' }).click();
  await expect(yarns.getByRole('row', { name: /A B/ })).not.toContainText('print mark');

  await yarns.getByRole('combobox', { name: 'Swap A harbour with' }).selectOption('B');
  await expect(yarns.getByRole('textbox', { name: 'Name of yarn A' })).toHaveValue('chalk');

  await yarns.getByRole('button', { name: 'Add a yarn' }).click();
  await expect(foot(page).getByRole('button', { name: 'D new yarn' })).toBeVisible();
  await yarns.getByRole('button', { name: 'Take out D new yarn' }).click();
  await expect(foot(page).getByRole('button', { name: 'D new yarn' })).toBeHidden();

  // In black and white every cell is grey; the yarns stay as they are.
  await yarns.getByRole('button', { name: 'black and white' }).click();
  const fill = await page.getByRole('img', { name: 'The piece as it lies flat' }).locator('path.yarn').first().getAttribute('fill');
  expect(fill!.slice(1, 3)).toBe(fill!.slice(3, 5));
  await yarns.getByRole('button', { name: 'as they are' }).click();

  // Other colours are tried beside the own ones, then taken as one step.
  await yarns.getByRole('button', { name: 'Pass the colours on' }).click();
  await expect(yarns.getByRole('textbox', { name: 'Colour of A chalk, typed' })).toHaveValue('#f2efe6');
  await yarns.getByRole('button', { name: 'Take these colours' }).click();
  await expect(yarns.getByRole('textbox', { name: 'Colour of A chalk, typed' })).toHaveValue('#204060');
  await page.keyboard.press('Escape');
  await expect(yarns).toBeHidden();
  await undo(page).click();
  await undo(page).click();
});

test('colours are taken from a picture', async ({ page }) => {
  await openDemo(page, 'Leg');
  await page.getByRole('button', { name: 'Yarns …' }).click();
  await page.locator('input[type=file]').setInputFiles({ name: 'quay.png', mimeType: 'image/png', buffer: halves(60, 60) });
  const found = page.getByRole('group', { name: 'Colours of the picture' });
  await expect(found.getByRole('combobox')).toHaveCount(2);
  await found.getByRole('combobox').first().selectOption('C');
  await page.getByRole('button', { name: 'Take these colours' }).click();
  await expect(undo(page)).toContainText('Change the colours');
});

test('a motif is drawn by mouse: pencil, line, rectangle, fill, symmetry; every place changes at once', async ({ page }) => {
  await openDemo(page, 'Leg');
  await foot(page).getByRole('button', { name: 'New motif …' }).click();
  const motif = sheet(page, 'Motif 1');
  const grid = motif.getByRole('application', { name: /^Cells of/ });
  await foot(page).getByRole('button', { name: 'Motif 1' }).click();
  await motif.getByRole('button', { name: 'C lamp orange' }).click();

  const [a, b] = [await cell(grid, 0, 0, 12, 9), await cell(grid, 3, 0, 12, 9)];
  await page.mouse.move(a.x, a.y);
  await page.mouse.down();
  await page.mouse.move(b.x, b.y, { steps: 4 });
  await page.mouse.up();
  await expect(undo(page)).toContainText('Draw Motif 1');
  await expect(motif).toContainText('every 12 stitches');
  await motif.getByRole('button', { name: 'Fill', exact: true }).click();
  const c = await cell(grid, 6, 6, 12, 9);
  await page.mouse.click(c.x, c.y);
  await expect(motif).toContainText('every stitch');
  await page.keyboard.press('Control+z');
  await motif.getByRole('combobox', { name: 'with symmetry' }).selectOption('p2mm');
  await motif.getByRole('button', { name: 'Rectangle' }).click();
  const [d, e] = [await cell(grid, 0, 0, 12, 9), await cell(grid, 2, 2, 12, 9)];
  await page.mouse.move(d.x, d.y);
  await page.mouse.down();
  await page.mouse.move(e.x, e.y, { steps: 3 });
  await page.mouse.up();
  await motif.getByRole('button', { name: 'Line', exact: true }).click();
  const f = await cell(grid, 4, 8, 12, 9);
  await page.mouse.click(f.x, f.y);
  await expect(motif.locator('path.fill')).toHaveCount(1);

  // Widen, cut, turn, mirror, replace: each one step.
  await motif.getByRole('button', { name: 'Widen' }).click();
  await expect(motif).toContainText('13 stitches by 9 rows');
  await motif.getByRole('button', { name: 'Cut off' }).click();
  await motif.getByRole('button', { name: 'Quarter turn' }).click();
  await expect(motif).toContainText('9 stitches by 12 rows');
  await motif.getByRole('combobox', { name: 'Yarn', exact: true }).selectOption('C');
  await motif.getByRole('button', { name: 'Replace the first by the other' }).click();
  await expect(undo(page)).toContainText('Replace a yarn in Motif 1');
  await motif.getByRole('combobox', { name: 'Make a repeat of it' }).selectOption('mirrorBoth');
  await expect(motif).toContainText('18 stitches by 24 rows');

  // A bobble is set in a cell and drawn with it.
  await motif.getByRole('combobox', { name: 'Stitch to set' }).selectOption('b');
  await motif.getByRole('button', { name: 'Pencil' }).click();
  const g = await cell(grid, 4, 4, 18, 24);
  await page.mouse.click(g.x, g.y);
  await expect(grid.locator('text').first()).toHaveText('b');

  // It is kept for other patterns, also over a reload.
  await motif.getByRole('button', { name: 'Keep with your motifs' }).click();
  await expect(motif.getByRole('button', { name: 'Forget Motif 1' })).toBeVisible();
  await motif.getByRole('button', { name: /^Take it out/ }).click();
  await kept(page);
  await page.reload();
  await foot(page).getByRole('button', { name: /more$/ }).click();
  await expect(foot(page).getByRole('button', { name: 'Motif 1' })).toBeVisible();
});

test('a motif is drawn by keys, and a placed one follows', async ({ page }) => {
  await openDemo(page, 'Leg');
  await foot(page).getByRole('button', { name: 'Surf' }).click();
  await foot(page).getByRole('button', { name: 'Edit Surf …' }).click();
  const motif = sheet(page, 'Surf');
  await motif.getByRole('application', { name: /^Cells of Surf/ }).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('c');
  await expect(motif.getByText('row 7, stitch 2: C lamp orange')).toBeAttached();
  await expect(undo(page)).toContainText('Draw Surf');
  await page.keyboard.press(' ');
  await expect(motif.getByText('row 7, stitch 2: clear')).toBeAttached();
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('a');
  await page.keyboard.press('Control+c');
  await page.keyboard.press('Alt+ArrowDown');
  await expect(undo(page)).toContainText('Move within Surf');
  await page.keyboard.press('Control+v');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await expect(motif).toBeHidden();
});

test('a motif is dragged onto the chart, then laid by numbers', async ({ page }) => {
  await openDemo(page, 'Leg');
  await foot(page).getByRole('button', { name: /more$/ }).click();
  const rope = foot(page).getByRole('button', { name: 'Rope' });
  const from = (await rope.boundingBox())!;
  const box = (await chart(page, 'Leg').boundingBox())!;
  await page.mouse.move(from.x + 10, from.y + 10);
  await page.mouse.down();
  await page.mouse.move(from.x + 20, from.y - 40, { steps: 3 });
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2, { steps: 6 });
  await expect(foot(page)).toContainText(/Rope: 12 repeats/);
  await page.mouse.up();
  await expect(undo(page)).toContainText('Place Rope');

  await page.getByText('4 motifs are placed here').click();
  await page.getByRole('button', { name: 'Adjust Rope' }).click();
  const placing = sheet(page, 'Rope, placed');
  await placing.getByRole('spinbutton', { name: 'Bottom row' }).fill('37');
  await placing.getByRole('spinbutton', { name: 'Bottom row' }).press('Enter');
  await expect(undo(page)).toContainText('Move Rope');
  await placing.getByRole('spinbutton', { name: 'Stitches between' }).fill('3');
  await placing.getByRole('spinbutton', { name: 'Stitches between' }).press('Enter');
  await expect(placing).toContainText('Rope: 7 repeats of 4 in 48 stitches');
  await expect(placing).toContainText('stitches lie between the last repeat and the first, 3 elsewhere');
  await placing.getByRole('combobox', { name: 'Across' }).selectOption('spread');
  await expect(placing).toContainText('spread over the whole row');
  await placing.getByRole('combobox', { name: 'Start at' }).selectOption('front');
  await expect(placing).toContainText('goes on around the seam');
  await placing.getByRole('combobox', { name: 'Across' }).selectOption('edges');
  await placing.getByRole('combobox', { name: 'Moved' }).selectOption('brick');
  await placing.getByRole('button', { name: 'mirrored across' }).click();
  await placing.getByRole('button', { name: 'Under: lay Rope lower' }).click();
  await expect(undo(page)).toContainText('Layer Rope');
  await placing.getByRole('button', { name: 'Copy' }).click();
  await expect(placing.getByRole('button', { name: /^Rope, from row/ })).toHaveCount(2);
  await placing.getByRole('button', { name: 'Lock', exact: true }).click();
  await expect(placing.getByRole('button', { name: 'Take off' })).toBeDisabled();
  await placing.getByRole('button', { name: 'Locked', exact: true }).click();
  await placing.getByRole('button', { name: 'Take off' }).click();
  await expect(placing).toBeHidden();
});

test('a placed motif is dragged over the chart', async ({ page }) => {
  await openDemo(page, 'Leg');
  await page.getByText('3 motifs are placed here').click();
  await page.getByRole('group', { name: 'Move Surf' }).getByRole('button', { name: 'Drag' }).click();
  await expect(foot(page)).toContainText('Move Surf: drag it');
  const box = (await chart(page, 'Leg').boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 20, y - 20, { steps: 4 });
  await expect(foot(page)).toContainText(/Surf: \d+ repeats/);
  await page.mouse.up();
  await expect(undo(page)).toContainText('Move Surf');
});

test('the panel says why its stitches can’t be changed, or changes them', async ({ page }) => {
  await openDemo(page, 'Leg');
  await page.getByText('3 motifs are placed here').click();
  await page.getByRole('button', { name: 'Adjust Puffins' }).click();
  const placing = sheet(page, 'Puffins, placed');
  await expect(placing.getByRole('row', { name: /^M 56 48 64/ })).toBeVisible();
  await placing.getByRole('button', { name: 'Change the panel to more' }).click();
  await expect(placing.getByText(/^The rows don’t take it|^Done;/)).toBeVisible();
});

test('a picture becomes a motif', async ({ page }) => {
  await openDemo(page, 'Leg');
  await foot(page).getByRole('button', { name: 'From a picture …' }).click();
  const from = sheet(page, 'From a picture');
  const choose = page.locator('input[type=file]');
  await choose.setInputFiles({ name: 'words.png', mimeType: 'image/png', buffer: Buffer.from('no picture at all, only words in a file') });
  await expect(from.getByRole('alert')).toHaveText('words.png is no PNG or JPEG picture.');
  await choose.setInputFiles({ name: 'quay.png', mimeType: 'image/png', buffer: halves(80, 80) });
  await expect(from.getByRole('status')).toHaveText('32 stitches by 36 rows: 576 in A, 576 in B.');
  await from.getByRole('spinbutton', { name: 'bottom' }).fill('50');
  await from.getByRole('spinbutton', { name: 'bottom' }).press('Enter');
  await expect(from.getByRole('status')).toHaveText('32 stitches by 18 rows: 576 in B.');
  await from.getByRole('button', { name: 'Take all of it' }).click();
  await from.getByRole('spinbutton', { name: 'Stitches across' }).fill('8');
  await expect(from.getByRole('status')).toContainText('8 stitches by 9 rows');
  await from.getByRole('checkbox', { name: 'A slate' }).uncheck();
  await expect(from.getByRole('status')).not.toContainText('in A');
  await from.getByRole('button', { name: 'Make it a motif' }).click();
  await expect(sheet(page, 'quay')).toContainText('8 stitches by 9 rows');
  await expect(undo(page)).toContainText('New motif quay');
});

test('what the yarns do is told row by row, and the technique is a choice', async ({ page }) => {
  await openDemo(page, 'Leg');
  await foot(page).getByRole('button', { name: 'What they do …' }).click();
  const does = sheet(page, 'What the yarns do: Leg');
  await expect(does).toContainText(/Yarns A, B and C, at most 3 in a row; \d+ changes; \d+ ends to weave in/);
  await expect(does.getByRole('row', { name: /^5 A B 12 B over 5, 2\.8 cm/ })).toBeVisible();
  await does.getByRole('combobox', { name: 'Worked' }).selectOption('stranded');
  await expect(undo(page)).toContainText('Colours of leg');
  await expect(page.getByRole('region', { name: 'Checks' })).toContainText(/things? to look at/);
  await does.getByRole('spinbutton', { name: /carried over more/ }).fill('30');
  await does.getByRole('spinbutton', { name: /carried over more/ }).press('Enter');
  await expect(undo(page)).toContainText('Limits of the colours');
  await goTo(page, 'Heel');
  await expect(sheet(page, 'What the yarns do: Heel')).toContainText('Nothing is carried.');
});

test('an easier version is made and chosen where the size is chosen', async ({ page }) => {
  await openDemo(page, 'Leg');
  await page.getByRole('button', { name: 'Versions …' }).click();
  const versions = sheet(page, 'Versions');
  await versions.getByRole('button', { name: 'with a plain leg' }).click();
  await expect(page.getByRole('combobox', { name: 'Version', exact: true })).toHaveValue(/version/);
  await versions.getByRole('combobox', { name: 'Leg in this version' }).selectOption('stripes');
  await versions.getByRole('textbox', { name: 'Stripes of Leg' }).fill('A 3, C 1, Q 9');
  await versions.getByRole('textbox', { name: 'Stripes of Leg' }).press('Enter');
  await expect(versions.getByRole('alert')).toContainText('Yarns are A, B, C');
  await versions.getByRole('textbox', { name: 'Stripes of Leg' }).fill('A 3, C 1');
  await versions.getByRole('textbox', { name: 'Stripes of Leg' }).press('Enter');
  await versions.getByRole('button', { name: 'Close the sheet' }).click();
  await page.getByRole('combobox', { name: 'Version', exact: true }).selectOption({ label: 'as it stands' });
  await expect(page.getByText('3 motifs are placed here')).toBeVisible();
});

test.describe('by touch on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('a motif is drawn, and every target is large enough', async ({ page }) => {
    await openDemo(page, 'Leg');
    await foot(page).getByRole('button', { name: 'New motif …' }).tap();
    const motif = sheet(page, 'Motif 1');
    const grid = motif.getByRole('application', { name: /^Cells of/ });
    await grid.scrollIntoViewIfNeeded();
    const at = await cell(grid, 5, 4, 12, 9);
    await page.touchscreen.tap(at.x, at.y);
    await expect(motif.locator('path.fill')).toHaveCount(1);
    await motif.getByRole('button', { name: 'Undo', exact: true }).tap();
    await expect(motif.locator('path.fill')).toHaveCount(0);
    for (const button of await motif.getByRole('button').all()) expect((await button.boundingBox())!.height, await button.innerText()).toBeGreaterThanOrEqual(44);
    const room = (await motif.boundingBox())!;
    expect(room).toMatchObject({ x: 0, width: 390 });
    await motif.getByRole('button', { name: 'Close the sheet' }).tap();
    await expect(motif).toBeHidden();
  });
});
