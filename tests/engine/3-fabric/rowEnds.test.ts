import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRow } from '../../../src/engine/notation/readRow.ts';
import { writeRow } from '../../../src/engine/notation/writeRow.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { made, rules, workText } from '../workText.ts';

const OPTIONS = { terms: 'us', sizes: 1 } as const;

/** A leg of `around` in rounds, then a flap of `rows` rows on `heel` of its stitches. */
const flap = (around: number, heel: number, rows: number) => `S

LEG
Foundation: ch ${around}, join to form a ring.
Rnds 1-2: sc in each st around. (${around} sc)

FLAP
Row 1 (RS): sc in next ${heel} sts. Leave the rest unworked. (${heel} sc)
${rows > 1 ? `Rows 2-${rows}: ch 1, turn, sc in each st across. (${heel} sc)\n` : ''}`;

/** Bases of the stitches that were worked into row ends: those of the row that go round a stitch. */
function sides(fabric: Fabric, row: number): readonly (readonly [row: number, base: number])[] {
  const { first, end } = fabric.rows[row]!;
  const found: (readonly [number, number])[] = [];
  for (let stitch = first; stitch < end; stitch++) {
    const base = fabric.bases[fabric.baseStart[stitch]!]!;
    if (fabric.flags[stitch]! & 256) found.push([fabric.row[base]!, base]);
  }
  return found;
}

describe('row ends as places on the edge', () => {
  it('are picked up along both sides of a heel flap, down and up, the instep between them', () => {
    // 24 round, flap of 12 stitches and 8 rows: 8 + 12 + 8 + 12 = 40 (counted by hand; common practice: one in each row end of single crochet).
    const { rows, findings, fabric } = workText(`${flap(24, 12, 8)}
GUSSET
Rnd 1: turn, sc in next 12 sts, sc in next 8 row ends, sc in next 12 sts, sc in each row end along the side of the flap. (40 sc)
Rnd 2: sc in each st around. (40 sc)`);
    expect(findings).toEqual([]);
    expect(rows.slice(-2).map((row) => row.made)).toEqual([40, 40]);
    const row = fabric.rows.length - 2;
    const firstFlapRow = fabric.rows.findIndex((one) => one.section === 1);
    const picked = sides(fabric, row).map(([of]) => of - firstFlapRow);
    expect(picked).toEqual([7, 6, 5, 4, 3, 2, 1, 0, 0, 1, 2, 3, 4, 5, 6, 7]);
    // The outermost stitches of every row, each once.
    const bases = sides(fabric, row).map(([, base]) => base);
    expect(new Set(bases).size).toBe(16);
    expect(fabric.openAtEnd.length).toBe(40);
  });

  it('are no more than the rows have: too many asked for are found, with how many there are', () => {
    const { findings } = workText(`${flap(24, 12, 8)}\nGUSSET\nRnd 1: turn, sc in next 12 sts, sc in next 9 row ends.`);
    expect(findings.find(({ rule }) => rule === 'notEnoughPlaces')).toMatchObject({ expected: 9, found: 8 });
  });

  it('close where they are worked past, and can’t be worked then', () => {
    const { findings } = workText(`${flap(24, 12, 8)}\nGUSSET\nRnd 1: turn, sc in next 24 sts. (24 sc)\nRnd 2: sc in next 12 sts, sc in next row end.`);
    expect(rules(findings)).toContain('wrong notEnoughPlaces');
  });

  it('make a border round a panel: top, side, foundation, side (counted by hand: 10 + 6 + 10 + 6)', () => {
    const { rows, findings } = workText(`Foundation: ch 11.
Row 1: sc in 2nd ch from hook and in each ch across. (10 sc)
Rows 2-6: ch 1, turn, sc in each st across. (10 sc)
Rnd 7: ch 1, turn, sc in each st across, sc in next 6 row ends, sc in next 6 row ends, join. (22 sc)`);
    expect(findings).toEqual([]);
    expect(rows.at(-1)).toMatchObject({ made: 22, ring: true });
  });

  it('are taken by the seam that closes a flat edge', () => {
    const { findings } = workText('Foundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRows 2-4: ch 1, turn, sc in each st across.\nFasten off.\nSeam the side edges.\nJoin A with a sl st in the 1st st after the seam.\nRnd 5: ch 1, sc in next row end.');
    expect(rules(findings)).toContain('wrong notEnoughPlaces');
  });

  it('are closed where a row is tied to an earlier one: a short-row heel leaves at its corner the ends of its first two rows, which lie beneath', () => {
    const heel = `${flap(24, 12, 1)}Row 2: ch 1, turn, sc in next 9 sts. Leave 3 unworked.
Row 3: ch 1, turn, sc in next 6 sts. Leave 3 unworked.
Rows 4-9: ch 1, turn, sc in each st across, sc in next unworked st. (1 st more in each row, ending with 12 sc)

FOOT
`;
    expect(rules(workText(`${heel}Rnd 1: sc in each st around. (24 sc)`).findings)).toEqual([]);
    expect(workText(`${heel}Rnd 1: sc in next 3 row ends.`).findings.find(({ rule }) => rule === 'notEnoughPlaces')).toMatchObject({ expected: 3, found: 2 });
  });

  it('are used at most once each, whatever is asked of them', () => {
    const side = fc.array(fc.record({ kind: fc.constantFrom('sc in next', 'skip next', 'sc2tog over next'), count: fc.integer({ min: 1, max: 5 }) }), { maxLength: 8 });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), side, (half, asked) => {
        const clauses = asked.map(({ kind, count }) => `${kind} ${kind.startsWith('sc2tog') ? 2 * count : count} row ends`);
        const { fabric, findings } = workText(`${flap(20, 8, 2 * half)}\nGUSSET\nRnd 1: turn, sc in next 8 sts${clauses.map((clause) => `, ${clause}`).join('')}.`);
        const row = fabric.rows.length - 1;
        const { first, end } = fabric.rows[row]!;
        // The first eight stand on the tops of the last row; the others go round one side, one to a row.
        const ends = [...fabric.bases.slice(fabric.baseStart[first + 8], fabric.baseStart[end])].map((base) => fabric.row[base]!);
        expect(new Set(ends).size).toBe(ends.length);
        const wanted = asked.reduce((sum, { kind, count }) => sum + (kind.startsWith('sc2tog') ? 2 * count : count), 0);
        expect(rules(findings).includes('wrong notEnoughPlaces')).toBe(wanted > 2 * half);
        expect(fabric.rows[row]!.used).toBe(8 + Math.min(wanted, 2 * half));
      }),
      { numRuns: 60, seed: 12 },
    );
  });
});

describe('a ring that is closed flat', () => {
  const toe = (around: number) => `Foundation: ch ${around}, join to form a ring.\nRnd 1: sc in each st around. (${around} sc)\n`;

  it.each([['Sew the toe seam.'], ['Sl st the toe closed.'], ['Close the toe with sl sts through both layers.']])('joins its stitches in pairs and leaves none open: %s', (words) => {
    const { fabric, findings } = workText(`${toe(12)}${words}`);
    expect(findings).toEqual([]);
    const { first } = fabric.rows[1]!;
    expect(fabric.closings).toEqual([{ row: 2, pairs: [0, 1, 2, 3, 4, 5].map((i) => [first + i, first + 11 - i]) }]);
    expect(fabric.openAtEnd.length).toBe(0);
  });

  it('has an odd stitch at its fold', () => {
    const { fabric } = workText(`${toe(11)}Sew the toe seam.`);
    expect(fabric.closings[0]!.pairs).toHaveLength(5);
    expect(fabric.openAtEnd.length).toBe(0);
  });

  it('is not meant by words about side edges, which still find no edge to sew', () => {
    expect(rules(workText(`${toe(12)}Seam the side edges.`).findings)).toEqual(['wrong noSeam']);
  });
});

describe('the words for row ends and closings', () => {
  it.each([
    ['sc in next 10 row ends', 'sc in next 10 row ends'],
    ['2 sc in next row-end', '2 sc in next row end'],
    ['sc in each row end along the side of the flap', 'sc in each row end across'],
    ['sc in each row end to end', 'sc in each row end to end'],
    ['sc in next 6 row ends of the heel flap', 'sc in next 6 row ends'],
    ['sc2tog over next 2 row ends', 'sc2tog over next 2 row ends'],
    ['skip next 2 row ends', 'skip next 2 row ends'],
    ['sc in the ends of rows along the edge', 'sc in each row end across'],
    ['Sew the toe seam', 'sew the toe closed'],
    ['sl st the toe closed', 'sl st the toe closed'],
    ['slip stitch the toe shut', 'sl st the toe closed'],
    ['close the toe with sl sts through both layers', 'sl st the toe closed'],
    ['Seam the side edges', 'seam the side edges'],
  ])('“%s” is written “%s”, and reads back the same', (text, written) => {
    const { body, findings } = readRow(text, OPTIONS);
    expect(findings).toEqual([]);
    const out = writeRow(body, null, { terms: 'us' });
    expect(out.toLowerCase().replace(/\.$/, '')).toBe(written);
    const bare = (read: unknown) => JSON.parse(JSON.stringify(read, (key, value: unknown) => (key === 'range' ? undefined : value))) as unknown;
    expect(bare(readRow(out, OPTIONS).body)).toEqual(bare(body));
  });

  it('are counted as rows worked by hand', () => {
    expect(made(`${flap(16, 8, 4)}\nGUSSET\nRnd 1: turn, sc in next 8 sts, sc in each row end across, sc in next 8 sts, sc in each row end across.`).at(-1)).toBe(24);
  });
});
