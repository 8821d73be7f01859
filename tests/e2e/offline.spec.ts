import { expect, test } from '@playwright/test';
import { preview } from 'vite';

test('The whole app works when the server has gone', async ({ browser }) => {
  const server = await preview({ preview: { host: 'localhost', port: 0, open: false }, logLevel: 'silent' });
  const url = server.resolvedUrls!.local[0]!;
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto(url);
  await page.getByRole('button', { name: 'Try Puffin Quay' }).click();
  await expect(page.getByRole('textbox', { name: 'Title of the pattern' })).toHaveValue('Puffin Quay');
  await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state === 'activated' || new Promise<void>((done) => navigator.serviceWorker.addEventListener('controllerchange', () => done())));
  await server.close();

  const id = new URL(page.url()).search;
  await page.goto(`${url}make${id}`);
  await page.getByRole('button', { name: 'Next row' }).click();
  await page.getByRole('button', { name: 'Next run' }).click();
  await expect(page.getByText('Row 1', { exact: false }).first()).toBeVisible();
  // Publishing asks for fonts that this page has not seen before.
  await page.goto(`${url}publish${id}`);
  await expect(page.getByRole('region', { name: 'The sheets as they will print' }).getByRole('status')).toHaveText(/^[1-9]\d? sheets$/, { timeout: 20_000 });
  const [pdf] = await Promise.all([page.waitForEvent('download', { timeout: 40_000 }), page.getByRole('button', { name: 'PDF', exact: true }).click()]);
  expect(pdf.suggestedFilename()).toBe('puffin-quay.pdf');
  await page.goto(url);
  await expect(page.getByRole('heading', { name: 'Puffin Quay' })).toBeVisible();
  await page.getByRole('link', { name: /Puffin Quay/ }).first().click();
  await expect(page.getByRole('application', { name: /Leg of Puffin Quay/ })).toBeVisible();
  await page.goto(`${url}work${id}#sizes`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.goto(`${url}gallery`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await context.close();
});

test('Nothing is asked of any other address, and no script runs that the page does not name', async ({ page, baseURL }) => {
  const asked: string[] = [];
  const refused: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('console', (message) => message.type() === 'error' && refused.push(message.text()));
  await page.goto('/');
  await page.getByRole('button', { name: 'Try Puffin Quay' }).click();
  await expect(page.getByRole('application', { name: /Leg of Puffin Quay/ })).toBeVisible();
  expect(asked.filter((url) => !url.startsWith(baseURL!) && !/^(data|blob):/.test(url))).toEqual([]);
  expect(refused).toEqual([]);

  const ran = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.ranInline = true';
    document.head.append(script);
    const image = document.createElement('img');
    image.setAttribute('onerror', 'window.ranInline = true');
    image.src = 'data:image/png;base64,';
    document.body.append(image);
    return new Promise((done) => setTimeout(() => done('ranInline' in window), 200));
  });
  expect(ran).toBe(false);
});
