import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test, type Locator, type Page } from '@playwright/test';
import { kept, openDemo } from './bench.ts';

const title = (page: Page): Locator => page.getByRole('textbox', { name: 'Title of the pattern' });

async function rename(page: Page, name: string): Promise<void> {
  await title(page).fill(name);
  await title(page).press('Enter');
}

const saysKept = (page: Page) => expect(page.getByRole('status').filter({ hasText: /^Kept on this device/ })).toBeVisible();

/** What the browser does with the next transactions that write: it refuses them so, until it is told otherwise. */
async function breakStorage(page: Page, how: 'full' | 'aborted' | null): Promise<void> {
  await page.evaluate((kind) => {
    const world = window as unknown as { brokenStorage: string | null; hasBreakableStorage?: boolean };
    world.brokenStorage = kind;
    if (world.hasBreakableStorage) return;
    world.hasBreakableStorage = true;
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (value: unknown, key?: IDBValidKey) {
      if (world.brokenStorage === 'full') throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
      const request = put.call(this, value, key);
      if (world.brokenStorage === 'aborted') this.transaction.abort();
      return request;
    };
  }, how);
}

test.describe('storage that fails', () => {
  for (const [how, words] of [['full', /The storage of this device is full/], ['aborted', /could not keep it|stopped the keeping midway/]] as const) {
    test(`is said plainly (${how}), work goes on, a file is offered, and it catches up`, async ({ page }) => {
      await openDemo(page, 'Leg');
      await kept(page);
      await breakStorage(page, how);
      await rename(page, 'Kept by hand');
      const alert = page.getByRole('alert').filter({ hasText: /This device has the pattern as it was at/ });
      await expect(alert).toContainText(words);
      await expect(alert).toContainText(/What you changed since .* is only in this window/);
      await expect(page.getByRole('status').filter({ hasText: /^Not kept since/ })).toBeVisible();
      await rename(page, 'Still at work');
      await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
      const download = page.waitForEvent('download');
      await alert.getByRole('button', { name: 'Save as a file' }).click();
      const file = await download;
      expect(file.suggestedFilename()).toBe('still-at-work.turnwork.json');
      expect(readFileSync(await file.path(), 'utf8')).toContain('"title": "Still at work"');
      await breakStorage(page, null);
      await saysKept(page);
      await expect(alert).toBeHidden();
      await page.reload();
      await expect(title(page)).toHaveValue('Still at work');
      await page.keyboard.press('Control+z');
      await expect(title(page)).toHaveValue('Kept by hand');
    });
  }

  test('that is blocked lets a pattern be worked on all the same', async ({ page }) => {
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('The operation is insecure.', 'SecurityError');
      };
    });
    await page.goto('/');
    await expect(page.getByRole('alert')).toContainText('does not let the page keep anything');
    await page.getByRole('button', { name: 'Try Puffin Quay' }).click();
    await rename(page, 'Only here');
    await expect(page.getByRole('alert')).toContainText('Nothing of this pattern is kept on this device: it is only in this window.');
    await expect(title(page)).toHaveValue('Only here');
  });

  test('that was cleared meanwhile is filled again, and that is said', async ({ page }) => {
    await openDemo(page, 'Leg');
    await kept(page);
    await page.evaluate(
      () => new Promise<void>((resolve, reject) => {
        const request = indexedDB.deleteDatabase('turnwork');
        request.onsuccess = () => resolve();
        request.onerror = () => reject(request.error ?? new Error('not deleted'));
      }),
    );
    await rename(page, 'Kept again');
    await expect(page.getByRole('alert')).toContainText('The browser had cleared what was kept on this device.');
    await saysKept(page);
    await page.reload();
    await expect(title(page)).toHaveValue('Kept again');
  });
});

test.describe('two windows on one pattern', () => {
  test('one writes, the other follows; the pen goes over when it is asked for; nothing is overwritten', async ({ page, context }) => {
    await openDemo(page, 'Leg');
    await kept(page);
    const other = await context.newPage();
    await other.goto(page.url());
    await expect(other.getByText('Another window works on this pattern.')).toBeVisible();
    await rename(page, 'From the first');
    await expect(title(other)).toHaveValue('From the first');
    await rename(other, 'Not so');
    await expect(other.getByRole('alert')).toContainText('this one only shows it');
    await saysKept(page);
    await expect(title(page)).toHaveValue('From the first');
    await other.reload();

    await other.getByRole('button', { name: 'Work on here' }).click();
    await saysKept(other);
    await expect(page.getByText('Another window works on this pattern.')).toBeVisible();
    await rename(other, 'From the second');
    await expect(title(page)).toHaveValue('From the second');

    // Back and forth while both work: every title that was taken is a step of the one history.
    for (let i = 0; i < 4; i++) {
      const here = i % 2 === 0 ? page : other;
      await here.getByRole('button', { name: 'Work on here' }).click();
      await expect(here.getByText('Another window works on this pattern.')).toBeHidden();
      // While the pattern is taken over nothing can be changed; the title is then as it was.
      await expect(async () => {
        await rename(here, `Turn ${i}`);
        await expect(title(here)).toHaveValue(`Turn ${i}`, { timeout: 200 });
      }).toPass();
      await saysKept(here);
    }
    await expect(title(page)).toHaveValue('Turn 3');
    await other.close();
    await expect(page.getByText('Another window works on this pattern.')).toBeHidden();
    for (const before of ['Turn 2', 'Turn 1', 'Turn 0', 'From the second', 'From the first', 'Puffin Quay']) {
      await page.getByRole('button', { name: /^Undo/ }).click();
      await expect(title(page)).toHaveValue(before);
    }
  });
});

test.describe('earlier versions', () => {
  test('are kept of each sitting and by name, gone back to as a step, and opened as copies', async ({ page }) => {
    await openDemo(page, 'Leg');
    await kept(page);
    await rename(page, 'First sitting');
    await saysKept(page);
    await page.reload();
    await rename(page, 'Second sitting');
    await saysKept(page);
    await page.getByRole('link', { name: 'Shelf' }).click();
    await page.getByRole('link', { name: /^Second sitting/ }).click();
    await page.getByRole('link', { name: 'Earlier' }).click();
    const sheet = page.getByRole('dialog', { name: 'Earlier' });
    const versions = sheet.getByRole('list', { name: 'Earlier versions' }).getByRole('listitem');
    await expect(versions).toHaveCount(1);
    await expect(versions.first()).toContainText('Changed after it: title changed');
    await sheet.getByRole('textbox').fill('Before the new heel');
    await sheet.getByRole('button', { name: 'Keep it so' }).click();
    await expect(versions).toHaveCount(2);
    await expect(versions.first()).toContainText('Before the new heel');
    await versions.last().getByRole('button', { name: 'Go back to it' }).click();
    await expect(sheet).toBeHidden();
    await expect(title(page)).toHaveValue('First sitting');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect(title(page)).toHaveValue('Second sitting');
    await page.getByRole('link', { name: 'Earlier' }).click();
    await versions.last().getByRole('button', { name: 'Open as a copy' }).click();
    await expect(title(page)).toHaveValue('First sitting, earlier');
  });
});

test('saving as a file writes to the same file again', async ({ page }) => {
  // A file of the page's own, such as the picker gives: the same API without the dialogue.
  await page.addInitScript(() => {
    const world = window as unknown as { asked: number; showSaveFilePicker: (options: { suggestedName: string }) => Promise<FileSystemFileHandle> };
    world.asked = 0;
    world.showSaveFilePicker = async ({ suggestedName }) => {
      world.asked++;
      return (await navigator.storage.getDirectory()).getFileHandle(suggestedName, { create: true });
    };
  });
  await openDemo(page, 'Leg');
  await kept(page);
  const content = () => page.evaluate(async () => (await (await (await navigator.storage.getDirectory()).getFileHandle('puffin-quay.turnwork.json')).getFile()).text());
  await page.keyboard.press('Control+s');
  await expect(page.getByText(/Saved to puffin-quay\.turnwork\.json/)).toBeVisible();
  expect(await content()).toContain('"title": "Puffin Quay"');
  await rename(page, 'Another name');
  await saysKept(page);
  await page.reload();
  await expect(title(page)).toHaveValue('Another name');
  await page.keyboard.press('Control+s');
  await expect(page.getByText(/Saved to puffin-quay\.turnwork\.json/)).toBeVisible();
  expect(await content()).toContain('"title": "Another name"');
  expect(await page.evaluate(() => (window as unknown as { asked: number }).asked)).toBe(0);
});

test('the shelf puts away and brings back, saves itself as one file, and takes it in again without overwriting', async ({ page }, info) => {
  await openDemo(page, 'Leg');
  await kept(page);
  await page.getByRole('link', { name: 'Earlier' }).click();
  await page.getByRole('textbox', { name: 'Name for how it stands now' }).fill('Before the shelf');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Before the shelf' })).toBeVisible();
  await page.goto('/');
  await page.getByRole('button', { name: 'Put away Puffin Quay' }).click();
  await expect(page.getByText('“Puffin Quay” is put away.')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'An empty shelf' })).toBeVisible();
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await expect(page.getByRole('heading', { name: 'On the shelf' })).toBeVisible();

  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the whole shelf as one file' }).click();
  const archive = info.outputPath('shelf.zip');
  await (await download).saveAs(archive);
  await expect(page.getByText('1 pattern and 1 earlier version saved in one file.')).toBeVisible();
  const restore = async () => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Bring a saved shelf back' }).click();
    await (await chooser).setFiles(archive);
  };
  await restore();
  await expect(page.getByText('1 pattern on the shelf already, just the same.')).toBeVisible();
  // Changed since: what was saved comes back beside it.
  await page.getByRole('link', { name: /Puffin Quay/ }).first().click();
  await rename(page, 'Grown since');
  await saysKept(page);
  await page.goto('/');
  await restore();
  await expect(page.getByText('1 pattern brought back as a copy, because the shelf has it in another state; 1 earlier version brought back.')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Puffin Quay, restored' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Grown since' })).toBeVisible();

  // Gone for good only when it is asked twice; the backup still has it.
  await page.getByRole('button', { name: 'Put away Grown since' }).click();
  await page.getByText('Put away (1)').click();
  await page.getByRole('button', { name: 'Remove Grown since for good' }).click();
  await page.getByRole('button', { name: 'Remove it' }).click();
  await expect(page.getByText('Put away (1)')).toBeHidden();
  await restore();
  await expect(page.getByText('1 pattern brought back; 1 earlier version brought back.')).toBeVisible();
  await page.getByRole('link', { name: /Puffin Quay/ }).first().click();
  await page.getByRole('link', { name: 'Earlier' }).click();
  await expect(page.getByRole('heading', { name: 'Before the shelf' })).toBeVisible();
  await page.goto('/');
  writeFileSync(archive, readFileSync(archive).subarray(0, 2_000));
  await restore();
  await expect(page.getByRole('alert')).toContainText('it is no sound archive: it is cut off or damaged.');
});
