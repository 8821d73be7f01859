import { describe, expect, it } from 'vitest';
import { readRow } from '../../../src/engine/notation/readRow.ts';
import { writeRow } from '../../../src/engine/notation/writeRow.ts';
import { SOCK } from '../../../src/engine/2-construct/recipes/defaults.ts';
import { rules, workText } from '../workText.ts';
import { madeIn, measure, pieceOf, requestOf } from '../2-construct/recipes/pieceOf.ts';

/** A tube of 24 with an opening of 12, three rounds beyond it, and what is worked into the opening. */
const sock = (heel: string) => `S

LEG
Foundation: with A, ch 24, join to form a ring.
Rnds 1-4: sc in each st around. (24 sc)

FOOT
Rnd 1: ch 12 (each counts as st), skip next 12 sts, sc in each st around. (24 sts)
Rnds 2-3: sc in each st around. (24 sc)
Fasten off.

HEEL
${heel}`;

describe('an opening left in a round', () => {
  it('is a ring of its own: the stitches that were skipped, then the undersides of the chains back along the other side', () => {
    const { fabric, rows, findings } = workText(sock('Join A with a sl st in the 1st st of the opening.\nRnd 1: sc in each st around. (24 sc)\nRnd 2: (sc2tog, sc in next 8 sts, sc2tog) 2 times. (20 sts)'));
    expect(findings).toEqual([]);
    expect(rows.slice(-2).map((row) => [row.made, row.ring])).toEqual([[24, true], [20, true]]);
    const row = (section: number, nth: number) => fabric.rows.filter((one) => one.section === section && one.word === 'round')[nth]!;
    const round = row(2, 0);
    const bases = [...fabric.bases.slice(fabric.baseStart[round.first], fabric.baseStart[round.end])];
    const leg = row(0, 3);
    const foot = row(1, 0);
    const numbers = Array.from({ length: 12 }, (_, i) => i);
    expect(bases).toEqual([...numbers.map((i) => leg.first + i), ...numbers.map((i) => foot.first + 11 - i)]);
    // The foot's last round and the heel's are open, and nothing else.
    expect(fabric.openAtEnd.length).toBe(24 + 20);
  });

  it('is entered once: a second join finds none', () => {
    const twice = 'Join A with a sl st in the 1st st of the opening.\nRnd 1: sc in each st around. (24 sc)\nFasten off.\nJoin A with a sl st in the opening.';
    expect(rules(workText(sock(twice)).findings)).toContain('wrong notEnoughPlaces');
  });

  it('can be entered at any of its stitches', () => {
    const { fabric, findings } = workText(sock('Join A with a sl st in the 13th st of the opening.\nRnd 1: sc in each st around. (24 sc)'));
    expect(findings).toEqual([]);
    const round = fabric.rows.at(-1)!;
    expect(fabric.bases[fabric.baseStart[round.first]!]).toBe(fabric.rows.find((one) => one.section === 1)!.first + 11);
  });

  it.each([
    ['Join C with a sl st in the 1st st of the opening', 'join C with a sl st in the 1st st of the opening.'],
    ['join C with a sl st in the opening', 'join C with a sl st in the 1st st of the opening.'],
    ['Join A with sl st in the first st of the opening', 'join A with a sl st in the 1st st of the opening.'],
  ])('“%s” is read and written', (text, written) => {
    const { body, findings } = readRow(text, { terms: 'us', sizes: 1 });
    expect(findings).toEqual([]);
    expect(writeRow(body, null, { terms: 'us' })).toBe(written);
  });
});

describe('a heel set in afterwards, by hand (common practice: a toe worked into the opening)', () => {
  it('has these rounds in three sizes', () => {
    // 20, 25 and 27 cm at 1.8 stitches a cm are 36, 45 and 48.6: 36, 46 and 48 stitches round, openings of 18, 24 and 24.
    const settings = { ...SOCK, leg: { ...SOCK.leg, way: 'rounds' }, heel: { ...SOCK.heel, kind: 'afterthought', yarn: 'C' } } as const;
    const worked = pieceOf(requestOf(settings, [measure('footGirth', 20, 25, 27), measure('footLength', 20, 25, 27), measure('legLength', 12, 12, 12)]));
    expect(worked.findings).toEqual([]);
    expect(worked.made.numbers.map((n) => [n.get('around')!.value, n.get('heel.stitches')!.value])).toEqual([[36, 18], [46, 24], [48, 24]]);
    // Twice the opening round it, then 4 fewer in every round down to about a quarter.
    expect(madeIn(worked, 'heel', 0)).toEqual([36, 32, 28, 24, 20, 16, 12, 8]);
    expect(madeIn(worked, 'heel', 1)).toEqual([48, 44, 40, 36, 32, 28, 24, 20, 16, 12]);
    expect(madeIn(worked, 'heel', 2)).toEqual([48, 44, 40, 36, 32, 28, 24, 20, 16, 12]);
    for (const fabric of worked.fabrics) expect(fabric.openAtEnd.length).toBe(0);
  });
});
