import { writeFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { kept, openDemo, rowOf } from './bench.ts';

test('the empty shelf teaches one row in three readings', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByRole('heading', { name: 'One row, three readings' })).toBeVisible();
  await expect(page.getByText('sc2tog').first()).toBeVisible();
});

test('a started sock is workable at once and stays on the shelf', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start a pattern' }).click();
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill('Harbour sock');
  await page.getByRole('button', { name: /bench/ }).click();
  await expect(page.getByText('Checks: all numbers agree')).toBeVisible();
  await kept(page);
  await page.getByRole('link', { name: 'Shelf' }).click();
  await expect(page.getByText('Harbour sock').first()).toBeVisible();
});

test('a written pattern is pasted, checked and opened', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Read a written pattern' }).click();
  const field = page.getByRole('textbox', { name: /Paste the rows/ });
  await field.fill('Mat\n\nMAT\nRnd 1: magic ring, 6 sc in ring. (6 sc)\nRnd 2: 2 sc in each st around. (13 sc)\nRnd 3: flurble the wumpus.');
  await expect(page.getByText('Says 13, makes 12.')).toBeVisible();
  await expect(page.getByText(/could not be read/)).toBeVisible();
  await page.getByRole('button', { name: 'Put it on the bench' }).click();
  await expect(rowOf(page, 'Round 2')).toContainText('12');
  await expect(page.getByText(/flurble the wumpus/).first()).toBeVisible();
});

test.describe('bad input is answered in words, and nothing is lost', () => {
  for (const [name, text, words] of [
    ['empty.json', '', /empty|nothing/i],
    ['newer.json', '{"format":"turnwork-pattern","version":999,"pattern":{}}', /newer/],
    ['damaged.json', '{"format":"turnwork-pattern","version":1,"pattern":{"title":7}}', /damaged/],
    ['other.json', '[1,2,3]', /no pattern file/],
  ] as const) {
    test(name, async ({ page }, info) => {
      await openDemo(page, 'Leg');
      await kept(page);
      await page.getByRole('link', { name: 'Shelf' }).click();
      const path = info.outputPath(name);
      writeFileSync(path, text);
      const chooser = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: 'Open a file' }).click();
      await (await chooser).setFiles(path);
      await expect(page.getByText(words).first()).toBeVisible();
      await expect(page.getByText('Puffin Quay').first()).toBeVisible();
    });
  }

  test('a paste of 5 MB', async ({ page }) => {
    await page.goto('/');
    await page.getByRole('button', { name: 'Read a written pattern' }).click();
    const field = page.getByRole('textbox', { name: /Paste the rows/ });
    await field.evaluate((element: HTMLTextAreaElement) => {
      element.value = 'Row 1: sc in next st.\n'.repeat(240_000);
      element.dispatchEvent(new Event('input', { bubbles: true }));
    });
    await expect(page.getByText(/characters long/)).toBeVisible({ timeout: 20_000 });
  });
});
