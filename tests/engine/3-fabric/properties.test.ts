import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FLAG, type Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { shortRowHeel } from '../../../src/engine/2-construct/recipes/shortRowHeel.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { stitchCode } from '../../../src/engine/craft/stitches.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { heelChecks } from '../../../src/engine/readings/checks/heelChecks.ts';
import { workText } from '../workText.ts';

/** A heel of `n` on a leg of `2n`, leaving a and b. */
function heelText(n: number, a: number, b: number): string {
  const leg = `LEG\nFoundation: ch ${2 * n + 1}.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, sc in each st across.\nFasten off.\nSeam the side edges.\n`;
  return `Heel\n\n${leg}\n${shortRowHeel('Heel', { stitches: [n], leftFirst: [a], leftSecond: [b], yarn: null })}\n`;
}

const heels = fc.integer({ min: 4, max: 60 }).chain((n) =>
  fc.integer({ min: 1, max: Math.floor((n - 1) / 2) }).chain((b) => fc.boolean().map((more) => ({ n, b, a: more && n - 2 * b - 1 >= 1 ? b + 1 : b }))),
);

/** Clauses that each take one place of ten, in every way. */
const clause = fc.constantFrom('sc in next st', 'hdc in next st', 'dc in next st', '2 sc in next st', 'sk 1 st', 'ch 1, sk 1 st', '(sc, ch 1, sc) in next st', '5-dc bobble in next st', 'sc in front loop only of next st', 'FPdc around next st', 'shell in next st');
const rowsOf = fc.array(fc.array(clause, { minLength: 3, maxLength: 8 }), { minLength: 1, maxLength: 12 });

function randomText(rows: readonly (readonly string[])[]): string {
  const lines = rows.map((clauses, i) => `Row ${i + 2}: ch 1, turn, ${clauses.join(', ')}, *sc in next st; rep from * to end.`);
  return `Foundation: ch 13.\nRow 1: sc in 2nd ch from hook and in each ch across.\n${lines.join('\n')}`;
}

describe('fabric laws', () => {
  it('a heel over N with a, b left closes after a + b rows, for a = b or a = b + 1', () => {
    fc.assert(
      fc.property(heels, ({ n, a, b }) => {
        const { rows, findings, fabric } = workText(heelText(n, a, b));
        const heel = rows.filter((row) => row.section === 1);
        expect(findings).toEqual([]);
        expect(heel).toHaveLength(3 + a + b);
        expect(heel[2]!.made).toBe(n - a - b);
        heel.slice(3).forEach((row, i) => expect(row.made).toBe(n - a - b + i + 1));
        expect(heel.at(-1)!.left).toEqual({ ahead: 0, behind: 0 });
        expect(heelChecks(fabric).filter((found) => found.rule !== 'heelOffCentre')).toEqual([]);
        // Every place left open was used exactly once.
        const uses = new Map<number, number>();
        for (const row of heel) for (let i = fabric.baseStart[row.first]!; i < fabric.baseStart[row.end]!; i++) uses.set(fabric.bases[i]!, (uses.get(fabric.bases[i]!) ?? 0) + 1);
        expect([...uses.values()].every((count) => count === 1)).toBe(true);
      }),
      { numRuns: 150, seed: 20261125 },
    );
  });

  it('a heel with other sides does not close by the same rows, and is found', () => {
    const { fabric } = workText(heelText(21, 8, 6));
    expect(heelChecks(fabric).map((found) => found.rule)).toContain('openSidesUnequal');
  });

  it('counts conserve: the edge after a row is the edge before, less what was used, plus what was put', () => {
    fc.assert(
      fc.property(rowsOf, (clauses) => {
        const { fabric } = workText(randomText(clauses));
        for (let i = 2; i < fabric.rows.length; i++) {
          const [before, row] = [fabric.rows[i - 1]!, fabric.rows[i]!];
          expect(row.open).toBe(before.open - row.used + row.placed);
        }
      }),
      { numRuns: 200, seed: 7 },
    );
  });

  it('every stitch past the foundation has a base; chains hang from the stitch before', () => {
    fc.assert(
      fc.property(rowsOf, (clauses) => {
        const { fabric } = workText(randomText(clauses));
        const ch = stitchCode('ch');
        for (let stitch = 0; stitch < fabric.count; stitch++) {
          if (fabric.flags[stitch]! & FLAG.foundation) continue;
          if (fabric.kind[stitch] === ch) expect(fabric.previous[stitch]! >= 0 || (fabric.flags[stitch]! & FLAG.turning) !== 0).toBe(true);
          else expect(fabric.baseStart[stitch + 1]! - fabric.baseStart[stitch]!).toBeGreaterThan(0);
          for (let i = fabric.baseStart[stitch]!; i < fabric.baseStart[stitch + 1]!; i++) expect(fabric.bases[i]).toBeLessThan(fabric.count);
        }
      }),
      { numRuns: 200, seed: 11 },
    );
  });

  it('an edit re-worked from its row on gives the very fabric of working it all', () => {
    fc.assert(
      fc.property(rowsOf, fc.nat(), clause, (clauses, where, other) => {
        const changed = clauses.map((row, i) => (i === where % clauses.length ? [other, ...row.slice(1)] : row));
        const read = (text: string) => patternFromText(`T\n\nPIECE\n${text}`).pattern!;
        const first = work(construct(read(randomText(clauses)), 0));
        const next = construct(read(randomText(changed)), 0);
        expect(plain(work(next, first))).toEqual(plain(work(next)));
      }),
      { numRuns: 150, seed: 3 },
    );
  });
});

function plain(fabric: Fabric): unknown {
  return { ...fabric, kind: [...fabric.kind], flags: [...fabric.flags], row: [...fabric.row], bases: [...fabric.bases], baseStart: [...fabric.baseStart], previous: [...fabric.previous], openAtEnd: [...fabric.openAtEnd] };
}
