import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { kept, openDemo } from './bench.ts';

const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
const note = (page: Page) => page.getByRole('complementary', { name: 'Where a number comes from' });

test('write a swatch down, measure, put sizes in, set a number by hand, make the piece anew, undo', async ({ page }) => {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));

  await page.goto('/');
  await page.getByRole('button', { name: 'Start a pattern' }).click();
  await page.getByRole('button', { name: 'Put it on the bench' }).click();
  await page.getByRole('link', { name: 'Sizes' }).click();
  await expect(page.getByText('The rows on the bench are made to these numbers.')).toBeVisible();

  // A swatch outside the published range of its class says so.
  await page.getByRole('button', { name: 'Add a swatch' }).click();
  await page.getByRole('textbox', { name: 'Stitches of swatch 1' }).fill('20');
  await page.keyboard.press('Tab');
  await page.getByRole('combobox', { name: 'Yarn weight of swatch 1' }).selectOption('5 Bulky');
  await expect(page.getByText(/20 sc in 10 cm is outside the published range of yarn weight 5/)).toBeVisible();
  await page.getByRole('combobox', { name: 'Yarn weight of swatch 1' }).selectOption('2 Fine');
  await expect(page.getByText(/outside the published range/)).toHaveCount(0);

  // A size from published measurements: women of 24 to 25 cm have 22.7 cm round the foot, 45.4 stitches at this gauge.
  await page.getByRole('combobox', { name: 'Add sizes from published measurements' }).selectOption({ label: '24–25 cm' });
  const numbers = page.getByRole('table', { name: 'Numbers that the rows are made of' });
  const around = numbers.getByRole('button', { name: /stitches round the foot, size 24–25 cm/ });
  await expect(around).toContainText('46');
  await expect(page.getByText(/heel and ankle need 30.8 cm/)).toBeVisible();

  // Where it comes from, and another number in its place: what hangs on it follows.
  await around.focus();
  await expect(note(page)).toContainText('exactly 45.4 sts');
  await expect(note(page)).toContainText('swatch in sc, washed: 20 sts in 10 cm');
  await note(page).getByRole('textbox', { name: 'stitches round the foot by hand' }).fill('52');
  await page.keyboard.press('Enter');
  await expect(numbers.getByRole('button', { name: /stitches of the heel, size 24–25 cm/ })).toContainText('26');
  await expect(undo(page)).toContainText('Set the stitches round the foot by hand');

  // Inches and back.
  await page.getByRole('button', { name: 'inches' }).click();
  await expect(page.getByRole('textbox', { name: 'girth of the foot, size 24–25 cm, in' })).toHaveValue('8.94');
  await page.getByRole('button', { name: 'cm', exact: true }).click();

  // The piece anew is one step on the bench.
  await page.getByRole('button', { name: 'Make the piece anew' }).click();
  await expect(page.getByText('The rows on the bench are made to these numbers.')).toBeVisible();
  await expect(undo(page)).toContainText('Make the piece anew');
  const schematic = page.waitForEvent('download');
  await page.getByRole('button', { name: /^Take away: the finished piece/i }).click();
  expect(readFileSync(await (await schematic).path(), 'utf8')).toMatch(/^<\?xml[^>]*>\s*<svg [^>]*width="[\d.]+mm"/);
  await page.getByRole('link', { name: 'Bench' }).click();
  await page.getByRole('combobox', { name: 'Size' }).selectOption('24–25 cm');
  await expect(page.getByText('Checks: all numbers agree')).toBeVisible();
  await expect(page.getByRole('table', { name: 'Ledger and words' })).toContainText('(52 sc)');
  await undo(page).click();
  await expect(page.getByRole('table', { name: 'Ledger and words' })).not.toContainText('(52 sc)');

  // What was measured is there after a reload, on the same page.
  await page.goBack();
  await expect(page.getByText('The rows on the bench are made to other numbers.')).toBeVisible();
  await kept(page);
  await page.reload();
  await expect(around).toContainText('52');
  expect(errors).toEqual([]);
});

test('a pattern without recipe is measured, and nothing pretends to follow', async ({ page }) => {
  await openDemo(page, 'Leg');
  await page.getByRole('link', { name: 'Sizes' }).click();
  await expect(page.getByText('No recipe made this pattern')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Make the piece anew' })).toHaveCount(0);
  await page.getByRole('button', { name: /girth of the foot, size M/ }).click();
  await expect(note(page)).toContainText('56 sts');
  await page.getByRole('combobox', { name: 'Made for' }).selectOption('a child under 3 years');
  await expect(page.getByText(/the rules of the place/)).toBeVisible();
});

test('change the heel after the start: what would change is said, made in one step, undone', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start a pattern' }).click();
  await page.getByRole('button', { name: 'Put it on the bench' }).click();
  await page.getByRole('link', { name: 'Sizes' }).click();
  const make = page.getByRole('region', { name: 'How it is made' });
  await make.getByRole('combobox', { name: 'Kind of the heel' }).selectOption('a flap with its gusset');
  await expect(make.getByRole('status')).toContainText('Heel flap, Heel turn and Gusset');
  await make.getByRole('button', { name: 'Leave it as it is' }).click();
  await expect(make.getByRole('combobox', { name: 'Kind of the heel' })).toHaveValue('shortRows');
  await make.getByRole('combobox', { name: 'Kind of the heel' }).selectOption('a flap with its gusset');
  await make.getByRole('combobox', { name: 'Closing of the toe' }).selectOption('closed with slip stitches');
  await make.getByRole('button', { name: 'Make it so' }).click();
  await expect(undo(page)).toContainText('Make with another heel and toe');
  await expect(page.getByRole('table', { name: 'Stitches, rows and measurements of every section' })).toContainText('Gusset');
  await undo(page).click();
  await expect(make.getByRole('combobox', { name: 'Kind of the heel' })).toHaveValue('shortRows');
  await expect(page.getByRole('table', { name: 'Stitches, rows and measurements of every section' })).not.toContainText('Gusset');
});

test('weigh a swatch, write down ball and price: every number of yarn says what it comes from, one set by hand leads the rest', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start a pattern' }).click();
  await page.getByRole('button', { name: 'Put it on the bench' }).click();
  await page.getByRole('link', { name: 'Sizes' }).click();
  const typed = async (name: string | RegExp, value: string) => {
    await page.getByRole('textbox', { name }).fill(value);
    await page.keyboard.press('Tab');
  };
  const need = page.getByRole('table', { name: 'Yarn needed in every size' });
  await expect(need.getByRole('button', { name: /yarn A/ }).first()).toContainText('≈');
  await expect(page.getByText(/A rough guess, as no swatch was weighed/)).toBeVisible();

  await page.getByRole('button', { name: 'Add a swatch' }).click();
  await typed('Grams of swatch 1', '14');
  await typed('Grams in a ball of yarn A', '50');
  await typed('Length of a ball of yarn A, m', '125');
  await typed('Price of a ball of yarn A', '6.5');
  await expect(page.getByText(/From swatch 1: 14 g weighed in 16 × 18 sts of sc/)).toBeVisible();
  await expect(need).not.toContainText('≈');

  // Price: balls by the length with its margin, down to the swatch.
  await need.getByRole('button', { name: /price of yarn A/ }).click();
  for (const says of ['balls × price of one', 'bought beyond the estimate 10 %', 'yarn in a ball 125 m', 'swatch 1: 14 g weighed']) await expect(note(page)).toContainText(says);

  // 7 balls at 6.50 are 45.50.
  await need.getByRole('button', { name: /balls of yarn A/ }).click();
  await note(page).getByRole('textbox', { name: /balls of yarn A.* by hand/ }).fill('7');
  await page.keyboard.press('Enter');
  await expect(need.getByRole('button', { name: /price of yarn A/ })).toContainText('45.50');
  await expect(need.getByRole('button', { name: /balls of yarn A.*set by hand/ })).toContainText('7');
  await undo(page).click();
  await expect(need.getByRole('button', { name: /price of yarn A/ })).not.toContainText('45.50');

  // On a screen nothing is to scale for certain, and nothing says that it is.
  await page.setViewportSize({ width: 390, height: 844 });
  await expect(page.getByText(/Drawn here for the screen, not to scale/)).toBeVisible();
  const picture = page.getByRole('img', { name: /The finished piece/ });
  expect(decodeURIComponent((await picture.getAttribute('src'))!)).not.toMatch(/[Ss]cale 1/);
  await expect(page.getByRole('img', { name: 'Leg, laid flat, with its measurements' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Take away: the finished piece' })).toContainText(/1 : \d/);
});
