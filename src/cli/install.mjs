// Installs the packages of the lock file when they are missing or older than it. Plain Node, because it runs before them.
import { existsSync, statSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const lock = join(root, 'package-lock.json');
const installed = join(root, 'node_modules', '.package-lock.json');

if (!existsSync(installed) || statSync(installed).mtimeMs < statSync(lock).mtimeMs) {
  console.log('Installing packages (npm ci) …');
  const run = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (run.status !== 0) {
    console.error('npm ci did not succeed; see its message above.');
    process.exit(run.status ?? 1);
  }
}
