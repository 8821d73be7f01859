import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import type { LayOutOptions } from '../../../src/engine/5-layout/layOutSection.ts';
import { workText } from '../workText.ts';
import { GAUGE } from './geometry.ts';

const clause = fc.constantFrom('sc in next st', 'sc in next 3 sts', '2 sc in next st', '3 dc in next st', 'sc2tog', 'dc in next st', 'ch 2', 'ch 5, skip next 2 sts', 'hdc in next st', 'picot', '(2 dc, ch 2, 2 dc) in next st', 'FPdc around next st', 'skip next st');
const start = fc.constantFrom(
  'Rnd 1: magic ring, 6 sc in ring, join with sl st in first st.',
  'Rnd 1: magic ring, 12 dc in ring.',
  'Rnd 1: ch 4, join to form a ring, ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of ch-3.',
  'Foundation: ch 20, join to form a ring.\nRnd 1: ch 1, sc in each ch around, join with sl st in first st.',
  'Foundation: ch 9.\nRnd 1: sc in 2nd ch from hook, sc in next 6 ch, 3 sc in last ch, working on the other side of the foundation chain, sc in next 6 ch, 2 sc in next ch, join with sl st in first st.',
  'Rnd 1: ch 2, 6 sc in 2nd ch from hook.',
  'Foundation: ch 12.\nRow 1: sc in 2nd ch from hook and in each ch across.',
);
const options: fc.Arbitrary<LayOutOptions> = fc.record({
  rounds: fc.constantFrom('auto', 'tube', 'disc'), spiral: fc.boolean(), view: fc.constantFrom('wedge', 'grid', 'fan'), hand: fc.constantFrom('right', 'left'), leanStitches: fc.constantFrom(0, 0.3), tubeMargin: fc.integer({ min: 0, max: 6 }),
});

describe('whatever is worked', () => {
  it('every stitch has a place that is a number, in every layout that may be asked for', () => {
    fc.assert(
      fc.property(start, fc.array(fc.record({ clauses: fc.array(clause, { minLength: 1, maxLength: 6 }), joined: fc.boolean(), turned: fc.boolean() }), { minLength: 0, maxLength: 5 }), options, (first, rounds, asked) => {
        const text = [first, ...rounds.map(({ clauses, joined, turned }, r) => `Rnd ${r + 2}: ${turned ? 'turn, ' : ''}${joined ? 'ch 1, ' : ''}*${clauses.join(', ')}; rep from * around${joined ? ', join with sl st in first st' : ''}.`)].join('\n');
        const { fabric } = workText(text);
        const layout = layOut(fabric, 0, GAUGE, asked);
        [layout.headX, layout.headY, layout.footX, layout.footY, layout.angle, layout.corners].forEach((values) => expect(values.every(Number.isFinite), text).toBe(true));
        layout.rows.forEach(({ labelX, labelY, band }) => expect([labelX, labelY, ...(band ?? [])].every(Number.isFinite), text).toBe(true));
        layout.ghosts.forEach(({ headX, headY, angle }) => expect([headX, headY, angle].every(Number.isFinite), text).toBe(true));
        const empty = Array.from({ length: layout.end - layout.first }, (_, i) => layout.corners.subarray(i * 8, i * 8 + 8)).filter((corners) => corners.every((value) => value === 0));
        expect(empty, text).toHaveLength(0);
        const { x0, y0, x1, y1 } = layout.bounds;
        expect(x1 - x0).toBeGreaterThanOrEqual(0);
        expect(y1 - y0).toBeGreaterThanOrEqual(0);
        // Nothing flies off: a piece is no larger than all its stitches in one line.
        expect(Math.max(x1 - x0, y1 - y0), text).toBeLessThan(10 * 5 * (fabric.count + 60));
      }),
      { seed: 36, numRuns: 250 },
    );
  });
});
