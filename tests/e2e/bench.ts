import { expect, type Locator, type Page } from '@playwright/test';

/** Opens Puffin Quay from the shelf and goes to a section of it. */
export async function openDemo(page: Page, section: string): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Try Puffin Quay' }).click();
  await expect(page.getByRole('textbox', { name: 'Title of the pattern' })).toHaveValue('Puffin Quay');
  await goTo(page, section);
}

/** Goes to a section by the piece strip. */
export async function goTo(page: Page, section: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Piece' }).getByRole('button', { name: new RegExp(`^${section}`) }).click();
  await expect(chart(page, section)).toBeVisible();
}

export function chart(page: Page, section: string): Locator {
  return page.getByRole('application', { name: `${section} of` });
}

/** A row of ledger and words, by its name: "Row 12". */
export function rowOf(page: Page, name: string): Locator {
  return page.getByRole('table', { name: 'Ledger and words' }).getByRole('row', { name: new RegExp(`^${name}\\b`) });
}

/** Waits until the page says that everything is kept. */
export async function kept(page: Page): Promise<void> {
  await expect(page.getByRole('status').filter({ hasText: /Kept on this device/ })).toBeVisible();
  await page.waitForTimeout(500);
}

/** Presses a key so often with the chart in focus. */
export async function walk(page: Page, section: string, keys: readonly (readonly [key: string, times: number])[]): Promise<void> {
  await chart(page, section).focus();
  for (const [key, times] of keys) for (let i = 0; i < times; i++) await page.keyboard.press(key);
}
