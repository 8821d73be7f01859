import { defineConfig } from '@playwright/test';
import { BROWSER_FLAGS, findBrowser } from '../setup/findBrowser.mjs';

const browser = findBrowser();
const port = 4187;

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  timeout: 60_000,
  fullyParallel: false,
  workers: 1,
  retries: process.env['CI'] ? 1 : 0,
  use: {
    baseURL: `http://localhost:${port}`,
    viewport: { width: 1440, height: 900 },
    launchOptions: {
      args: BROWSER_FLAGS.filter((flag) => flag !== '--headless'),
      ...(browser?.path ? { executablePath: browser.path } : {}),
    },
    screenshot: 'only-on-failure',
  },
  webServer: {
    command: `npx vite preview --host localhost --port ${port} --strictPort`,
    cwd: '../..',
    url: `http://localhost:${port}/`,
    reuseExistingServer: !process.env['CI'],
    timeout: 60_000,
  },
});
