import { HEEL_TEXT } from './heelSamples.ts';
import type { Sample } from './sample.ts';

/** Pieces that join, and several in one section. */
export const PIECE_SAMPLES: readonly Sample[] = [
  {
    name: 'foot', title: 'Foot over heel and instep', group: 'pieces', look: { section: 2, fills: 'none', grid: false },
    text: `${HEEL_TEXT}

FOOT
Rnd 1: with B, sc in each st around. (24 sc)
Rnds 2-4: sc in each st around. (24 sc)`,
  },
  {
    name: 'edging', title: 'Rows on the edge of a panel', group: 'pieces', look: { section: 1, fills: 'none', grid: false },
    text: `PANEL
Foundation: ch 15.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (14 sc)
Rows 2-4: ch 1, turn, sc in each st across. (14 sc)

EDGING
Row 1: ch 1, turn, sc in each st across. (14 sc)
Row 2: ch 3, turn, dc in next st and in each st across. (14 dc)`,
  },
  {
    name: 'two-motifs', title: 'Two motifs in one section', group: 'pieces', look: { fills: 'none', grid: false },
    text: `MOTIFS
Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)
Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (12 sc)
Fasten off.
Rnd 3: magic ring, 8 sc in ring, join with sl st in first st. (8 sc)
Rnd 4: ch 1, 2 sc in each st around, join with sl st in first st. (16 sc)
Fasten off.`,
  },
  {
    name: 'two-pieces', title: 'Two pieces in one section', group: 'pieces', look: { fills: 'none', grid: false },
    text: `PIECES
Foundation: ch 7.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (6 sc)
Rows 2-4: ch 1, turn, sc in each st across. (6 sc)
Fasten off.
Foundation: ch 9.
Row 5 (RS): sc in 2nd ch from hook and in each ch across. (8 sc)
Row 6: ch 1, turn, sc in each st across. (8 sc)
Fasten off.`,
  },
];
