// A browser for the tests, tried in this order: the one named in TURNWORK_BROWSER, the system's Chromium, Debian's package
// when run as root there, playwright's own.
import { existsSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { chromium } from '@playwright/test';

const SYSTEM = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome', '/Applications/Chromium.app/Contents/MacOS/Chromium'];

/** Flags under which Chromium starts as root, without a graphics card and without calling home. */
export const BROWSER_FLAGS = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** `{ path }` of a browser (null: playwright's own), or null when there is none. */
export function findBrowser({ install = false } = {}) {
  const named = process.env.TURNWORK_BROWSER;
  if (named) {
    if (existsSync(named)) return { path: named };
    console.error(`TURNWORK_BROWSER names ${named}, which is not there.`);
  }
  const system = SYSTEM.find((path) => existsSync(path));
  if (system) return { path: system };
  if (existsSync(chromium.executablePath())) return { path: null };
  if (!install) return null;
  if (existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    console.log('Installing Chromium from Debian …');
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit' });
    spawnSync('apt-get', ['install', '-y', '-qq', 'chromium'], { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
    const installed = SYSTEM.find((path) => existsSync(path));
    if (installed) return { path: installed };
  }
  console.log('Installing a browser with playwright …');
  spawnSync('npx', ['playwright', 'install', 'chromium'], { stdio: 'inherit', shell: process.platform === 'win32' });
  return existsSync(chromium.executablePath()) ? { path: null } : null;
}
