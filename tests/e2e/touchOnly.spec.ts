import { expect, test, type Page } from '@playwright/test';
import { chart } from './bench.ts';
import { fingerDrag, fingerTap, fingersMove, foot, undo, within } from './colourworkBench.ts';

/* The bench on a phone, by fingers alone. */

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, contextOptions: { reducedMotion: 'reduce' } });

/** Where the drawing lies on the screen. */
async function drawn(page: Page): Promise<{ readonly x: number; readonly width: number }> {
  const box = await chart(page, 'Leg').locator('.extent').first().boundingBox();
  return { x: box!.x, width: box!.width };
}

/** What is to be tapped and is less than 44 px high. */
function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, a.button, select, summary, [role="button"]')]
      .filter((each) => each.checkVisibility() && !each.closest('.unseen'))
      .map((each) => ({ says: (each.getAttribute('aria-label') ?? each.textContent ?? '').trim().slice(0, 40), box: each.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 1 && box.height < 43.5)
      .map(({ says, box }) => `${says}: ${box.height.toFixed(0)} px high`),
  );
}

async function tapDemo(page: Page): Promise<void> {
  await page.goto('/');
  await fingerTap(page, page.getByRole('button', { name: 'Try Puffin Quay' }));
  await fingerTap(page, page.getByRole('navigation', { name: 'Piece' }).getByRole('button', { name: /^Leg/ }));
  await expect(chart(page, 'Leg')).toBeVisible();
  await chart(page, 'Leg').scrollIntoViewIfNeeded();
}

test('A finger does what is chosen, a long press opens the row menu, and the readings are a tap away', async ({ page }) => {
  await tapDemo(page);
  await fingerTap(page, foot(page).getByRole('button', { name: 'C lamp orange' }));
  await chart(page, 'Leg').scrollIntoViewIfNeeded();
  await fingerDrag(page, [await within(chart(page, 'Leg'), 0.4, 0.45), await within(chart(page, 'Leg'), 0.6, 0.45)]);
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Lay C lamp orange on \d+/);
  await fingerTap(page, undo(page));
  await expect(undo(page)).toBeDisabled();

  await chart(page, 'Leg').scrollIntoViewIfNeeded();
  await fingerDrag(page, [await within(chart(page, 'Leg'), 0.5, 0.5)], 700);
  const menu = page.getByRole('menu', { name: /^Row \d+/ });
  await expect(menu).toBeVisible();
  expect((await menu.getByRole('menuitem').first().boundingBox())!.height).toBeGreaterThanOrEqual(44);
  await fingerTap(page, menu.getByRole('menuitem', { name: /^Copy/ }).first());
  await expect(menu).toHaveCount(0);
  await expect(undo(page)).toBeDisabled();

  await fingerTap(page, page.getByRole('group', { name: 'Reading shown' }).getByRole('button', { name: 'words' }));
  await expect(page.getByRole('table', { name: 'Ledger and words' })).toBeVisible();
  await expect(chart(page, 'Leg')).toBeHidden();
  expect(await smallTargets(page)).toEqual([]);
  await fingerTap(page, page.getByRole('group', { name: 'Reading shown' }).getByRole('button', { name: 'ledger' }));
  expect(await smallTargets(page)).toEqual([]);
});

test('Two fingers push the chart and pinch it, and lay nothing', async ({ page }) => {
  await tapDemo(page);
  await fingerTap(page, foot(page).getByRole('button', { name: 'C lamp orange' }));
  await chart(page, 'Leg').scrollIntoViewIfNeeded();
  const [left, right] = [await within(chart(page, 'Leg'), 0.4, 0.5), await within(chart(page, 'Leg'), 0.6, 0.5)];
  const before = await drawn(page);
  await fingersMove(page, [left, right], [{ x: left.x - 60, y: left.y }, { x: right.x + 60, y: right.y }]);
  await expect.poll(async () => (await drawn(page)).width).toBeGreaterThan(before.width * 1.5);
  const near = await drawn(page);
  await fingersMove(page, [left, right], [{ x: left.x + 50, y: left.y }, { x: right.x + 50, y: right.y }]);
  await expect.poll(async () => Math.abs((await drawn(page)).x - near.x)).toBeGreaterThan(30);
  expect(Math.abs((await drawn(page)).width - near.width)).toBeLessThan(near.width * 0.02);
  await expect(undo(page)).toBeDisabled();
});

test('Every target of the bench and of the maker is large enough for a finger, and no page is wider than the phone', async ({ page }) => {
  await tapDemo(page);
  const search = new URL(page.url()).search;
  for (const path of [`/work${search}`, `/work${search}#sizes`, `/make${search}`, `/publish${search}`, '/gallery', '/']) {
    await page.goto(path);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.waitForTimeout(300);
    expect.soft(await smallTargets(page), path).toEqual([]);
    expect.soft(await page.evaluate(() => document.documentElement.scrollWidth), path).toBe(390);
  }
});
