import { readFileSync } from 'node:fs';
import { expect, test, type Page } from '@playwright/test';
import { openDemo } from './bench.ts';

async function publishDemo(page: Page): Promise<void> {
  await openDemo(page, 'Leg');
  await page.goto(`/publish${new URL(page.url()).search}`);
  await expect(sheets(page).getByRole('status')).toHaveText(/^[1-9]\d? sheets$/, { timeout: 20_000 });
}

const sheets = (page: Page) => page.getByRole('region', { name: 'The sheets as they will print' });

test('A designer chooses what goes out, sees the sheets, and takes the PDF and an archive', async ({ page }) => {
  await publishDemo(page);
  const before = await sheets(page).getByRole('figure').count();
  expect(before).toBeGreaterThan(8);
  // The very SVG that goes out is what is seen, in the face that it was measured in.
  await expect(sheets(page).getByRole('img', { name: /page 1 of/ })).toBeVisible();
  expect(await page.evaluate(() => document.fonts.check('12px Literata'))).toBe(true);

  for (const part of ['Step pictures', 'Schematic', 'Charts']) await page.getByRole('checkbox', { name: part, exact: true }).uncheck();
  await expect.poll(() => sheets(page).getByRole('figure').count(), { timeout: 20_000 }).toBeLessThan(before);
  await page.getByLabel('Paper').selectOption('a4');
  await expect.poll(() => sheets(page).getByRole('figure').first().getAttribute('data-page'), { timeout: 20_000 }).toBe('a4');

  const [pdf] = await Promise.all([page.waitForEvent('download', { timeout: 40_000 }), page.getByRole('button', { name: 'PDF', exact: true }).click()]);
  expect(pdf.suggestedFilename()).toBe('puffin-quay.pdf');
  expect(readFileSync(await pdf.path()).subarray(0, 5).toString()).toBe('%PDF-');
  const [zip] = await Promise.all([page.waitForEvent('download', { timeout: 20_000 }), page.getByRole('button', { name: 'Single charts and texts' }).click()]);
  expect(zip.suggestedFilename()).toBe('puffin-quay.zip');
  expect(readFileSync(await zip.path()).subarray(0, 2).toString()).toBe('PK');

  // The choices are found again.
  await page.reload();
  await expect(page.getByRole('checkbox', { name: 'Schematic', exact: true })).not.toBeChecked();
  await expect(page.getByLabel('Paper')).toHaveValue('a4');
});

test('Long work can be stopped, and the designer’s own words are printed', async ({ page }) => {
  await publishDemo(page);
  await page.getByLabel(/About the piece/).fill('Warm feet on a cold quay.');
  await page.getByLabel(/About the piece/).blur();
  await expect.poll(() => page.evaluate(() => document.querySelector('.facsimile')?.shadowRoot?.textContent ?? ''), { timeout: 20_000 }).toContain('Warm feet on a cold quay.');
  await page.getByLabel('Pictures at').fill('600');
  await page.getByRole('button', { name: 'Pictures (PNG)' }).click();
  await expect(page.getByRole('progressbar')).toBeVisible();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Stopped; nothing was saved.')).toBeVisible();
  await page.getByLabel('Pictures at').fill('5000');
  await expect(page.getByRole('alert')).toContainText('36 to 1200 dots an inch');
});

test('Errata compare with how the pattern once stood, and are kept and printed with it', async ({ page }) => {
  await openDemo(page, 'Foot');
  await page.getByRole('link', { name: 'Earlier' }).click();
  await page.getByLabel('Name for how it stands now').fill('First edition');
  await page.getByRole('button', { name: 'Keep it so' }).click();
  await expect(page.getByText('First edition').first()).toBeVisible();
  await page.keyboard.press('Escape');
  const row = page.getByRole('table', { name: 'Ledger and words' }).getByRole('row', { name: /^Round 4\b/ });
  await row.getByRole('button', { name: /makes 48/ }).click();
  await page.keyboard.type('52');
  await page.keyboard.press('Enter');
  await expect(row.getByRole('button', { name: /makes 52/ })).toBeVisible();
  await page.getByRole('link', { name: 'Publish' }).click();
  await page.getByLabel('Compare with').selectOption({ label: 'First edition' });
  // The round that was changed with its words, the rounds that follow it as one.
  const changes = page.getByRole('region', { name: 'Errata' }).getByRole('listitem');
  await expect(changes.filter({ hasText: /^Foot, round 4 \(size S\): .* 52 sts; was: sc in each st around\. 48 sts\.$/ })).toHaveCount(1);
  await expect(changes.filter({ hasText: /^Foot, rounds 5–\d+ \(size S\): 52 sts, was 48 sts\.$/ })).toHaveCount(1);
  await expect(changes.filter({ hasText: /\bin 52 A\b/ })).toHaveCount(0);
  expect(await changes.count()).toBeLessThan(25);
  await page.getByRole('button', { name: 'Keep with the pattern' }).click();
  await expect.poll(() => page.evaluate(() => [...document.querySelectorAll('.facsimile')].map((each) => each.shadowRoot?.textContent ?? '').join(' ')), { timeout: 20_000 }).toContain('was 48 sts');
});
