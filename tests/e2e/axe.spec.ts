import { expect, test, type Page } from '@playwright/test';
import axe from 'axe-core';
import { openDemo } from './bench.ts';
import { BENCH_STATES, ROW_STATES, SHELF_STATES, type State } from './states.ts';

/*
 * Every page and every sheet by the rules of WCAG 2.2 A and AA and the common practices that axe knows. What depends on colours is looked at in
 * dark too, and where more contrast is wished for.
 */

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];

/** What of a look of the page breaks a rule, each place with what is wrong. */
async function broken(page: Page, name: string, run: Partial<axe.RunOptions>): Promise<{ readonly found: string[]; readonly held: number }> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  const { violations, passes } = await page.evaluate((options) => (window as unknown as { axe: typeof axe }).axe.run(document, options), { resultTypes: ['violations'], iframes: false, ...run } as axe.RunOptions);
  const found = violations.flatMap(({ id, help, nodes }) => nodes.map((node) => `${name}: ${id}: ${help}\n  ${node.html.slice(0, 200)}\n  ${node.failureSummary ?? ''}`));
  return { found, held: passes.length };
}

async function scan(page: Page, name: string): Promise<string[]> {
  const light = await broken(page, `${name}, light`, { runOnly: { type: 'tag', values: TAGS } });
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await broken(page, `${name}, dark`, { runOnly: { type: 'rule', values: COLOUR_RULES } });
  await page.emulateMedia({ colorScheme: 'light', contrast: 'more' });
  const more = await broken(page, `${name}, more contrast`, { runOnly: { type: 'rule', values: COLOUR_RULES } });
  await page.emulateMedia({ colorScheme: 'light', contrast: 'no-preference' });
  const found = [...light.found, ...dark.found, ...more.found];
  console.log(`${name}: ${light.held} rules hold in light, ${dark.held} of colours in dark, ${more.held} with more contrast; ${found.length} places break one`);
  return found;
}

async function scanAll(page: Page, states: readonly State[]): Promise<void> {
  const found: string[] = [];
  for (const { name, open } of states) {
    await open(page);
    found.push(...(await scan(page, name)));
  }
  expect(found.join('\n\n')).toBe('');
}

test.use({ contextOptions: { reducedMotion: 'reduce' } });

test('The shelf, what it starts and reads, and the gallery are for every reader', async ({ page }) => {
  await scanAll(page, SHELF_STATES);
});

test('The bench and its sheets are for every reader', async ({ page }) => {
  await openDemo(page, 'Leg');
  await scanAll(page, BENCH_STATES);
});

test('A row, its menu, what is to be looked at, sizes, the maker and what is published are for every reader', async ({ page }) => {
  await openDemo(page, 'Heel');
  await scanAll(page, ROW_STATES);
});
