import { spawn } from 'node:child_process';
import { chromium, expect, type Browser, type Page } from '@playwright/test';
import { BROWSER_FLAGS, findBrowser } from '../setup/findBrowser.mjs';

/** A browser of its own that keeps what it keeps in a folder, and that can be killed without a word. */
export interface Killable {
  readonly page: Page;
  /** Ends the browser with all its processes at once (SIGKILL): nothing of it has time to write. */
  kill(): Promise<void>;
}

/** Starts a browser over a folder; the same folder again is the same device after a crash. */
export async function startKillable(folder: string): Promise<Killable> {
  const path = findBrowser()?.path ?? chromium.executablePath();
  const child = spawn(path, [...BROWSER_FLAGS, `--user-data-dir=${folder}`, '--remote-debugging-port=0', '--no-default-browser-check', '--disable-extensions', '--disable-features=Translate', 'about:blank'], { detached: true, stdio: ['ignore', 'ignore', 'pipe'] });
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stderr.on('data', (data: Buffer) => {
      said += data.toString();
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found) resolve(found);
    });
    child.once('exit', () => reject(new Error(`the browser did not start: ${said}`)));
  });
  const browser: Browser = await chromium.connectOverCDP(address);
  const context = browser.contexts()[0]!;
  return {
    page: context.pages()[0] ?? (await context.newPage()),
    async kill() {
      // The group that was started here, by its id.
      process.kill(-child.pid!, 'SIGKILL');
      await gone;
    },
  };
}

/** What the bench shows of a pattern and its history. */
export interface Shown {
  readonly title: string;
  readonly undo: string | null;
  readonly redo: string | null;
}

/** One act of a run: another title, undo or redo; what the bench shows after it, and the wait before it. */
export interface Act {
  readonly kind: 'title' | 'undo' | 'redo';
  readonly title: string;
  readonly shown: Shown;
  readonly waitMs: number;
}

/** Acts of a run from a state on, with what the bench must show after each: worked out apart from the app. */
export function plannedActs(start: Steps, draw: () => number, count: number, name: string): readonly { readonly act: Act; readonly steps: Steps }[] {
  let steps = start;
  return Array.from({ length: count }, (_, i) => {
    const chance = draw();
    const kind = chance < 0.2 && steps.past.length > 1 ? 'undo' : chance < 0.3 && steps.future.length > 0 ? 'redo' : 'title';
    const title = `${name} ${i}`;
    if (kind === 'title') steps = { past: [...steps.past, title], future: [] };
    else if (kind === 'undo') steps = { past: steps.past.slice(0, -1), future: [steps.past.at(-1)!, ...steps.future] };
    else steps = { past: [...steps.past, steps.future[0]!], future: steps.future.slice(1) };
    return { act: { kind, title, shown: shownOf(steps), waitMs: Math.floor(draw() * draw() * 160) }, steps };
  });
}

/** Titles as they were given, and those that were taken back. `past[0]` is the title at the start, which no step gave. */
export interface Steps {
  readonly past: readonly string[];
  readonly future: readonly string[];
}

export function shownOf({ past, future }: Steps): Shown {
  return { title: past.at(-1)!, undo: past.length > 1 ? `Rename to ${past.at(-1)}` : null, redo: future[0] === undefined ? null : `Rename to ${future[0]}` };
}

/** What the bench shows now. */
export async function shownOn(page: Page): Promise<Shown> {
  const field = page.getByRole('textbox', { name: 'Title of the pattern' });
  await expect(field).toBeVisible();
  return field.evaluate((title: HTMLInputElement) => {
    const step = (name: string) => [...document.querySelectorAll('header button')].find((button) => button.textContent?.trim().startsWith(name))?.querySelector('.step')?.textContent ?? null;
    return { title: title.value, undo: step('Undo'), redo: step('Redo') };
  });
}

/** What a page told of a run: acts that were made with their time, the last act that was said to be kept, and how late its timers were. */
export interface Told {
  readonly madeAt: number[];
  keptUpTo: number;
  lateMs: number;
}

/** Starts acts on the bench in the page itself, one after another; `told` fills as they are made. */
export async function startActs(page: Page, acts: readonly Act[]): Promise<Told> {
  const told: Told = { madeAt: [], keptUpTo: -1, lateMs: 0 };
  await page.exposeFunction('tellRun', (kind: 'made' | 'kept', i: number, at: number, late: number) => {
    told.lateMs = Math.max(told.lateMs, late);
    if (kind === 'made') told.madeAt[i] = at;
    else told.keptUpTo = Math.max(told.keptUpTo, i);
  });
  await page.evaluate((list) => {
    const tell = (window as unknown as { tellRun: (kind: string, i: number, at: number, late: number) => void }).tellRun;
    const field = document.querySelector<HTMLInputElement>('header input')!;
    const status = document.querySelector('header [role="status"]')!;
    const button = (name: string) => [...document.querySelectorAll<HTMLButtonElement>('header button')].find((each) => each.textContent?.trim().startsWith(name))!;
    let last = -1;
    new MutationObserver(() => {
      if (last >= 0 && /^Kept on this device/.test(status.textContent ?? '')) tell('kept', last, Date.now(), 0);
    }).observe(status, { childList: true, characterData: true, subtree: true });
    const next = (i: number) => {
      const act = list[i];
      if (!act) return;
      const due = performance.now() + act.waitMs;
      setTimeout(() => {
        const at = Date.now();
        if (act.kind === 'title') {
          field.value = act.title;
          field.dispatchEvent(new Event('change', { bubbles: true }));
        } else button(act.kind === 'undo' ? 'Undo' : 'Redo').click();
        last = i;
        tell('made', i, at, performance.now() - due);
        // The buttons name the next step once the page has drawn it.
        setTimeout(() => next(i + 1));
      }, act.waitMs);
    };
    next(0);
  }, acts);
  return told;
}
