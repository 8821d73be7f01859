import { expect, test, type Page } from '@playwright/test';
import { chart, goTo, openDemo, walk } from './bench.ts';

const choices = (page: Page) => page.getByRole('region', { name: 'How it is drawn' });

async function choose(page: Page, group: string, word: string): Promise<void> {
  const button = choices(page).getByRole('group', { name: group }).getByRole('button', { name: word, exact: true });
  await button.click();
  await expect(button).toHaveAttribute('aria-pressed', 'true');
}

/** Row numbers as they stand on the screen, left to right of the chart's middle. */
async function numbers(page: Page, section: string): Promise<{ readonly left: readonly string[]; readonly right: readonly string[] }> {
  const box = (await chart(page, section).boundingBox())!;
  const found = await chart(page, section).locator('.ruler-number').evaluateAll((all) => all.map((each) => ({ text: each.textContent ?? '', x: each.getBoundingClientRect().x, anchor: each.getAttribute('text-anchor') })));
  const rows = found.filter(({ anchor }) => anchor !== 'middle');
  const of = (isLeft: boolean): string[] => rows.filter(({ x }) => x < box.x + box.width / 2 === isLeft).map(({ text }) => text.replace(/\D/g, ''));
  return { left: of(true), right: of(false) };
}

test('how a chart is drawn is chosen under it, kept for the pattern, and walked as it lies', async ({ page }) => {
  await openDemo(page, 'Heel');
  const before = await numbers(page, 'Heel');
  // Rows that start on the right are odd: one in two of every ten rows must not be all that is left of a side.
  expect(before.right.length).toBeGreaterThanOrEqual(before.left.length - 1);
  expect(before.right).toContain('1');

  await page.getByRole('button', { name: 'How it is drawn' }).click();
  await expect(choices(page).getByRole('group')).toHaveCount(3);
  await choose(page, 'Short rows', 'in columns');
  await choose(page, 'For a maker', 'left-handed');
  await choose(page, 'Symbols', 'JIS L 0201');
  await expect.poll(async () => (await numbers(page, 'Heel')).left).toContain('1');

  // Left and right go as the chart lies.
  await walk(page, 'Heel', [['ArrowRight', 1]]);
  const at = async () => (await chart(page, 'Heel').locator('.focus').boundingBox())!.x;
  const x = await at();
  await page.keyboard.press('ArrowRight');
  await expect.poll(at).toBeGreaterThan(x);

  await page.keyboard.press('Escape');
  await page.reload();
  await goTo(page, 'Heel');
  await page.getByRole('button', { name: 'How it is drawn' }).click();
  for (const word of ['in columns', 'left-handed', 'JIS L 0201']) await expect(choices(page).getByRole('button', { name: word, exact: true })).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Escape');
  await expect(choices(page)).toBeHidden();
  await expect(page.getByRole('button', { name: 'How it is drawn' })).toBeFocused();
});

test('a tube is unrolled, seen from its tip, leaning or rising as is chosen', async ({ page }) => {
  await openDemo(page, 'Foot');
  await page.getByRole('button', { name: 'How it is drawn' }).click();
  await expect(choices(page).getByRole('group')).toHaveCount(6);
  const ghosts = () => chart(page, 'Foot').locator('.ghost-fill').evaluateAll((all) => all.reduce((sum, each) => sum + (each.getAttribute('d') ?? '').length, 0));
  const wide = await ghosts();
  await choose(page, 'Repeated beside it', 'none');
  await expect.poll(ghosts).toBeLessThan(wide);
  await choose(page, 'Each round', 'rising as a spiral');
  await choose(page, 'Travel', '¼');
  await choose(page, 'Rounds', 'about the middle');
  await expect(choices(page).getByRole('group', { name: 'Travel' })).toHaveCount(0);
  // Numbers on the fabric of a round carry no arrow.
  await expect.poll(async () => (await chart(page, 'Foot').locator('.ruler-number.inside').allTextContents()).some((text) => /^\s*\d+\s*$/.test(text))).toBe(true);
});

for (const [width, height] of [[1440, 900], [1024, 768], [390, 844]] as const) {
  test(`the choices fit beside a chart that can still be seen at ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await openDemo(page, 'Foot');
    await page.getByRole('button', { name: 'How it is drawn' }).click();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect((await chart(page, 'Foot').boundingBox())!.height).toBeGreaterThan(150);
    for (const button of await choices(page).getByRole('button').all()) expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(24);
  });
}
