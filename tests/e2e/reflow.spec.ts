import { expect, test, type Page } from '@playwright/test';
import { openDemo } from './bench.ts';
import { unreadable } from './laidOut.ts';
import { BENCH_STATES, ROW_STATES, SHELF_STATES, type State } from './states.ts';

/*
 * Every page and sheet on the narrowest window (320 px: WCAG 2.2, 1.4.10), at 200 % zoom of a small laptop (720 × 450 px: 1.4.4) and with the spaces
 * between lines, letters, words and paragraphs that a reader may ask for (1.4.12): all words can be read, and nothing but a table scrolls sideways.
 */

const WIDE = { width: 1440, height: 900 };
const SPACED = '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-bottom: 2em !important; }';

/** Sets the spaces of text that a reader asks for, or takes them away. */
async function space(page: Page, isOn: boolean): Promise<void> {
  await page.evaluate(
    ([css, on]) => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(css);
      document.adoptedStyleSheets = on ? [sheet] : [];
    },
    [SPACED, isOn] as const,
  );
}

/** The page is laid out anew and has drawn itself. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

async function readAll(page: Page, states: readonly State[]): Promise<void> {
  const found: string[] = [];
  const look = async (name: string): Promise<void> => {
    await settled(page);
    found.push(...(await unreadable(page)).map((each) => `${name}: ${each}`));
  };
  for (const { name, open } of states) {
    await open(page);
    await space(page, true);
    await look(`${name}, spaced`);
    await page.setViewportSize({ width: 320, height: 640 });
    await look(`${name}, spaced, 320 px`);
    await space(page, false);
    await look(`${name}, 320 px`);
    await page.setViewportSize({ width: 720, height: 450 });
    await look(`${name}, 200 %`);
    await page.setViewportSize(WIDE);
  }
  expect(found.join('\n')).toBe('');
}

test.use({ viewport: WIDE, contextOptions: { reducedMotion: 'reduce' } });

test('All words of the shelf and the gallery can be read in a narrow window, magnified and spaced out', async ({ page }) => {
  await readAll(page, SHELF_STATES);
});

test('All words of the bench and its sheets can be read in a narrow window, magnified and spaced out', async ({ page }) => {
  await openDemo(page, 'Leg');
  await readAll(page, BENCH_STATES);
});

test('All words of rows, sizes, the maker and publishing can be read in a narrow window, magnified and spaced out', async ({ page }) => {
  await openDemo(page, 'Heel');
  await readAll(page, ROW_STATES);
});
