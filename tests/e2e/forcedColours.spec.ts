import { expect, test, type Locator, type Page } from '@playwright/test';
import { PNG } from 'pngjs';
import { chart, openDemo, rowOf } from './bench.ts';
import { foot } from './colourworkBench.ts';

/* Where the reader's system sets the colours: yarns are still seen as they are, and what is in focus or chosen is still seen to be so. */

test.use({ contextOptions: { reducedMotion: 'reduce' } });

interface Clip {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

async function shot(page: Page, clip: Clip): Promise<PNG> {
  return PNG.sync.read(await page.screenshot({ clip }));
}

/** An element and what lies 6 px about it, within the window. */
async function around(page: Page, element: Locator): Promise<Clip> {
  await element.scrollIntoViewIfNeeded();
  const box = (await element.boundingBox())!;
  const { width, height } = page.viewportSize()!;
  const [x, y] = [Math.max(0, Math.floor(box.x) - 6), Math.max(0, Math.floor(box.y) - 6)];
  return { x, y, width: Math.min(width, Math.ceil(box.x + box.width) + 6) - x, height: Math.min(height, Math.ceil(box.y + box.height) + 6) - y };
}

/** Relative luminance of a pixel (WCAG 2.2, "relative luminance"). */
function luminance({ data }: PNG, at: number): number {
  const [r, g, b] = [0, 1, 2].map((i) => {
    const c = data[at * 4 + i]! / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

/** Pixels that changed by a contrast of 3 to 1 or more (WCAG 2.2, 2.4.13 measures a focus so). */
function changed(before: PNG, after: PNG): number {
  let count = 0;
  for (let at = 0; at < before.width * before.height; at++) {
    const [a, b] = [luminance(before, at), luminance(after, at)];
    if ((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) >= 3) count++;
  }
  return count;
}

/** How many pixels there are of each colour, by "r,g,b". */
function colours({ data, width, height }: PNG): Map<string, number> {
  const counts = new Map<string, number>();
  for (let at = 0; at < width * height * 4; at += 4) {
    const colour = `${data[at]},${data[at + 1]},${data[at + 2]}`;
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  return counts;
}

/** The yarns that the chart is drawn in, "r,g,b" each, as their buttons say. */
async function yarnColours(page: Page): Promise<string[]> {
  await foot(page).getByRole('button', { name: 'Yarns …' }).click();
  const typed = page.getByRole('textbox', { name: /^Colour of .*, typed$/ });
  const hex = await typed.evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));
  await page.getByRole('button', { name: 'Close the sheet' }).click();
  return hex.map((each) => [1, 3, 5].map((i) => parseInt(each.slice(i, i + 2), 16)).join(','));
}

async function force(page: Page): Promise<void> {
  await page.emulateMedia({ forcedColors: 'active' });
  expect(await page.evaluate(() => matchMedia('(forced-colors: active)').matches)).toBe(true);
  await page.mouse.move(0, 0);
}

test('The cells of the chart, and the marks of the yarns, keep the colours of the yarns', async ({ page }) => {
  await openDemo(page, 'Leg');
  await page.getByRole('button', { name: 'Colour', exact: true }).click();
  const yarns = await yarnColours(page);
  expect(yarns).toHaveLength(3);
  await page.mouse.move(0, 0);
  const places = [chart(page, 'Leg'), foot(page).getByRole('group', { name: 'Yarns' })];
  const clips = await Promise.all(places.map((place) => around(page, place)));
  const plain = [];
  for (const clip of clips) plain.push(colours(await shot(page, clip)));
  await force(page);
  for (const [i, place] of places.entries()) {
    const forced = colours(await shot(page, await around(page, place)));
    for (const yarn of yarns) {
      const before = plain[i]!.get(yarn) ?? 0;
      expect(before, `yarn ${yarn} in place ${i}`).toBeGreaterThan(20);
      expect(Math.abs((forced.get(yarn) ?? 0) - before) / before, `yarn ${yarn} in place ${i}: ${before} pixels, then ${forced.get(yarn) ?? 0}`).toBeLessThan(0.1);
    }
  }
});

test('What is in focus is seen to be, on the bench, in a menu and in a sheet', async ({ page }) => {
  await openDemo(page, 'Leg');
  await force(page);
  const button = (name: string) => page.getByRole('button', { name, exact: true }).first();
  const seen = async (element: Locator): Promise<void> => {
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    const clip = await around(page, element);
    const before = await shot(page, clip);
    // A key first: the focus that a script sets is shown where the keyboard was used last.
    await page.keyboard.press('Shift');
    await element.focus();
    const after = await shot(page, clip);
    expect(changed(before, after), `${await element.evaluate((one) => one.outerHTML.slice(0, 120))}`).toBeGreaterThan(clip.width + clip.height);
  };
  for (const element of [button('Steps'), page.getByRole('link', { name: 'Sizes' }), button('Both'), chart(page, 'Leg'), rowOf(page, 'Row 14').getByRole('button', { name: /^Edit the words/ }), page.getByRole('combobox', { name: 'Size' })]) await seen(element);
  await rowOf(page, 'Row 14').click({ button: 'right' });
  await seen(page.getByRole('menuitem', { name: 'Mirror it' }));
  await page.keyboard.press('Escape');
  await foot(page).getByRole('button', { name: 'New motif …' }).click();
  await seen(page.getByRole('application').last());
  await seen(page.getByRole('button', { name: 'Close the sheet' }));
  await page.goto(`/publish${new URL(page.url()).search}`);
  await expect(page.getByRole('status').filter({ hasText: /^[1-9]\d? sheets$/ })).toBeVisible({ timeout: 20_000 });
  await seen(button('PDF'));
});

test('What is chosen is seen to be: a view, a yarn, the section, the row in hand, a stitch, and the button that is meant most', async ({ page }) => {
  await openDemo(page, 'Leg');
  await force(page);
  const seen = async (element: Locator, choose: () => Promise<unknown>, least: (clip: Clip) => number): Promise<void> => {
    const clip = await around(page, element);
    const before = await shot(page, clip);
    await choose();
    await page.mouse.move(0, 0);
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    const after = await shot(page, clip);
    expect(changed(before, after), await element.evaluate((one) => one.outerHTML.slice(0, 120))).toBeGreaterThan(least(clip));
  };
  const edge = ({ width, height }: Clip): number => width + height;
  const button = (name: string) => page.getByRole('button', { name, exact: true }).first();
  await seen(button('Colour'), () => button('Colour').click(), edge);
  await seen(foot(page).getByRole('button', { name: 'B chalk' }), () => foot(page).getByRole('button', { name: 'B chalk' }).click(), edge);
  const row = rowOf(page, 'Row 12');
  await seen(row, () => row.getByRole('button', { name: 'Row 12', exact: true }).click(), edge);
  const heel = page.getByRole('navigation', { name: 'Piece' }).getByRole('button', { name: /^Heel/ });
  await seen(heel, () => heel.click(), edge);
  await seen(chart(page, 'Heel'), async () => {
    await chart(page, 'Heel').focus();
    await page.keyboard.press('ArrowLeft');
  }, () => 20);

  // The words of the button that is meant most are dark on light or light on dark.
  await page.goto(`/make${new URL(page.url()).search}`);
  const next = page.getByRole('button', { name: 'Next stitch' });
  const most = colours(await shot(page, (await next.boundingBox())!));
  const whole = [...most.values()].reduce((sum, n) => sum + n, 0);
  expect(Math.max(...most.values()) / whole).toBeGreaterThan(0.85);
  expect(most.size).toBeGreaterThan(2);
});
