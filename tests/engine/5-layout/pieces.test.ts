import { describe, expect, it } from 'vitest';
import { H, laid, slotHeads, W } from './geometry.ts';

const MOTIFS = `Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)
Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (12 sc)
Fasten off.
Rnd 3: magic ring, 8 sc in ring, join with sl st in first st. (8 sc)
Rnd 4: ch 1, 2 sc in each st around, join with sl st in first st. (16 sc)
Fasten off.
Foundation: ch 7.
Row 5: sc in 2nd ch from hook and in each ch across. (6 sc)
Row 6: ch 1, turn, sc in each st across. (6 sc)`;

describe('several pieces in one section', () => {
  const { fabric, layout } = laid(MOTIFS);

  it('stand side by side in working order, each laid out as what it is', () => {
    expect(layout.parts.map(({ kind }) => kind)).toEqual(['disc', 'disc', 'flat']);
    const spans = layout.parts.map(({ rows }) => {
      const xs = rows.flatMap((row) => Array.from({ length: fabric.rows[row]!.end - fabric.rows[row]!.first }, (_, k) => layout.headX[fabric.rows[row]!.first + k - layout.first]!));
      return [Math.min(...xs), Math.max(...xs)] as const;
    });
    spans.slice(1).forEach(([left], n) => expect(left - spans[n]![1]).toBeGreaterThan(W));
  });

  it('stand on one level', () => {
    const lowest = layout.parts.map(({ rows }) => Math.max(...rows.flatMap((row) => Array.from({ length: (fabric.rows[row]!.end - fabric.rows[row]!.first) * 4 }, (_, k) => layout.corners[(fabric.rows[row]!.first - layout.first) * 8 + 2 * k + 1]!))));
    lowest.forEach((low) => expect(Math.abs(low - lowest[0]!)).toBeLessThan(2.5 * H));
  });

  it('are one piece where rows are worked on each other', () => {
    expect(laid('Foundation: ch 9.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRows 2-5: ch 1, turn, sc in each st across.').layout.parts).toHaveLength(1);
  });
});

describe('pieces that join', () => {
  const { fabric, layout } = laid(`Sample

LEG
Foundation: ch 25.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (24 sc)
Rows 2-4: ch 1, turn, sc in each st across. (24 sc)
Seam the side edges.

HEEL
Join A with a sl st in the 6th st before the seam.
Row 1 (RS): ch 1, sc in same st, sc in next 5 sts, skip the seam, sc in next 6 sts. Leave the rest unworked. (12 sc)
Row 2: ch 1, turn, sc in next 8 sts. Leave 4 unworked. (8 sc)
Row 3: ch 1, turn, sc in next 4 sts. Leave 4 unworked. (4 sc)
Rows 4-11: ch 1, turn, sc in each st across, sc in next unworked st.

FOOT
Rnd 1: sc in each st around. (24 sc)
Rnd 2: sc in each st around. (24 sc)`, 2);

  it('name the sections whose stitches lie under the first round, along those stitches', () => {
    const names = layout.guides.flatMap((guide) => (guide.kind === 'from' ? [{ name: fabric.sections[guide.section]!.name, x: guide.textX, long: Math.max(...guide.points) }] : []));
    expect(names.map(({ name }) => name).sort()).toEqual(['HEEL', 'LEG']);
    const under = layout.ghosts.filter(({ stitch }) => stitch < layout.first);
    expect(under).toHaveLength(24);
    names.forEach(({ name, x }) => {
      const own = under.filter(({ stitch }) => fabric.sections[fabric.rows[fabric.row[stitch]!]!.section]!.name === name).map(({ headX }) => headX);
      expect(own).toHaveLength(12);
      expect(x).toBeCloseTo((Math.min(...own) + Math.max(...own)) / 2, 3);
    });
    expect(slotHeads(fabric, layout)[0]!.x).toHaveLength(24);
  });
});
