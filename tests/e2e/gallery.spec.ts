import { expect, test } from '@playwright/test';
import { SAMPLES } from '../../src/editor/gallery/samples.ts';
import { SYMBOLS } from '../../src/editor/gallery/symbolList.ts';

test('the gallery shows every symbol in both sets and every sample chart, and redraws them as chosen', async ({ page }) => {
  await page.goto('/gallery');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Symbols and charts');
  await expect(page.getByRole('table').getByRole('img')).toHaveCount(2 * SYMBOLS.length);
  await expect(page.getByRole('figure')).toHaveCount(SAMPLES.length);
  const heel = page.getByRole('figure').filter({ hasText: 'Heel as a wedge' });
  // The chart is a picture with a name, in a tree of its own.
  await expect(heel.getByRole('img', { name: /Heel as a wedge/ })).toBeVisible();
  const definitions = () => heel.locator('defs').first().innerHTML();
  const us = await definitions();
  await page.getByRole('button', { name: 'JIS' }).click();
  await expect.poll(definitions).not.toBe(us);
  await page.getByRole('group', { name: 'Print' }).getByRole('button', { name: 'black and white' }).click();
  await expect.poll(async () => (await heel.locator('svg').first().innerHTML()).includes('#f8dfae')).toBe(false);
});

for (const width of [1440, 1024, 390]) {
  test(`the gallery fits a page ${width} px wide`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 });
    await page.goto('/gallery');
    await expect(page.getByRole('figure').last()).toBeAttached();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  });
}
