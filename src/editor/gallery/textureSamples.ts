import type { Sample } from './sample.ts';

/** Stitches made of several, and stitches worked elsewhere than in the top of the row below. */
export const TEXTURE_SAMPLES: readonly Sample[] = [
  {
    name: 'posts', title: 'Round the post, front and back', group: 'texture', look: { fills: 'none', grid: false },
    text: `Foundation: ch 14.
Row 1 (RS): dc in 4th ch from hook and in each ch across. (12 dc)
Row 2: ch 3, turn, (FPdc around next st, BPdc around next st) 5 times, dc in last st. (12 sts)
Row 3: ch 3, turn, (FPdc around next st, BPdc around next st) 5 times, dc in last st. (12 sts)
Row 4: ch 1, turn, sc in next 4 sts, FPtr around next st, sc in next 2 sts, FPtr around next st, sc in next 4 sts. (12 sts)`,
  },
  {
    name: 'bunches', title: 'Bobble, puff, popcorn, cluster', group: 'texture', look: { fills: 'none', grid: false },
    text: `Foundation: ch 18.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (17 sc)
Row 2: ch 1, turn, sc in next 2 sts, 5-dc bobble in next st, sc in next 3 sts, puff st in next st, sc in next 3 sts, popcorn in next st, sc in next 3 sts, 3-dc cluster in next st, sc in next 2 sts. (17 sts)
Row 3: ch 1, turn, sc in each st across. (17 sc)
Row 4: ch 3, turn, dc2tog, dc in next 2 sts, dc3tog, dc in next 2 sts, 2 dc in next st, dc in next 2 sts, 3 dc in next st, dc in next 2 sts, dc in last st. (17 sts)`,
  },
  {
    name: 'loops', title: 'Front and back loop', group: 'texture', look: { fills: 'none', grid: false },
    text: `Foundation: ch 11.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (10 sc)
Row 2: ch 1, turn, BLO sc in each st across. (10 sc)
Row 3: ch 1, turn, BLO sc in each st across. (10 sc)
Row 4: ch 1, turn, FLO sc in next 5 sts, BLO sc in next 5 sts. (10 sc)
Row 5: ch 2, turn, hdc in next 3 sts, BLO hdc in next 3 sts, FLO hdc in next 3 sts. (10 hdc)`,
  },
  {
    name: 'spikes', title: 'Spikes into rows further down', group: 'texture', look: { fills: 'yarn', grid: true },
    text: `Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6

PIECE
Foundation: with A, ch 13.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (12 sc)
Rows 2-3: ch 1, turn, sc in each st across. (12 sc)
Row 4: with B, ch 1, turn, (sc in next 2 sts, spike sc in next st 1 row below, spike sc in next st 2 rows below) 3 times. (12 sc)
Row 5: ch 1, turn, sc in each st across. (12 sc)`,
  },
  {
    name: 'shells', title: 'Shells and V-stitches', group: 'texture', look: { fills: 'none', grid: false },
    text: `Foundation: ch 20.
Row 1 (RS): sc in 2nd ch from hook, (skip next 2 ch, 5 dc in next ch, skip next 2 ch, sc in next ch) 3 times. (19 sts)
Row 2: ch 3, turn, 2 dc in same st, (skip next 2 sts, sc in next st, skip next 2 sts, 5 dc in next st) 2 times, skip next 2 sts, sc in next st, skip next 2 sts, 3 dc in last st.
Row 3: ch 1, turn, sc in each st across. (19 sc)
Row 4: ch 3, turn, (skip next 2 sts, V-st in next st) 5 times, skip next 2 sts, dc in last st. (12 sts)
Row 5: ch 3, turn, (2 dc in next ch-1 sp) 5 times, skip next st, dc in last st. (12 sts)`,
  },
  {
    name: 'mesh', title: 'Mesh: chain spaces over skipped stitches', group: 'texture', look: { fills: 'none', grid: false },
    text: `Foundation: ch 15.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (14 sc)
Row 2: ch 3, turn, dc in next st, (ch 1, skip next st, dc in next st) 6 times. (8 dc)
Row 3: ch 3, turn, (dc in next ch-1 sp, dc in next st) 6 times, dc in last st. (14 dc)
Row 4: ch 3, turn, dc in next st, (ch 2, skip next 2 sts, dc in next 2 sts) 3 times. (8 dc)`,
  },
  {
    name: 'arches', title: 'Arches and picots', group: 'texture', look: { fills: 'none', grid: false },
    text: `Foundation: ch 20.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (19 sc)
Row 2: ch 1, turn, sc in next st, (ch 5, skip next 5 sts, sc in next st) 3 times. (4 sc)
Row 3: ch 1, turn, sc in next st, (5 dc in next ch-5 sp, sc in next st) 3 times. (19 sts)
Row 4: ch 5, turn, skip next 3 sts, sc in next st, (ch 5, skip next 5 sts, sc in next st) 2 times, ch 2, skip next 2 sts, dc in last st. (4 sts)
Row 5: ch 1, turn, sc in next st, 2 sc in next ch-2 sp, *sc in next st, (3 sc, picot, 3 sc) in next ch-5 sp; rep from * once more, sc in next st, 3 sc in next ch-5 sp.`,
  },
];
