import { expect, test, type Page } from '@playwright/test';
import axe from 'axe-core';
import { chart, openDemo, rowOf } from './bench.ts';
import { foot, sheet } from './colourworkBench.ts';

/*
 * Every page and every sheet by the rules of WCAG 2.2 A and AA and the common practices that axe knows. What depends on colours is looked at in
 * dark too, and where more contrast is wished for.
 */

interface State {
  readonly name: string;
  readonly open: (page: Page) => Promise<unknown>;
}

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

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) }).first();
const closeSheet = (page: Page) => button(page, 'Close the sheet').click();
const escape = (page: Page) => page.keyboard.press('Escape');

test.use({ contextOptions: { reducedMotion: 'reduce' } });

test('The shelf, what it starts and reads, and the gallery are for every reader', async ({ page }) => {
  await scanAll(page, [
    { name: 'shelf, empty, with its lesson', open: async () => { await page.goto('/'); await button(page, 'Try Puffin Quay').waitFor(); } },
    { name: 'shelf, a pattern to start', open: () => button(page, /^Start a pattern/).click() },
    { name: 'shelf, a written pattern to read', open: () => button(page, /^Read a written pattern/).click() },
    {
      name: 'shelf, a written pattern read',
      open: async () => {
        await page.getByRole('group', { name: 'Written pattern' }).getByRole('textbox').first().fill('Ch 12.\nRow 1: sc in 2nd ch from hook and in each ch across. (11 sts)\nRow 2: ch 1, turn, sc in each st across. (12 sts)');
        await page.getByRole('table', { name: 'What was understood' }).waitFor();
      },
    },
    {
      name: 'shelf, with a pattern and one put away',
      open: async () => {
        await openDemo(page, 'Leg');
        await page.goto('/');
        await button(page, 'Put away Puffin Quay').click();
        await openDemo(page, 'Leg');
        await page.goto('/');
        await page.getByRole('article').first().waitFor();
      },
    },
    { name: 'gallery', open: async () => { await page.goto('/gallery'); await page.getByRole('heading', { level: 1 }).waitFor(); } },
  ]);
});

test('The bench and its sheets are for every reader', async ({ page }) => {
  await openDemo(page, 'Leg');
  await scanAll(page, [
    { name: 'bench', open: async () => {} },
    { name: 'bench, yarns of the rows', open: () => button(page, 'yarns').click() },
    { name: 'yarns', open: () => foot(page).getByRole('button', { name: 'Yarns …' }).click() },
    { name: 'what the yarns do', open: async () => { await closeSheet(page); await foot(page).getByRole('button', { name: 'What they do …' }).click(); } },
    { name: 'motif', open: async () => { await closeSheet(page); await foot(page).getByRole('button', { name: 'New motif …' }).click(); } },
    { name: 'picture', open: async () => { await closeSheet(page); await foot(page).getByRole('button', { name: 'From a picture …' }).click(); } },
    { name: 'versions', open: async () => { await closeSheet(page); await button(page, /^Versions/).click(); } },
    { name: 'solid', open: async () => { await closeSheet(page); await button(page, 'In the round …').click(); } },
    { name: 'placing', open: async () => { await closeSheet(page); await page.getByText('motifs are placed here').click(); await button(page, /^Adjust /).click(); } },
    { name: 'how it is drawn', open: async () => { await closeSheet(page); await button(page, 'How it is drawn').click(); } },
    { name: 'section as text', open: async () => { await button(page, 'How it is drawn').click(); await button(page, /as text/).click(); } },
    { name: 'keys', open: async () => { await escape(page); await button(page, 'Keys').click(); } },
    { name: 'take away', open: async () => { await escape(page); await button(page, 'Take away').click(); } },
    { name: 'find', open: async () => { await escape(page); await button(page, 'Find').click(); await page.getByRole('combobox').last().fill('heel'); } },
    { name: 'steps', open: async () => { await escape(page); await button(page, 'Steps').click(); } },
    { name: 'earlier', open: async () => { await escape(page); await page.goto(`${new URL(page.url()).pathname}${new URL(page.url()).search}#earlier`); await page.getByRole('dialog').or(sheet(page, /Earlier/)).first().waitFor(); } },
  ]);
});

test('A row, its menu, what is to be looked at, sizes, the maker and what is published are for every reader', async ({ page }) => {
  await openDemo(page, 'Heel');
  await scanAll(page, [
    { name: 'heel, a row in hand and chosen', open: async () => { await chart(page, 'Heel').focus(); await page.keyboard.press('ArrowLeft'); await rowOf(page, 'Row 4').getByRole('button', { name: 'Row 4', exact: true }).click(); } },
    { name: 'row menu', open: () => rowOf(page, 'Row 4').click({ button: 'right' }) },
    { name: 'row edited, with findings', open: async () => { await escape(page); await rowOf(page, 'Row 4').getByRole('button', { name: /^Edit the words/ }).click(); await page.getByRole('textbox', { name: 'Words of Row 4' }).fill('ch 1, turn, sc in next 99 sts, foo'); } },
    { name: 'sizes', open: async () => { await page.goto(`${new URL(page.url()).pathname}${new URL(page.url()).search}#sizes`); await page.getByRole('heading', { name: 'Swatch' }).waitFor(); } },
    { name: 'make along', open: async () => { await page.goto(`/make${new URL(page.url()).search}`); await page.getByRole('heading', { level: 1 }).waitFor(); } },
    { name: 'publish', open: async () => { await page.goto(`/publish${new URL(page.url()).search}`); await expect(page.getByRole('status').filter({ hasText: /^\d\d? sheets$/ })).toBeVisible({ timeout: 20_000 }); } },
    { name: 'nothing on the bench', open: async () => { await page.goto('/work?pattern=none'); await page.getByRole('heading', { level: 1 }).waitFor(); } },
  ]);
});
