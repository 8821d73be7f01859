import type { Sample } from './sample.ts';

const LEG = `LEG
Foundation: with A, ch 25.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (24 sc)
Rows 2-4: ch 1, turn, sc in each st across. (24 sc)
Seam the side edges.
`;

const HEEL = `${LEG}
HEEL
Join A with a sl st in the 6th st before the seam.
Row 1 (RS): ch 1, sc in same st, sc in next 5 sts, skip the seam, sc in next 6 sts. Leave the rest unworked. (12 sc)
Row 2: ch 1, turn, sc in next 8 sts. Leave 4 unworked. (8 sc)
Row 3: ch 1, turn, sc in next 4 sts. Leave 4 unworked. (4 sc)
Rows 4-11: ch 1, turn, sc in each st across, sc in next unworked st. (1 st more in each row, ending with 12 sc)`;

const YARNS = `Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6
Yarn C: lamp orange #d9772b
`;

const HOURGLASS = `${LEG}
HEEL
Join A with a sl st in the 6th st before the seam.
Row 1 (RS): ch 1, sc in same st, sc in next 5 sts, skip the seam, sc in next 6 sts. Leave the rest unworked. (12 sc)
Row 2: ch 1, turn, sc in next 11 sts. Leave 1 unworked. (11 sc)
Row 3: ch 1, turn, sc in next 10 sts. Leave 1 unworked. (10 sc)
Row 4: ch 1, turn, sc in next 9 sts. Leave 1 unworked. (9 sc)
Row 5: ch 1, turn, sc in next 8 sts. Leave 1 unworked. (8 sc)
Row 6: ch 1, turn, sc in next 7 sts. Leave 1 unworked. (7 sc)
Row 7: ch 1, turn, sc in next 6 sts. Leave 1 unworked. (6 sc)
Row 8: ch 1, turn, sc in next 5 sts. Leave 1 unworked. (5 sc)
Row 9: ch 1, turn, sc in next 4 sts. Leave 1 unworked. (4 sc)
Rows 10-17: ch 1, turn, sc in each st across, sc in next unworked st. (1 st more in each row, ending with 12 sc)`;

/** Turned short rows in their three views, and heels of other builds. */
export const HEEL_SAMPLES: readonly Sample[] = [
  { name: 'heel', title: 'Heel as a wedge', group: 'shortRows', text: HEEL, look: { section: 1, fills: 'none', grid: false } },
  { name: 'heel-grid', title: 'The same heel in columns', group: 'shortRows', text: HEEL, look: { section: 1, fills: 'none', grid: false, view: 'grid' } },
  { name: 'heel-fan', title: 'The same heel as a fan', group: 'shortRows', text: HEEL, look: { section: 1, fills: 'none', grid: false, view: 'fan' } },
  { name: 'heel-left-handed', title: 'The same heel for the left hand', group: 'shortRows', text: HEEL, look: { section: 1, fills: 'none', grid: false, hand: 'left' } },
  {
    name: 'heel-unequal', title: 'One more left on one side', group: 'shortRows', look: { section: 1, fills: 'none', grid: false },
    text: HEEL.replace('sc in next 4 sts. Leave 4 unworked. (4 sc)', 'sc in next 5 sts. Leave 3 unworked. (5 sc)').replace('Rows 4-11', 'Rows 4-10'),
  },
  {
    name: 'heel-in-colour', title: 'Heel in saturated colours', group: 'shortRows', look: { section: 1 },
    text: `${YARNS}\n${HEEL.replace('Join A', 'Join C').replace(/Rows 4-11.*/, 'Rows 4-7: ch 1, turn, sc in each st across, sc in next unworked st.\nRows 8-11: with B, ch 1, turn, sc in each st across, sc in next unworked st.')}`,
  },
  { name: 'heel-cells', title: 'Heel in colour without symbols', group: 'shortRows', look: { section: 1, symbols: 'none' }, text: `${YARNS}\n${HEEL.replace('Join A', 'Join C')}` },
  { name: 'heel-mono', title: 'Heel in black and white', group: 'shortRows', look: { section: 1, mono: true }, text: `${YARNS}\n${HEEL.replace('Join A', 'Join C')}` },
  { name: 'hourglass', title: 'Hourglass heel: one stitch left by each row', group: 'shortRows', text: HOURGLASS, look: { section: 1, fills: 'none', grid: false } },
  { name: 'hourglass-grid', title: 'Hourglass heel in columns', group: 'shortRows', text: HOURGLASS, look: { section: 1, fills: 'none', grid: false, view: 'grid' } },
];

/** A foot over heel and instep: the same leg and heel below it. */
export const HEEL_TEXT = HEEL;
