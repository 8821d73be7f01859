import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { stitchOfCode, type StitchKind } from '../../../src/engine/craft/stitches.ts';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { check } from '../../../src/engine/readings/checks/check.ts';
import { setStitch, setStitchOr } from '../../../src/editor/bench/commands/setStitch.ts';
import { placeInOther } from '../../../src/editor/bench/commands/placeInSizes.ts';
import { MOST_IN_PLACE, REPLACEMENTS, type HookPlace, type StitchChange } from '../../../src/editor/bench/commands/stitchChange.ts';
import { after, benchOf, LEG, stitchesOfRow } from './benchOf.ts';

const texts = (pattern: Pattern) => pattern.sections[0]!.lines.map((line) => line.text);
const made = (pattern: Pattern, size: number) => benchOf(pattern, size).fabric.rows.slice(1).map((row) => row.made);
const asked = (pattern: Pattern) =>
  [0, 1].flatMap((size) => {
    const state = benchOf(pattern, size);
    return check(pattern, state.fabric, state.colours).filter((each) => each.degree !== 'note');
  });
/** The leg with other words in rows 2 to 6. */
const worked = (text: string): Pattern => ({ ...LEG, sections: [{ ...LEG.sections[0]!, lines: LEG.sections[0]!.lines.map((line) => (line.id === 'plain' ? { ...line, text } : line)) }] });
const replace = (stitch: StitchKind, hook: HookPlace = 'both'): StitchChange => ({ kind: 'replace', stitch, hook });
const group = (count: number, chained = false): StitchChange => ({ kind: 'group', stitch: 'dc', count, chained });
const INCREASE: StitchChange = { kind: 'increase' };
const DECREASE: StitchChange = { kind: 'decrease' };
const reasonOf = (pattern: Pattern, row: number, at: number, change: StitchChange) => {
  const state = benchOf(pattern);
  const step = setStitchOr(stitchesOfRow(state, row)[at]!, change, state);
  return 'reason' in step ? step.reason : null;
};

const PLAIN = 'ch 1, turn, sc in each st across. (10 (12) sc)';
const REPEAT = 'ch 1, turn, *sc in next st, hdc in next st; rep from * to end. (10 (12) sts)';
const TIMES = 'ch 1, turn, (sc in next st, 2 sc in next st, sc2tog) 2 times, sc in each st across. (10 (12) sc)';
const GROUPS = 'ch 1, turn, sc in next st, (sc, ch 1, dc) in next 2 sts, sc in each st across. (14 (16) sts)';
const YARNS = 'ch 1, turn, with A, sc in next 2 sts, with B, sc in next 3 sts, with A, sc in each st across. (10 (12) sc)';

describe('setting a stitch', () => {
  // Row 3, stitch by its place in working order, the turning chain being 0. Texts of the project's own.
  it.each([
    ['increase', PLAIN, 3, INCREASE, 'ch 1, turn, sc in next 2 sts, 2 sc in next st, sc in each st across. (11 (13) sc)', 11, 13],
    ['decrease', PLAIN, 3, DECREASE, 'ch 1, turn, sc in next 2 sts, sc2tog, sc in each st across. (9 (11) sc)', 9, 11],
    ['increase in the first stitch', PLAIN, 1, INCREASE, 'ch 1, turn, 2 sc in next st, sc in each st across. (11 (13) sc)', 11, 13],
    ['increase in the last stitch of every size', PLAIN, 10, INCREASE, 'ch 1, turn, sc in next 9 (11) sts, 2 sc in next st. (11 (13) sc)', 11, 13],
    ['decrease at the end, with the stitch before', PLAIN, 10, DECREASE, 'ch 1, turn, sc in next 8 (10) sts, sc2tog. (9 (11) sc)', 9, 11],
    ['another stitch', PLAIN, 3, replace('dc'), 'ch 1, turn, sc in next 2 sts, dc in next st, sc in each st across. (10 (12) sts)', 10, 12],
    ['a bobble', PLAIN, 3, replace('bobble'), 'ch 1, turn, sc in next 2 sts, 5-dc bobble in next st, sc in each st across. (10 (12) sts)', 10, 12],
    ['a group', PLAIN, 3, group(5), 'ch 1, turn, sc in next 2 sts, 5 dc in next st, sc in each st across. (14 (16) sts)', 14, 16],
    ['a repeat, second turn', REPEAT, 4, INCREASE, 'ch 1, turn, sc in next st, hdc in next st, sc in next st, 2 hdc in next st, *sc in next st, hdc in next st; rep from * to end. (11 (13) sts)', 11, 13],
    ['a decrease over two clauses is refused where the stitches differ', REPEAT, 4, DECREASE, null, 0, 0],
    ['an increase taken back', TIMES, 3, DECREASE, 'ch 1, turn, sc in next 2 sts, sc2tog, sc in next st, 2 sc in next st, sc2tog, sc in each st across. (9 (11) sc)', 9, 11],
    ['a decrease taken back', TIMES, 4, INCREASE, null, 11, 13],
    ['inside a group', GROUPS, 2, INCREASE, null, 15, 17],
    ['a run of another yarn', YARNS, 4, replace('hdc'), 'ch 1, turn, with A, sc in next 2 sts, with B, sc in next st, hdc in next st, sc in next st, with A, sc in each st across. (10 (12) sts)', 10, 12],
  ] as const)('%s: only that stitch differs, in every size', (name, words, at, change, text, small, large) => {
    const pattern = worked(words);
    const state = benchOf(pattern);
    if (name.includes('refused')) return expect(setStitch(stitchesOfRow(state, 3)[at]!, change)(state)).toBeNull();
    const set = after(pattern, setStitch(stitchesOfRow(state, 3)[at]!, change)(state));
    if (text !== null) expect(texts(set)[3]).toBe(text);
    expect([made(set, 0)[2], made(set, 1)[2]]).toEqual([small, large]);
  });

  it.each([
    ['increase', INCREASE, [10, 10, 11, 11, 11, 11], [12, 12, 13, 13, 13, 13]],
    ['decrease', DECREASE, [10, 10, 9, 9, 9, 9], [12, 12, 11, 11, 11, 11]],
  ] as const)('%s: the counts of the rows above follow in every size', (_, change, small, large) => {
    const state = benchOf(LEG);
    const set = after(LEG, setStitch(stitchesOfRow(state, 3)[3]!, change)(state));
    expect([made(set, 0), made(set, 1)]).toEqual([small, large]);
    expect(asked(set)).toEqual([]);
  });

  it.each([
    [1, 10, 12, 1], [9, 10, 12, 11], [4, 9, 11, 5], [4, 9, 12, 5], [5, 10, 10, 5], [8, 10, 1, null],
  ] as const)('place %i of %i stands at the same distance from start, centre or end of %i', (at, own, other, place) => {
    expect(placeInOther(at, own, other)).toBe(place);
  });

  it('offers every stitch of the catalogue that takes a place, with the hook in loop or post', () => {
    const state = benchOf(LEG);
    const [, , , stitch] = stitchesOfRow(state, 3);
    for (const kind of REPLACEMENTS) {
      const set = benchOf(after(LEG, setStitch(stitch!, replace(kind))(state)));
      expect(stitchOfCode(set.fabric.kind[stitch!]!).kind).toBe(kind === 'shell' || kind === 'vst' ? 'dc' : kind);
    }
    for (const [hook, flag] of [['frontLoop', FLAG.frontLoop], ['backLoop', FLAG.backLoop], ['frontPost', FLAG.frontPost], ['backPost', FLAG.backPost]] as const) {
      const set = benchOf(after(LEG, setStitch(stitch!, replace('dc', hook))(state)));
      expect(set.fabric.flags[stitch!]! & flag).toBe(flag);
    }
  });

  it('says why where it can’t be done', () => {
    expect(reasonOf(LEG, 3, 0, INCREASE)).toMatch(/Turning chains/);
    expect(reasonOf(worked(GROUPS), 3, 3, INCREASE)).toMatch(/chains between/);
    expect(reasonOf(worked(REPEAT), 3, 4, DECREASE)).toMatch(/another stitch/);
    expect(reasonOf(worked(TIMES), 3, 4, group(3))).toMatch(/drawn together/);
    const state = benchOf(LEG);
    expect(setStitchOr(2, INCREASE, state)).toHaveProperty('reason', 'A foundation is changed in its words.');
    expect(setStitch(2, INCREASE)(state)).toBeNull();
  });

  it('changes one stitch in all sizes and nothing else, whatever the row is made of', () => {
    const clause = fc.oneof(
      fc.integer({ min: 1, max: 3 }).map((n) => `sc in next ${n === 1 ? 'st' : `${n} sts`}`),
      fc.constantFrom('2 sc in next st', 'sc2tog', '(sc, ch 1, sc) in next st', 'hdc in next st', '(sc in next st, hdc in next st) 2 times', 'with B, sc in next 2 sts'),
    );
    const change: fc.Arbitrary<StitchChange> = fc.oneof(
      fc.constantFrom(INCREASE, DECREASE),
      fc.constantFrom(...REPLACEMENTS).map((stitch) => replace(stitch)),
      fc.record({ kind: fc.constant('group' as const), stitch: fc.constantFrom('dc' as const, 'hdc' as const), count: fc.integer({ min: 2, max: MOST_IN_PLACE }), chained: fc.boolean() }),
    );
    let done = 0;
    fc.assert(
      fc.property(fc.array(clause, { minLength: 1, maxLength: 3 }), fc.boolean(), fc.nat(), change, (clauses, repeats, which, how) => {
        const pattern = worked(`ch 1, turn, ${repeats ? `*${clauses.join(', ')}; rep from * to end` : `${clauses.join(', ')}, with A, sc in each st across`}.`);
        const state = benchOf(pattern);
        const row = stitchesOfRow(state, 2);
        const stitch = row[which % row.length]!;
        const step = setStitchOr(stitch, how, state);
        if ('reason' in step) return;
        done++;
        const set = after(pattern, step);
        for (const size of [0, 1]) {
          const [was, is] = [benchOf(pattern, size), benchOf(set, size)];
          const [old, now] = [was.fabric.rows[2]!, is.fabric.rows[2]!];
          const sure = how.kind === 'increase' ? 1 : how.kind === 'decrease' ? -1 : how.kind === 'replace' ? (how.stitch === 'shell' ? 4 : how.stitch === 'vst' ? 2 : 0) : how.chained ? 2 * how.count - 2 : how.count - 1;
          expect([now.end - now.first - (old.end - old.first), now.used]).toEqual([sure, old.used]);
          const kinds = (bench: typeof was) => stitchesOfRow(bench, 2).map((each) => `${bench.fabric.kind[each]} ${bench.fabric.yarn[each]}`);
          const [before, behind] = [kinds(was), kinds(is)];
          const same = before.findIndex((kind, i) => kind !== behind[i]);
          const end = before.length - (same < 0 ? before.length : same) - [...before].reverse().findIndex((kind, i) => kind !== behind.at(-1 - i));
          expect(same < 0 ? 0 : end).toBeLessThanOrEqual(2);
          expect(is.fabric.rows[1]).toEqual(was.fabric.rows[1]);
        }
      }),
      { seed: 41, numRuns: 100 },
    );
    expect(done).toBeGreaterThan(50);
  });
});
