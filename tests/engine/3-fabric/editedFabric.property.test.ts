import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import type { Program } from '../../../src/engine/2-construct/program.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { cpuMs } from '../../setup/cpuMs.ts';

const CLAUSES = [
  'sc in next st', 'hdc in next st', 'dc in next 2 sts', '2 sc in next st', 'skip 1 st', 'ch 1, skip 1 st', '(sc, ch 1, sc) in next st', '5-dc bobble in next st',
  'sc in front loop only of next st', 'FPdc around next st', 'shell in next st', 'V-st in next st', 'sc2tog', 'with B, sc in next st', 'with A, sc in next st', 'picot',
  'sc in next ch-1 sp', 'spike sc 2 rows below', 'work in pattern over next 2 sts', 'place marker', 'sc in same st', 'before next picot, sc', 'skip 1 picot', 'gibberish here',
];
const ENDS = ['sc in each st across.', '*sc in next st; rep from * to end.', '*hdc in next st, sc in next st; rep from * to end.', 'work in pattern across.', 'Leave 2 unworked.', 'leave the rest unworked.', 'sc in each st across. (11 sc)', 'dc in each st across. (9 sts)', 'sc in next unworked st.', 'dc in each st across, ch 3.', 'sc in each st across, ch 2, turn.', 'sc in each row end across.'];
const STARTS = ['ch 1, turn, ', 'turn, ', 'ch 3, turn, ', 'ch 2, turn, ', 'ch 1, ', ''];
const STEPS = ['Place marker.', 'Fasten off.', 'Join A with a sl st in first st.', 'Seam the side edges.', 'Join B with a sl st in the 3rd st after the seam.', 'Ch 3.'];

const row = fc.record({
  start: fc.constantFrom(...STARTS), clauses: fc.array(fc.constantFrom(...CLAUSES), { maxLength: 4 }), end: fc.constantFrom(...ENDS), step: fc.option(fc.constantFrom(...STEPS), { freq: 6 }),
});
const plainRow = fc.record({
  start: fc.constantFrom('ch 1, turn, ', 'ch 1, turn, ', 'ch 3, turn, '), clauses: fc.array(fc.constantFrom('with B, hdc in next 3 sts', 'with A, sc in next st', 'dc in next st', '2 sc in next st', 'picot', 'ch 1, skip 1 st'), { maxLength: 2 }),
  end: fc.constantFrom('sc in each st across.', 'hdc in each st across.', 'sc in each st across. (9 sts)', 'sc in each st across, ch 2, turn.'), step: fc.constant(null),
});
type Row = typeof row extends fc.Arbitrary<infer T> ? T : never;
const pieces = fc.record({
  round: fc.boolean(),
  rows: fc.integer({ min: 0, max: 2 }).chain((odd) => fc.array(fc.oneof({ weight: odd, arbitrary: row }, { weight: 4, arbitrary: plainRow }), { minLength: 2, maxLength: 14 })),
  edits: fc.array(fc.record({ where: fc.nat(), to: fc.oneof(row, plainRow) }), { minLength: 1, maxLength: 4 }),
});

/** Rows that look for corners or row ends, among rows that make and unmake them. */
const cornerRow = fc.record({
  start: fc.constantFrom('ch 1, turn, ', 'ch 1, turn, ', 'ch 3, turn, ', 'ch 1, ', ''),
  clauses: fc.array(fc.constantFrom('3 sc in next st', '3 dc in next st', '5 dc in next st', '(sc, ch 2, sc) in next st', '(dc, ch 1, dc) in next ch-2 sp', 'sc in next 2 sts', 'dc in next st', 'skip 1 st', 'ch 2, skip 1 st', 'sc in each st to corner, 3 sc in corner', '3 sc in next corner st'), { maxLength: 3 }),
  end: fc.constantFrom('sc in each st across.', 'dc in each st across.', 'sc in each st across, 3 sc in each corner.', 'sc in each st across, (sc, ch 2, sc) in each corner.', '*sc in each st to next corner, 3 sc in corner st; rep from * across, sc in each st to end.', 'work 12 sc evenly across.', 'sc evenly along row ends.', 'work 5 sc evenly along row ends.'),
  step: fc.constant(null),
});
const cornerPieces = fc.record({
  round: fc.boolean(), rows: fc.array(cornerRow, { minLength: 3, maxLength: 9 }), edits: fc.array(fc.record({ where: fc.nat(), to: cornerRow }), { minLength: 1, maxLength: 4 }),
});

function words({ start, clauses, end }: Row, round: boolean): string {
  return `${round ? start.replace('turn, ', '') : start}${[...clauses, end].join(', ')}`;
}

function textOf(round: boolean, rows: readonly Row[]): string {
  const lines = rows.flatMap((one, i) => [`${round ? 'Rnd' : 'Row'} ${i + 2}: ${words(one, round)}`, ...(one.step ? [one.step] : [])]);
  const first = round ? ['Foundation: with A, ch 12, join to form a ring.', 'Rnd 1: sc in each ch around.'] : ['Foundation: with A, ch 13.', 'Row 1: sc in 2nd ch from hook and in each ch across.'];
  return ['T', '', 'Yarn A: slate #4b5a6b', 'Yarn B: chalk #f2efe6', '', 'PIECE', ...first, ...lines].join('\n');
}

function read(text: string): Pattern {
  const { pattern } = patternFromText(text);
  if (!pattern) throw new Error(text);
  return pattern;
}

/** Gives the nth row line other words. */
function withRow(pattern: Pattern, nth: number, text: string): Pattern {
  const section = pattern.sections[0]!;
  const rows = section.lines.filter((line) => line.kind === 'row');
  const line = rows[nth % rows.length]!;
  const applied = applyTransaction(pattern, { label: 'edit', at: 0, edits: [{ kind: 'setLine', section: section.id, line: { ...line, text } }] });
  if (!applied.ok) throw new Error(applied.reason);
  return applied.pattern;
}

/** A fabric as text, so that one that is not another is found at once. */
function plain(fabric: Fabric): string {
  return JSON.stringify(fabric, (_, value: unknown) => (ArrayBuffer.isView(value) ? [...(value as Int32Array)].join() : value), 1);
}

/** The program as a page that was just opened reads it, so that nothing is known of it. */
function anew(program: Program): Program {
  return { ...program };
}

/** The law, on random edits: a fabric worked on from an earlier one is the one that working all gives. At least one in `seldom` edits keeps the rest. */
function holdsForEdits(what: fc.Arbitrary<{ readonly round: boolean; readonly rows: Row[]; readonly edits: { readonly where: number; readonly to: Row }[] }>, runs: { readonly numRuns: number; readonly seed: number }, seldom: number): void {
  let [edited, kept] = [0, 0];
  fc.assert(
    fc.property(what, ({ round, rows, edits }) => {
      let pattern = read(textOf(round, rows));
      let fabric = work(construct(pattern, 0));
      let last = fabric;
      const before = [{ pattern, fabric }];
      for (const { where, to } of edits) {
        pattern = withRow(pattern, where, words(to, round));
        last = fabric;
        fabric = work(construct(pattern, 0), last);
        const end = fabric.rows.length - 1;
        edited++;
        if (fabric !== last && fabric.rows[end]!.key === last.rows[end]!.key) kept++;
        expect(plain(fabric)).toBe(plain(work(anew(construct(pattern, 0)))));
        before.push({ pattern, fabric });
      }
      for (const one of before.reverse()) {
        fabric = work(anew(construct(one.pattern, 0)), fabric);
        expect(plain(fabric)).toBe(plain(work(anew(construct(one.pattern, 0)))));
      }
    }),
    runs,
  );
  // Were nothing ever kept, the law would say nothing.
  expect(kept).toBeGreaterThan(edited / seldom);
}

describe('a fabric worked on from an earlier one', () => {
  it('is, after every edit and after taking each back, field by field the fabric of working all of it', () => {
    holdsForEdits(pieces, { numRuns: 100, seed: 6 }, 20);
  });

  const WITHOUT = { start: 'ch 1, turn, ', clauses: [], step: null };
  it.each([
    ['the yarn in hand', 'sc in each st across.', 'sc in each st across, with B, ch 1, turn.', ['sc in each st across.', 'sc in each st across.']],
    ['the kind of a stitch on the edge', 'hdc in next 3 sts, dc in next st, hdc in each st across.', 'hdc in next 5 sts, dc in next st, hdc in each st across.', ['sc in next dc, sc in each st across.', 'sc in each st across.']],
    ['the number of chains on the hook', 'dc in each st across, ch 3, turn.', 'dc in each st across, ch 2, turn.', ['@dc in each st across.', 'sc in each st across.']],
    ['the stitch pattern of the rows before', 'dc in each st across.', 'hdc in each st across.', ['sc in each st across.', 'work in pattern across.', 'work in pattern across.']],
    ['the stitch pattern of the rounds before', 'dc in each st around.', 'hdc in each st around.', ['sc in each st around.', 'work in pattern around.', 'work in pattern around.']],
    ['what lies some rows below', 'sc in each st across.', '2 sc in next st, sc in next 9 sts, sc2tog.', ['sc in each st across.', '*spike sc 2 rows below; rep from * to end.', 'sc in each st across.']],
    ['a picot that hangs between the stitches', 'sc in next 6 sts, picot, sc in each st across.', 'sc in next 4 sts, picot, sc in each st across.', ['sc in next st, skip 1 picot, sc in each st across.', 'sc in each st across.']],
  ])('is worked on where an edit changes %s, as it changes what the next rows make', (what, before, after, rest) => {
    // “@” leaves the turning chain out: it was made at the end of the row before.
    const rowOf = (end: string): Row => (end.startsWith('@') ? { ...WITHOUT, start: '', end: end.slice(1) } : { ...WITHOUT, end });
    const round = what.includes('round');
    const pattern = read(textOf(round, [before, ...rest].map(rowOf)));
    const first = work(construct(pattern, 0));
    const program = construct(withRow(pattern, 2, words(rowOf(after), round)), 0);
    const own = plain(work(anew(program)));
    expect(plain(work(program, first))).toBe(own);
    // The rows after the edited one did come out otherwise.
    const made = (fabric: Fabric): string => JSON.stringify(fabric.rows.slice(-rest.length).map((row) => [row.made, [...fabric.kind.slice(row.first, row.end)], [...fabric.flags.slice(row.first, row.end)], [...fabric.yarn.slice(row.first, row.end)], [...fabric.bases.slice(fabric.baseStart[row.first], fabric.baseStart[row.end])].map((base) => base - row.first)]));
    expect(made(work(anew(program)))).not.toBe(made(first));
  });

  it('costs no more for each row whose stated count is wrong, however many there are', () => {
    const costMs = (rows: number): number => {
      const lines = Array.from({ length: rows }, (_, i) => `Row ${i + 2}: ch 3, turn, dc in each st across. (33 sts)`);
      const program = construct(read(['T', '', 'PIECE', 'Foundation: ch 21.', 'Row 1: sc in 2nd ch from hook and in each ch across.', ...lines].join('\n')), 0);
      const costs = [0, 1, 2].map(() => {
        const before = cpuMs();
        expect(work(anew(program)).findings).toHaveLength(rows);
        return cpuMs() - before;
      });
      return Math.min(...costs);
    };
    costMs(200);
    // Four times the rows: 4 where the cost is linear; 16 where each wrong count costs what stands already.
    expect(costMs(1200) / costMs(300)).toBeLessThan(10);
  });

  it('is the same where rows look for corners and row ends, which edits make and unmake', () => {
    holdsForEdits(cornerPieces, { numRuns: 100, seed: 7 }, 100);
  });
});
