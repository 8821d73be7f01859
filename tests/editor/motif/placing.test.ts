import { describe, expect, it } from 'vitest';
import type { Placement } from '../../../src/engine/1-pattern/pattern.ts';
import { changeLayer } from '../../../src/editor/bench/commands/changeLayer.ts';
import { fitPanel } from '../../../src/editor/bench/commands/fitPanel.ts';
import { inOneSize, setPlacement } from '../../../src/editor/bench/commands/setPlacement.ts';
import { lieOf, startOf, STARTS, withLie, withStart } from '../../../src/editor/motif/placingChoices.ts';
import { placingSentence } from '../../../src/editor/motif/placingSentence.ts';
import { after, benchOf, LEG, TICK } from '../bench/benchOf.ts';

const TRIO = { id: 'trio', name: 'Trio', cells: ['BAB'] };
const LAID: Placement = { id: 'p1', section: 'leg', motif: 'trio', row: { line: 'plain', nth: 1 }, align: 'centre', offset: 0, across: 'fill', up: 1, gap: 0, mirror: false };
const WITH = { ...LEG, motifs: [TICK, TRIO], placements: [LAID] };
const said = (placement: Placement, meets = false) => {
  const pattern = { ...WITH, placements: [placement] };
  return placingSentence(TRIO, placement, benchOf(pattern).colours.fits[0] ?? null, meets);
};

describe('what is said of a placed motif', () => {
  it.each([
    [LAID, 'Trio: 3 repeats of 3 in 10 stitches; 0 left and 1 right stay free. Whole repeats fill 9 or 12.'],
    [{ ...LAID, across: 2 as const }, 'Trio: 2 repeats of 3 in 10 stitches; 2 stitches stay free on each side. Whole repeats fill 9 or 12.'],
    [{ ...LAID, fill: 'spread' as const }, 'Trio: 3 repeats of 3 in 10 stitches, spread over the whole row.'],
    [{ ...LAID, fill: 'edges' as const }, 'Trio: 3 repeats of 3 in 10 stitches, and on to the edges, where repeats are cut.'],
    [{ ...LAID, across: 1 as const, align: 'left' as const, offset: -2 }, 'Trio: 0 repeats of 3 in 10 stitches; it hangs 2 stitches over the edge. 2 cells of it fall beyond the row’s ends. Whole repeats fill 9 or 12.'],
    [{ ...LAID, hidden: true }, 'Trio is not laid.'],
    [{ ...LAID, bySize: [{ leftOut: true }, null] }, 'Trio is left out in this size.'],
    [{ ...LAID, row: { line: 'plain', nth: 9 } }, 'Trio finds no row to lie on in this size.'],
  ])('of %o', (placement, sentence) => {
    expect(said(placement)).toBe(sentence);
  });

  it('tells what happens at the seam', () => {
    expect(said(LAID, true)).toContain('At the seam 1 stitch lies between the last repeat and the first, 0 elsewhere.');
    expect(said({ ...LAID, gap: 1, across: 2 }, true)).toMatch(/At the seam 3 stitches lie between the last repeat and the first, 1 elsewhere/);
  });
});

describe('choices of lying', () => {
  it('starts where it is told, and says so', () => {
    for (const { start } of STARTS) expect(startOf(withStart({ ...LAID, offset: 4 }, start))).toBe(start);
    expect(withStart(withStart(LAID, 'seam'), 'centre')).toEqual(LAID);
  });

  it('fills as it is told, and says so', () => {
    for (const lie of ['whole', 'spread', 'edges', 'count'] as const) expect(lieOf(withLie(LAID, lie, 3))).toBe(lie);
    expect(withLie(withLie(LAID, 'spread', 3), 'whole', 3)).toEqual(LAID);
    expect(withLie(LAID, 'count', 0).across).toBe(1);
  });

  it('says for one size only what differs there', () => {
    const one = inOneSize(LAID, 2, 1, { gap: 2 });
    expect(one.bySize).toEqual([null, { gap: 2 }]);
    expect(inOneSize(one, 2, 1, { gap: 0 })).toEqual(LAID);
    expect(after(WITH, setPlacement(one)(benchOf(WITH))).placements[0]!.bySize).toEqual([null, { gap: 2 }]);
  });

  it('is no step where nothing changes', () => {
    expect(setPlacement(LAID)(benchOf(WITH))).toBeNull();
    expect(setPlacement({ ...LAID, id: 'gone' })(benchOf(WITH))).toBeNull();
  });
});

describe('layers', () => {
  it('moves, copies, locks and takes off, each as one step', () => {
    const moved = after(WITH, changeLayer('p1', { kind: 'move', rowsUp: 1, stitchesRight: 2 })(benchOf(WITH)));
    expect(moved.placements[0]).toMatchObject({ row: { line: 'plain', nth: 2 }, offset: 2 });
    const copied = after(WITH, changeLayer('p1', { kind: 'copy', newId: 'p2', rowsUp: 2, stitchesRight: 0 })(benchOf(WITH)));
    expect(copied.placements.map((each) => each.id)).toEqual(['p1', 'p2']);
    const locked = after(WITH, changeLayer('p1', { kind: 'lock' })(benchOf(WITH)));
    expect(locked.placements[0]!.locked).toBe(true);
    expect(after(WITH, changeLayer('p1', { kind: 'remove' })(benchOf(WITH))).placements).toEqual([]);
    expect(changeLayer('gone', { kind: 'lock' })(benchOf(WITH))).toBeNull();
  });
});

describe('fitting the panel to its motifs', () => {
  it('makes the chain longer and lets the counts follow, in all sizes', () => {
    const fitted = fitPanel(benchOf(WITH), 'leg', [2, 3]);
    if (!fitted.ok) throw new Error(fitted.reason);
    const pattern = after(WITH, fitted.step);
    expect(pattern.sections[0]!.lines.map((line) => line.text).slice(0, 3)).toEqual([
      'with A, ch 13 (16).', 'sc in 2nd ch from hook and in each ch across. (12 (15) sc)', 'ch 1, turn, sc in each st across. (12 (15) sc)',
    ]);
    expect(benchOf(pattern).colours.fits[0]).toMatchObject({ width: 12, across: 4, leftOver: { left: 0, right: 0 } });
    expect(benchOf(pattern, 1).colours.fits[0]!.width).toBe(15);
  });

  it('says why not where a row counts its stitches one by one', () => {
    const counted = { ...LEG, sections: [{ ...LEG.sections[0]!, lines: LEG.sections[0]!.lines.map((line) => (line.id === 'plain' && line.kind === 'row' ? { ...line, text: 'ch 1, turn, sc in next 10 (12) sts. (10 (12) sc)' } : line)) }] };
    const fitted = fitPanel(benchOf(counted), 'leg', [2, 3]);
    expect(fitted.ok ? '' : fitted.reason).toMatch(/^The rows don’t take it in size S\./);
  });

  it('says why not without a chain, with too few stitches, and where nothing would change', () => {
    const none = { ...LEG, sections: [{ ...LEG.sections[0]!, lines: LEG.sections[0]!.lines.slice(1) }] };
    expect(fitPanel({ pattern: none, at: 0 }, 'leg', [1, 1])).toMatchObject({ ok: false, reason: expect.stringMatching(/no chain/) });
    expect(fitPanel(benchOf(LEG), 'leg', [-10, 0])).toMatchObject({ ok: false, reason: expect.stringMatching(/Too few/) });
    expect(fitPanel(benchOf(LEG), 'leg', [0, 0])).toMatchObject({ ok: false });
    expect(() => fitPanel(benchOf(LEG), 'leg', [1])).toThrow(RangeError);
  });
});
