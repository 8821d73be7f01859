import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const src = resolve(import.meta.dirname, '../../src');
const STAGES = ['1-pattern', '2-construct', '3-fabric', '4-colour', '5-layout', '6-drawing'];
const READINGS = ['ledger', 'words', 'checks', 'yarn', 'sizes', 'errata'];

function files(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|svelte|mjs)$/.test(name))
    .map((name) => join(folder, name));
}

/** Paths below src that a file imports. */
function imports(file: string): string[] {
  const text = readFileSync(file, 'utf8');
  const found = [...text.matchAll(/(?:from|import)\s*\(?\s*['"]([^'"]+)['"]/g)].map((match) => match[1]!);
  return found.flatMap((name) => {
    if (name.startsWith('.')) return [relative(src, resolve(dirname(file), name))];
    const alias = /^\$(engine|editor|keep)(\/.*)?$/.exec(name);
    return alias ? [`${alias[1]}${alias[2] ?? ''}`] : [];
  });
}

/** Why an import may not be, or null when it may. */
export function refusal(from: string, to: string): string | null {
  const [fromTop, fromPart, fromReading] = from.split('/') as [string, string, string];
  const [toTop, toPart, toReading] = to.split('/') as [string, string, string];
  if (fromTop !== 'engine') return null;
  if (toTop !== 'engine') return 'the engine imports nothing outside itself';
  if (fromPart === 'index.ts') return null;
  if (toPart === 'publish') return fromPart === 'publish' ? null : 'nothing in the engine imports publish/';
  if (fromPart === 'publish') return null;
  const stage = STAGES.indexOf(fromPart);
  if (fromPart === 'readings') {
    if (toPart === 'readings' && toReading !== fromReading) return 'readings never import each other';
    return null;
  }
  if (toPart === 'craft') return null;
  if (fromPart === 'craft') return 'craft/ imports craft/ only';
  if (toPart === 'notation') return null;
  if (fromPart === 'notation') return 'notation/ imports craft/ and notation/ only';
  if (toPart === 'readings') return 'nothing in the line of stages imports a reading';
  const other = STAGES.indexOf(toPart);
  if (other < 0) return `unknown part ${toPart}`;
  return other <= stage ? null : 'a stage imports itself and lower numbers only';
}

describe('the import rule', () => {
  const all = files(src);

  it('finds the engine at all', () => {
    expect(all.filter((file) => file.includes('3-fabric')).length).toBeGreaterThan(3);
    expect(READINGS.some((name) => all.some((file) => file.includes(`readings/${name}`)))).toBe(true);
  });

  it('holds for every file', () => {
    const broken = all.flatMap((file) => {
      const from = relative(src, file);
      return imports(file).flatMap((to) => {
        const why = refusal(from, to);
        return why ? [`${from} imports ${to}: ${why}`] : [];
      });
    });
    expect(broken).toEqual([]);
  });

  it.each([
    ['engine/3-fabric/work.ts', 'engine/4-colour/colour.ts'],
    ['engine/notation/readRow.ts', 'engine/1-pattern/pattern.ts'],
    ['engine/craft/stitches.ts', 'engine/notation/readRow.ts'],
    ['engine/readings/words/words.ts', 'engine/readings/ledger/ledger.ts'],
    ['engine/6-drawing/draw.ts', 'engine/readings/checks/check.ts'],
    ['engine/index.ts', 'editor/bench/session.svelte.ts'],
  ])('would refuse %s importing %s', (from, to) => {
    expect(refusal(from, to)).not.toBeNull();
  });
});
