import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { seededNumbers } from '../setup/seededNumbers.ts';
import { plannedActs, shownOf, shownOn, startActs, startKillable, type Killable, type Steps, type Told } from './killable.ts';

/** A quarter of a second: what a killed browser may cost. */
const MOST_LOST_MS = 250;
const KILLS = 12;

test.setTimeout(180_000);

for (const seed of [1, 2]) {
  test(`a browser that is killed ${KILLS} times in the midst of work loses nothing that was kept, and no more than a moment (seed ${seed})`, async ({ baseURL }, info) => {
    const draw = seededNumbers(90_000 + seed);
    const folder = mkdtempSync(join(tmpdir(), 'turnwork-kill-'));
    let running: Killable | null = null;
    let steps: Steps = { past: ['Puffin Quay'], future: [] };
    let address = '';
    let run: { readonly states: readonly Steps[]; readonly told: Told; readonly killedAt: number } | null = null;
    const lost: number[] = [];
    try {
      for (let kill = 0; kill <= KILLS; kill++) {
        running = await startKillable(folder);
        const { page } = running;
        if (address === '') {
          await page.goto(`${baseURL}/`);
          await page.getByRole('button', { name: 'Try Puffin Quay' }).click();
        } else await page.goto(address);
        const found = await shownOn(page);
        address = page.url();
        if (run) {
          // One of the states of the run, none older than what was said to be kept.
          const { states, told, killedAt }: NonNullable<typeof run> = run;
          const index = states.findLastIndex((state) => JSON.stringify(shownOf(state)) === JSON.stringify(found));
          expect(index, `${JSON.stringify(found)} is a state of the run`).toBeGreaterThanOrEqual(0);
          expect(index - 1, 'what was said to be kept is there').toBeGreaterThanOrEqual(told.keptUpTo);
          const firstLost = told.madeAt[index];
          lost.push(firstLost === undefined ? 0 : killedAt - firstLost);
          // A machine that has no time for the page's own timers has none for the device either.
          expect(lost.at(-1), `late by ${told.lateMs} ms`).toBeLessThanOrEqual(MOST_LOST_MS + told.lateMs * 2);
          steps = states[index]!;
        }
        expect(found).toEqual(shownOf(steps));
        if (kill === KILLS) break;

        const plan = plannedActs(steps, draw, 400, `k${kill}`);
        const told = await startActs(page, plan.map(({ act }) => act));
        await page.waitForTimeout(120 + draw() * 700);
        const killedAt = Date.now();
        await running.kill();
        running = null;
        run = { states: [steps, ...plan.map((each) => each.steps)], told, killedAt };
      }
      info.annotations.push({ type: 'lost, ms', description: lost.map(Math.round).join(', ') });
    } finally {
      await running?.kill();
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    }
  });
}
