import { expect, test, type Locator, type Page } from '@playwright/test';
import { openDemo } from './bench.ts';
import { fingerDrag, fingerTap, foot, halves, large, mouseDrag, sheet, undo, within } from './colourworkBench.ts';

/** Lets something happen to an element with a picture file in its hands. */
async function giveFile(element: Locator, kind: 'drop' | 'paste', name: string, file: Buffer): Promise<void> {
  await element.evaluate(
    (target, { kind: how, name: called, base64 }) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const data = new DataTransfer();
      data.items.add(new File([bytes], called, { type: 'image/png' }));
      if (how === 'drop') {
        target.dispatchEvent(new DragEvent('dragover', { dataTransfer: data, bubbles: true, cancelable: true }));
        target.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
      } else target.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
    },
    { kind, name, base64: file.toString('base64') },
  );
}

async function openPicture(page: Page): Promise<Locator> {
  await openDemo(page, 'Leg');
  await foot(page).getByRole('button', { name: 'From a picture …' }).click();
  return sheet(page, 'From a picture');
}

test('a picture is dropped, cropped by mouse, then made a motif', async ({ page }) => {
  const from = await openPicture(page);
  await giveFile(from.getByRole('group', { name: 'Picture', exact: true }), 'drop', 'quay.png', halves(80, 80));
  await expect(from.getByRole('status')).toHaveText('32 stitches by 36 rows: 576 in A, 576 in B.');
  const area = from.getByRole('img', { name: 'The picture' });
  await mouseDrag(page, [await within(area, 0.02, 0.02), await within(area, 0.98, 0.48)]);
  await expect(from.getByRole('img', { name: 'The picture, cropped' })).toBeVisible();
  await expect(from.getByRole('status')).toContainText(/^32 stitches by 1\d rows: \d+ in B\.$/);
  await from.getByRole('slider', { name: 'Detail' }).press('End');
  await from.getByRole('combobox', { name: 'shades as' }).selectOption('ordered');
  await from.getByRole('checkbox', { name: 'clean lone stitches away' }).uncheck();
  await from.getByRole('button', { name: 'Make it a motif' }).click();
  await expect(undo(page)).toContainText('New motif quay');
});

test('a picture is pasted from the clipboard by keys, and a second one takes its place', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const from = await openPicture(page);
  await page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    await navigator.clipboard.write([new ClipboardItem({ 'image/png': new Blob([bytes], { type: 'image/png' }) })]);
  }, halves(60, 60).toString('base64'));
  await page.keyboard.press('Control+v');
  await expect(from.getByRole('status')).toHaveText('32 stitches by 36 rows: 576 in A, 576 in B.');
  await giveFile(page.locator('body'), 'paste', 'wide.png', halves(120, 60));
  await expect(from.getByText('32 stitches by 18 rows: 288 in A, 288 in B.')).toBeVisible();
  await from.getByRole('button', { name: 'Make it a motif' }).focus();
  await page.keyboard.press('Enter');
  await expect(sheet(page, 'wide')).toContainText('32 stitches by 18 rows');
});

test('reading a large picture says how far it is, stops when asked, and a smaller one is read after it', async ({ page }) => {
  const from = await openPicture(page);
  await giveFile(from.getByRole('group', { name: 'Picture', exact: true }), 'drop', 'harbour.png', large(10_000, 10_000));
  await expect(from.getByRole('progressbar')).toBeVisible();
  await from.getByRole('button', { name: 'Stop' }).click();
  await expect(from.getByRole('progressbar')).toBeHidden();
  await expect(from.getByRole('button', { name: 'Stop' })).toBeHidden();
  // What was stopped does not come after all.
  await page.waitForTimeout(1_500);
  await expect(from.getByRole('img', { name: 'The picture' })).toBeHidden();
  await page.locator('input[type=file]').setInputFiles({ name: 'quay.png', mimeType: 'image/png', buffer: halves(40, 40) });
  await expect(from.getByRole('status')).toHaveText('32 stitches by 36 rows: 576 in A, 576 in B.');
});

test('a picture with more pixels than are decoded is refused in words', async ({ page }) => {
  const from = await openPicture(page);
  await giveFile(from.getByRole('group', { name: 'Picture', exact: true }), 'drop', 'sea.png', large(20_000, 10_000));
  await expect(from.getByRole('alert')).toHaveText('sea.png has 20000 × 10000 pixels, 200 million; 120 million is the most.');
});

test.describe('by touch', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('a picture is chosen as a file, cropped by finger and made a motif', async ({ page }) => {
    await openDemo(page, 'Leg');
    await fingerTap(page, foot(page).getByRole('button', { name: 'From a picture …' }));
    const from = sheet(page, 'From a picture');
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), fingerTap(page, from.getByText('choose a file'))]);
    await chooser.setFiles({ name: 'quay.png', mimeType: 'image/png', buffer: halves(80, 80) });
    await expect(from.getByRole('status')).toHaveText('32 stitches by 36 rows: 576 in A, 576 in B.');
    const area = from.getByRole('img', { name: 'The picture' });
    await area.scrollIntoViewIfNeeded();
    await fingerDrag(page, [await within(area, 0.02, 0.55), await within(area, 0.95, 0.95)]);
    await expect(from.getByRole('status')).toContainText(/^32 stitches by 1\d rows: \d+ in A\.$/);
    await fingerTap(page, from.getByRole('button', { name: 'Make it a motif' }));
    await expect(sheet(page, 'quay')).toBeVisible();
  });
});
