import { describe, expect, it } from 'vitest';
import { H, laid, slotHeads, W } from './geometry.ts';

const CHEVRON = `Foundation: ch 22.
Row 1 (RS): 2 sc in 2nd ch from hook, sc in next 3 ch, sc3tog over next 3 ch, sc in next 3 ch, 3 sc in next ch, sc in next 3 ch, sc3tog over next 3 ch, sc in next 3 ch, 2 sc in last ch. (21 sts)
Rows 2-4: ch 1, turn, 2 sc in next st, sc in next 3 sts, sc3tog over next 3 sts, sc in next 3 sts, 3 sc in next st, sc in next 3 sts, sc3tog over next 3 sts, sc in next 3 sts, 2 sc in last st. (21 sts)`;

describe('rows that bend at pivots one on another', () => {
  const { fabric, layout } = laid(CHEVRON);
  const rows = slotHeads(fabric, layout);

  it('lie in zigzags: down from the increases, up from the decreases', () => {
    rows.slice(1).forEach(({ x, y }) => {
      const steps = y.slice(1).map((value, i) => (value - y[i]!) / (x[i + 1]! - x[i]!));
      // From the peak in the middle down to either valley.
      for (let i = 5; i < 10; i++) expect(steps[i]!).toBeLessThan(0);
      for (let i = 10; i < 15; i++) expect(steps[i]!).toBeGreaterThan(0);
    });
  });

  it('lie at the angle that the geometry gives: one stitch moved on per row, tan φ = w / h', () => {
    const { x, y } = rows[3]!;
    expect(Math.atan2(y[13]! - y[11]!, x[13]! - x[11]!)).toBeCloseTo(Math.min(0.9, Math.atan(W / H)), 2);
  });

  it('keep stitches a width apart along the row and stand them square on it', () => {
    rows.slice(1).forEach(({ x, y, stitches }) => {
      x.slice(1).forEach((value, i) => expect(Math.hypot(value - x[i]!, y[i + 1]! - y[i]!)).toBeCloseTo(W, 1));
      const i = stitches[12]! - layout.first;
      const stem = [layout.headX[i]! - layout.footX[i]!, layout.headY[i]! - layout.footY[i]!] as const;
      const row = [x[13]! - x[12]!, y[13]! - y[12]!] as const;
      const square = (stem[0] * row[0] + stem[1] * row[1]) / (Math.hypot(...stem) * Math.hypot(...row));
      expect(Math.abs(square)).toBeLessThan(0.12);
    });
  });

  it('are the same on both sides', () => {
    const middle = rows[1]!.x[10]!;
    rows.slice(1).forEach(({ x, y }) => x.forEach((value, i) => {
      expect(value - middle).toBeCloseTo(middle - x.at(-1 - i)!, 3);
      expect(y[i]!).toBeCloseTo(y.at(-1 - i)!, 3);
    }));
  });

  it('may skip stitches in their valleys, and begin with a plain row', () => {
    const { fabric: ripple, layout: seen } = laid(`Foundation: ch 35.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (34 sc)
Rows 2-3: ch 3, turn, dc in same st, *dc in next 4 sts, skip next 2 sts, dc in next 4 sts, 3 dc in next st; rep from * once more, dc in next 4 sts, skip next 2 sts, dc in next 4 sts, 2 dc in last st. (34 dc)`);
    const { y } = slotHeads(ripple, seen)[2]!;
    expect(Math.max(...y) - Math.min(...y)).toBeGreaterThan(2 * H);
    // The plain row bends along.
    const plain = slotHeads(ripple, seen)[1]!.y;
    expect(Math.max(...plain) - Math.min(...plain)).toBeGreaterThan(2 * H);
  });

  it('make a mitre about one pivot', () => {
    const { fabric: mitre, layout: seen } = laid(`Foundation: ch 12.
Row 1 (RS): sc in 2nd ch from hook, sc in next 3 ch, sc3tog over next 3 ch, sc in next 4 ch. (9 sts)
Row 2: ch 1, turn, sc in next 3 sts, sc3tog over next 3 sts, sc in next 3 sts. (7 sts)`);
    const { x, y } = slotHeads(mitre, seen)[2]!;
    expect(y[3]!).toBeGreaterThan(y[0]! + H);
    expect(x[3]).toBeCloseTo(slotHeads(mitre, seen)[1]!.x[4]!, 3);
  });

  it.each([
    ['plain rows', 'Rows 2-4: ch 1, turn, sc in each st across.'],
    ['shells between other stitches', 'Row 2: ch 1, turn, sc in next st, (skip next 2 sts, 5 dc in next st, skip next 2 sts, sc in next st) 3 times.'],
    ['increases at the edges only', 'Rows 2-4: ch 1, turn, 2 sc in next st, sc in each st to last st, 2 sc in last st.'],
    ['decreases that do not stand on each other', 'Row 2: ch 1, turn, sc in next 4 sts, sc3tog over next 3 sts, sc in next 12 sts.\nRow 3: ch 1, turn, sc in next 4 sts, sc3tog over next 3 sts, sc in next 10 sts.'],
  ])('are not %s', (_, more) => {
    const { fabric: plain, layout: seen } = laid(`Foundation: ch 20.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across. (19 sc)\n${more}`);
    const { y } = slotHeads(plain, seen)[1]!;
    y.forEach((value) => expect(value).toBeCloseTo(y[0]!, 3));
  });
});
