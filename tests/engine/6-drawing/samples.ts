import type { ChartOptions } from './chartOf.ts';

/** Small charts kept as files in `tests/samples/drawing`, one of each kind of layout. */
export const SAMPLES: readonly { readonly name: string; readonly text: string; readonly options: ChartOptions }[] = [
  {
    name: 'colour-panel',
    text: `Foundation: ch 15.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (14 sc)
Rows 2-7: ch 1, turn, sc in each st across. (14 sc)`,
    options: {
      yarn: (stitch, fabric) => {
        const row = fabric.rows[fabric.row[stitch]!]!;
        const column = row.direction < 0 ? row.end - 1 - stitch : stitch - row.first - 1;
        return (column + 7) % 7 === Math.abs((row.number ?? 0) - 4) ? 2 : row.number === 1 || row.number === 7 ? 0 : 1;
      },
      draw: { symbols: 'none', repeatBrackets: [{ from: 1, to: 7, text: '' }] },
    },
  },
  {
    name: 'colour-panel-mono',
    text: `Foundation: ch 13.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (12 sc)
Rows 2-4: ch 1, turn, sc in each st across. (12 sc)`,
    options: { mono: true, draw: { symbols: 'none' }, yarn: (stitch) => Math.floor(stitch / 2) % 3 },
  },
  {
    name: 'mixed-heights',
    text: `Foundation: ch 14.
Row 1 (RS): 2 sc in 2nd ch from hook, sc in next 11 ch, 2 sc in last ch. (15 sc)
Row 2: ch 3, turn, dc in next st and in each st across. (15 dc)
Row 3: ch 1, turn, sc in next 2 sts, (5-dc bobble in next st, sc in next 4 sts) 2 times, puff st in next st, sc in next 2 sts. (15 sts)
Row 4: ch 1, turn, sc in next st, (skip next 2 sts, 5 dc in next st, skip next 2 sts, sc in next st) 2 times, sc in next 2 sts. (15 sts)
Row 5: ch 1, turn, sc2tog, BLO sc in next 5 sts, picot, sc in next 6 sts, sc2tog. (13 sts)`,
    options: { fills: 'none', draw: { grid: false } },
  },
  {
    name: 'toe',
    text: `Foundation: ch 20, join to form a ring.
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (20 sc)
Rnd 2: ch 1, (sc2tog, sc in next 6 sts, sc2tog) 2 times, join with sl st in first st. (16 sts)
Rnd 3: ch 1, sc in each st around, join with sl st in first st. (16 sts)
Rnd 4: ch 1, (sc2tog, sc in next 4 sts, sc2tog) 2 times, join with sl st in first st. (12 sts)`,
    options: { fills: 'none', draw: { grid: false } },
  },
  {
    name: 'heel',
    text: `Sample

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
Rows 4-11: ch 1, turn, sc in each st across, sc in next unworked st. (12 sc)`,
    options: { section: 1, fills: 'none', draw: { grid: false } },
  },
  {
    name: 'disc-left-handed',
    text: `Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)
Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (12 sc)
Rnd 3: ch 3, dc in same st, 2 dc in each st around, join with sl st in top of ch-3. (24 dc)`,
    options: { fills: 'none', draw: { grid: false }, layOut: { hand: 'left' }, terms: 'uk' },
  },
  {
    name: 'closed-toe',
    text: `Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)
Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (12 sc)
Rnds 3-8: ch 1, sc in each st around, join with sl st in first st. (12 sc)`,
    options: { fills: 'none', draw: { grid: false } },
  },
];
