import { expect, test, type Page } from '@playwright/test';

/** Opens the demo in the maker's view, one size of it. */
async function makeDemo(page: Page, size: string): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Try Puffin Quay' }).click();
  await expect(page.getByRole('textbox', { name: 'Title of the pattern' })).toHaveValue('Puffin Quay');
  await page.goto(`/make?${new URL(page.url()).searchParams}`);
  await page.getByLabel('Size').selectOption({ label: size });
}

const where = (page: Page) => page.getByRole('region', { name: /·/ });

test('A maker goes along by keys, and finds the place again', async ({ page }) => {
  await makeDemo(page, 'M');
  await expect(where(page)).toContainText('Cuff · Foundation');
  for (let n = 0; n < 6; n++) await page.keyboard.press('PageDown');
  await expect(where(page)).toContainText('Row 6');
  await expect(where(page)).toContainText(/0 of \d+ made/);
  for (let n = 0; n < 4; n++) await page.keyboard.press('ArrowRight');
  await expect(where(page)).toContainText(/3 of \d+ made/);
  await page.keyboard.press('ArrowLeft');
  await expect(where(page)).toContainText(/2 of \d+ made/);
  await page.keyboard.press('ArrowDown');
  await expect(where(page)).toContainText('Row made');
  // A place is kept within a quarter of a second.
  await page.waitForTimeout(500);
  await page.reload();
  await expect(where(page)).toContainText('Row 6');
  await page.getByText(/^Rows: 7 of/).click();
  await expect(page.getByRole('checkbox', { name: 'Cuff, Row 6 made' })).toBeChecked();
  await expect(page.getByRole('checkbox', { name: 'Cuff, Row 7 made' })).not.toBeChecked();
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('A maker taps along the heel, left-handed, size by size', async ({ page }) => {
    await makeDemo(page, 'S');
    await page.getByText(/^Rows: 0 of/).tap();
    await page.getByRole('region', { name: 'Heel' }).getByRole('button', { name: 'Row 4', exact: true }).tap();
    await expect(where(page)).toContainText('Heel · Row 4');
    const open = await where(page).getByText(/open:/).innerText();
    const [left, right] = [/(\d+) left/.exec(open)![1], /(\d+) right/.exec(open)![1]];
    await page.getByRole('button', { name: 'Left-handed' }).tap();
    await expect(where(page).getByText(/open:/)).toHaveText(`open: ${right} left, ${left} right`);
    await page.getByRole('button', { name: 'Next stitch' }).tap();
    await page.getByRole('button', { name: 'Next run' }).tap();
    const made = await where(page).getByText(/of \d+ made/).innerText();
    await page.getByLabel('Size').selectOption({ label: 'L' });
    await expect(where(page)).toContainText('Cuff · Foundation');
    await page.getByLabel('Size').selectOption({ label: 'S' });
    await expect(where(page)).toContainText('Heel · Row 4');
    await expect(where(page).getByText(/of \d+ made/)).toHaveText(made);
    // Nothing is pushed off the side of the phone.
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  });
});
