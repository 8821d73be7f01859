import { expect, type Locator, type Page } from '@playwright/test';
import { chart, openDemo, rowOf } from './bench.ts';
import { foot, sheet } from './colourworkBench.ts';

/** A look of the app, and how it is come to from the one before it in its list, on a wide page. */
export interface State {
  readonly name: string;
  readonly open: (page: Page) => Promise<unknown>;
}

export const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) }).first();
const closeSheet = (page: Page) => button(page, 'Close the sheet').click();
const escape = (page: Page) => page.keyboard.press('Escape');

export const SHELF_STATES: readonly State[] = [
  { name: 'shelf, empty, with its lesson', open: async (page) => { await page.goto('/'); await button(page, 'Try Puffin Quay').waitFor(); } },
  { name: 'shelf, a pattern to start', open: (page) => button(page, /^Start a pattern/).click() },
  { name: 'shelf, a written pattern to read', open: (page) => button(page, /^Read a written pattern/).click() },
  {
    name: 'shelf, a written pattern read',
    open: async (page) => {
      await page.getByRole('group', { name: 'Written pattern' }).getByRole('textbox').first().fill('Ch 12.\nRow 1: sc in 2nd ch from hook and in each ch across. (11 sts)\nRow 2: ch 1, turn, sc in each st across. (12 sts)');
      await page.getByRole('table', { name: 'What was understood' }).waitFor();
    },
  },
  {
    name: 'shelf, with a pattern and one put away',
    open: async (page) => {
      await openDemo(page, 'Leg');
      await page.goto('/');
      await button(page, 'Put away Puffin Quay').click();
      await openDemo(page, 'Leg');
      await page.goto('/');
      await page.getByRole('article').first().waitFor();
    },
  },
  { name: 'gallery', open: async (page) => { await page.goto('/gallery'); await page.getByRole('heading', { level: 1 }).waitFor(); } },
];

/** Rows from the first in the list on: none stands half below its head, where a target would be found too small. */
const fromFirstRow = (page: Page) => page.locator('.rows').evaluate((list) => void (list.scrollTop = 0));

/** From the leg of the demo. */
export const BENCH_STATES: readonly State[] = [
  { name: 'bench', open: fromFirstRow },
  { name: 'bench, yarns of the rows', open: async (page) => { await button(page, 'yarns').click(); await fromFirstRow(page); } },
  { name: 'yarns', open: (page) => foot(page).getByRole('button', { name: 'Yarns …' }).click() },
  { name: 'what the yarns do', open: async (page) => { await closeSheet(page); await foot(page).getByRole('button', { name: 'What they do …' }).click(); } },
  { name: 'motif', open: async (page) => { await closeSheet(page); await foot(page).getByRole('button', { name: 'New motif …' }).click(); } },
  { name: 'picture', open: async (page) => { await closeSheet(page); await foot(page).getByRole('button', { name: 'From a picture …' }).click(); } },
  { name: 'versions', open: async (page) => { await closeSheet(page); await button(page, /^Versions/).click(); } },
  { name: 'solid', open: async (page) => { await closeSheet(page); await button(page, 'In the round …').click(); } },
  { name: 'placing', open: async (page) => { await closeSheet(page); await page.getByText('motifs are placed here').click(); await button(page, /^Adjust /).click(); } },
  { name: 'how it is drawn', open: async (page) => { await closeSheet(page); await button(page, 'How it is drawn').click(); } },
  { name: 'section as text', open: async (page) => { await button(page, 'How it is drawn').click(); await button(page, /as text/).click(); } },
  { name: 'keys', open: async (page) => { await escape(page); await button(page, 'Keys').click(); } },
  { name: 'take away', open: async (page) => { await escape(page); await button(page, 'Take away').click(); } },
  { name: 'find', open: async (page) => { await escape(page); await button(page, 'Find').click(); await page.getByRole('combobox').last().fill('heel'); } },
  { name: 'steps', open: async (page) => { await escape(page); await button(page, 'Steps').click(); } },
  { name: 'earlier', open: async (page) => { await escape(page); await page.goto(`${new URL(page.url()).pathname}${new URL(page.url()).search}#earlier`); await page.getByRole('dialog').or(sheet(page, /Earlier/)).first().waitFor(); } },
];

/** From the heel of the demo. */
export const ROW_STATES: readonly State[] = [
  { name: 'heel, a row in hand and chosen', open: async (page) => { await chart(page, 'Heel').focus(); await page.keyboard.press('ArrowLeft'); await rowOf(page, 'Row 4').getByRole('button', { name: 'Row 4', exact: true }).click(); } },
  { name: 'row menu', open: (page) => rowOf(page, 'Row 4').click({ button: 'right' }) },
  { name: 'row menu, a number asked for', open: async (page) => { await page.getByRole('menuitem', { name: 'Work it again …' }).click(); await page.getByRole('dialog').waitFor(); } },
  { name: 'row edited, with findings', open: async (page) => { await escape(page); await rowOf(page, 'Row 4').getByRole('button', { name: /^Edit the words/ }).click(); await page.getByRole('textbox', { name: 'Words of Row 4' }).fill('ch 1, turn, sc in next 99 sts, foo'); } },
  { name: 'sizes', open: async (page) => { await page.goto(`${new URL(page.url()).pathname}${new URL(page.url()).search}#sizes`); await page.getByRole('heading', { name: 'Swatch' }).waitFor(); } },
  { name: 'make along', open: async (page) => { await page.goto(`/make${new URL(page.url()).search}`); await page.getByRole('heading', { level: 1 }).waitFor(); } },
  { name: 'publish', open: async (page) => { await page.goto(`/publish${new URL(page.url()).search}`); await expect(page.getByRole('status').filter({ hasText: /^[1-9]\d? sheets$/ })).toBeVisible({ timeout: 20_000 }); } },
  { name: 'nothing on the bench', open: async (page) => { await page.goto('/work?pattern=none'); await page.getByRole('heading', { level: 1 }).waitFor(); } },
];
