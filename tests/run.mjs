// The whole check, on a fresh clone too: packages, a browser, types, lint, unit/property/sample tests, build, browser tests.
// Prints the counts and ends with one line "N passed, N failed".
import { spawnSync } from 'node:child_process';
import { readFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const out = mkdtempSync(join(tmpdir(), 'turnwork-test-'));
const steps = [];
let passed = 0;
let failed = 0;
let skipped = 0;

function run(name, command, args, env = {}) {
  const started = Date.now();
  console.log(`\n— ${name}`);
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, FORCE_COLOR: '0', ...env }, shell: process.platform === 'win32' });
  const ok = status === 0;
  steps.push({ name, ok, seconds: (Date.now() - started) / 1000 });
  return ok;
}

function finish() {
  rmSync(out, { recursive: true, force: true });
  console.log('');
  for (const step of steps) console.log(`${step.ok ? 'ok  ' : 'FAIL'} ${step.name} (${step.seconds.toFixed(1)} s)`);
  console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
  process.exit(failed > 0 ? 1 : 0);
}

/** A check that is one thing: it passes or it doesn't. */
function check(name, args) {
  if (run(name, 'npm', ['run', '-s', ...args])) passed++;
  else failed++;
}

/** Known weaknesses of packages, high or worse, where the registry tells of them; where it doesn't, that is said and is no failure. */
function audit() {
  const { stdout } = spawnSync('npm', ['audit', '--audit-level=high', '--json'], { cwd: root, encoding: 'utf8', shell: process.platform === 'win32' });
  let report = null;
  try {
    report = JSON.parse(stdout);
  } catch {
    // No answer that can be read.
  }
  const found = report?.metadata?.vulnerabilities;
  console.log('\n— audit of packages');
  if (!found) return console.log('The registry gave no audit, so this was not looked at.');
  console.log(`high ${found.high}, critical ${found.critical}`);
  const ok = found.high + found.critical === 0;
  steps.push({ name: 'audit of packages', ok, seconds: 0 });
  if (ok) passed++;
  else failed++;
}

if (!run('packages', process.execPath, ['src/cli/install.mjs'])) {
  failed++;
  finish();
}
audit();
check('types: engine', ['check:engine']);
check('types: command line and tests', ['check:cli']);
check('types: app', ['check:app']);
check('lint', ['lint']);

const unitFile = join(out, 'unit.json');
// What tests expect of figures is written with a point.
const unitRan = run('unit, property and sample tests', 'npx', ['vitest', 'run', '--reporter=dot', '--reporter=json', `--outputFile.json=${unitFile}`], { LC_ALL: 'en_GB.UTF-8' });
try {
  const unit = JSON.parse(readFileSync(unitFile, 'utf8'));
  console.log(`unit, property and sample tests: ${unit.numPassedTests} passed, ${unit.numFailedTests} failed, in ${unit.numTotalTestSuites} groups`);
  passed += unit.numPassedTests;
  // A run that failed without a failed test did so in loading or at the end.
  failed += unit.numFailedTests || (unitRan ? 0 : 1);
  skipped += unit.numPendingTests;
} catch (error) {
  console.error(`no report of the unit tests: ${error.message}`);
  failed++;
}

if (run('build', 'npm', ['run', '-s', 'build'])) {
  passed++;
  const { findBrowser } = await import('./setup/findBrowser.mjs');
  const browser = findBrowser({ install: true });
  if (browser === null) {
    console.error('No browser was found and none could be installed. Name one in TURNWORK_BROWSER.');
    failed++;
  } else {
    const e2eFile = join(out, 'e2e.json');
    run('browser tests', 'npx', ['playwright', 'test', '-c', 'tests/e2e/playwright.config.ts', '--reporter=list,json'], { PLAYWRIGHT_JSON_OUTPUT_NAME: e2eFile, TURNWORK_BROWSER: browser.path ?? '' });
    try {
      const { stats } = JSON.parse(readFileSync(e2eFile, 'utf8'));
      passed += stats.expected + stats.flaky;
      failed += stats.unexpected;
      skipped += stats.skipped;
      console.log(`browser tests: ${stats.expected} passed, ${stats.unexpected} failed, ${stats.flaky} only at the second try`);
      if (stats.expected === 0) failed++;
    } catch (error) {
      console.error(`no report of the browser tests: ${error.message}`);
      failed++;
    }
  }
} else failed++;

finish();
