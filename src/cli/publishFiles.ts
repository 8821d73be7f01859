import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { choiceProblems } from '../engine/publish/publishChoices.ts';
import { publishSteps } from '../engine/publish/publishPattern.ts';
import { uniqueNames, type MadeFile } from '../publish/archive.ts';
import { publishJob } from '../publish/publishJob.ts';
import { exitCodeOf, UNREADABLE } from './exitCode.ts';
import { loadFile } from './loadFile.ts';
import { NODE_RESOURCES } from './nodeResources.ts';
import type { PublishAsked } from './publishOptions.ts';

/**
 * Publishes every file; prints what was written. A file that can't be published is named at the end and doesn't stop the others.
 * Returns the worst exit code of all.
 */
export async function publishFiles(asked: PublishAsked): Promise<number> {
  let worst = 0;
  const taken: string[] = [];
  const refused: string[] = [];
  for (const path of asked.files) {
    const done = await publishFile(path, asked, taken);
    if (typeof done === 'string') refused.push(`  ${path}: ${done}`);
    worst = Math.max(worst, typeof done === 'string' ? UNREADABLE : done);
  }
  if (refused.length > 0) console.error(`${refused.length} of ${asked.files.length} ${asked.files.length === 1 ? 'file was' : 'files were'} not published:\n${refused.join('\n')}`);
  return worst;
}

/** The exit code of one file, or why it was not published. */
async function publishFile(path: string, asked: PublishAsked, taken: string[]): Promise<number | string> {
  const loaded = loadFile(path);
  if ('problem' in loaded) return withoutPath(loaded.problem, path);
  const { pattern } = loaded;
  try {
    const choices = asked.choicesFor(pattern);
    if (typeof choices === 'string') return choices;
    const problems = choiceProblems(pattern, choices);
    if (problems.length > 0) return problems.join(' ');
    const steps = publishJob({ pattern, choices, outputs: asked.outputs, pngDpi: asked.dpi, zip: asked.zip }, NODE_RESOURCES, publishSteps);
    let step = await steps.next();
    while (!step.done) step = await steps.next();
    write(step.value, asked.out, taken);
    return exitCodeOf(loaded, choices.sizes === 'all' ? pattern.sizes.map((_, size) => size) : [choices.sizes]);
  } catch (error) {
    return (error as Error).message;
  }
}

/** Patterns of one title would have the same names: the later ones are numbered. */
function write(files: readonly MadeFile[], out: string, taken: string[]): void {
  mkdirSync(out, { recursive: true });
  for (const { name, bytes } of files) {
    const own = uniqueNames([...taken, name]).at(-1)!;
    taken.push(own);
    writeFileSync(join(out, own), bytes);
    console.log(join(out, own));
  }
}

function withoutPath(problem: string, path: string): string {
  return problem.startsWith(path) ? problem.slice(path.length).replace(/^:? /, '') : problem;
}
