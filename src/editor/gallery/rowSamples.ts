import type { Sample } from './sample.ts';

/** Rows back and forth: plain, of mixed heights, shaped. */
export const ROW_SAMPLES: readonly Sample[] = [
  {
    name: 'heights', title: 'Every height, with its turning chain', group: 'rows', look: { fills: 'none', grid: false },
    text: `Foundation: ch 9.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (8 sc)
Row 2: ch 2, turn, hdc in next st and in each st across. (8 hdc)
Row 3: ch 3, turn, dc in next st and in each st across. (8 dc)
Row 4: ch 4, turn, tr in next st and in each st across. (8 tr)
Row 5: ch 5, turn, dtr in next st and in each st across. (8 dtr)
Row 6: turn, sl st in each st across. (8 sl sts)`,
  },
  {
    name: 'mixed-heights', title: 'Mixed heights in one row', group: 'rows', look: { fills: 'none', grid: false },
    text: `Foundation: ch 14.
Row 1 (RS): 2 sc in 2nd ch from hook, sc in next 11 ch, 2 sc in last ch. (15 sc)
Row 2: ch 3, turn, dc in next st and in each st across. (15 dc)
Row 3: ch 1, turn, sc in next 2 sts, (5-dc bobble in next st, sc in next 4 sts) 2 times, puff st in next st, sc in next 2 sts. (15 sts)
Row 4: ch 1, turn, sc in next st, (skip next 2 sts, 5 dc in next st, skip next 2 sts, sc in next st) 2 times, sc in next 2 sts. (15 sts)
Row 5: ch 1, turn, sc2tog, BLO sc in next 5 sts, picot, sc in next 6 sts, sc2tog. (13 sts)`,
  },
  {
    name: 'waves', title: 'Waves, filled level again', group: 'rows', look: { fills: 'none', grid: false },
    text: `Foundation: ch 22.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (21 sc)
Row 2: ch 1, turn, sc in next 3 sts, (hdc in next st, dc in next st, tr in next 2 sts, dc in next st, hdc in next st, sc in next 3 sts) 2 times. (21 sts)
Row 3: ch 1, turn, sc in each st across. (21 sc)
Row 4: ch 4, turn, tr in next st, dc in next st, (hdc in next st, sc in next 4 sts, hdc in next st, dc in next st, tr in next st, dc in next st) 2 times. (21 sts)
Row 5: ch 1, turn, sc in each st across. (21 sc)`,
  },
  {
    name: 'triangle', title: 'From one stitch, an increase at both ends', group: 'rows', look: { fills: 'none', grid: false },
    text: `Foundation: ch 2.
Row 1 (RS): 3 sc in 2nd ch from hook. (3 sc)
Row 2: ch 1, turn, 2 sc in next st, sc in next st, 2 sc in last st. (5 sc)
Row 3: ch 1, turn, 2 sc in next st, sc in next 3 sts, 2 sc in last st. (7 sc)
Row 4: ch 1, turn, 2 sc in next st, sc in next 5 sts, 2 sc in last st. (9 sc)
Row 5: ch 1, turn, 2 sc in next st, sc in next 7 sts, 2 sc in last st. (11 sc)
Row 6: ch 1, turn, 2 sc in next st, sc in next 9 sts, 2 sc in last st. (13 sc)`,
  },
  {
    name: 'diamond', title: 'Wider and narrower again', group: 'rows', look: { fills: 'none', grid: false },
    text: `Foundation: ch 6.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (5 sc)
Row 2: ch 1, turn, 2 sc in next st, sc in next 3 sts, 2 sc in last st. (7 sc)
Row 3: ch 1, turn, 2 sc in next st, sc in next 5 sts, 2 sc in last st. (9 sc)
Row 4: ch 1, turn, 2 sc in next st, sc in next 7 sts, 2 sc in last st. (11 sc)
Row 5: ch 1, turn, sc in each st across. (11 sc)
Row 6: ch 1, turn, sc2tog, sc in next 7 sts, sc2tog. (9 sts)
Row 7: ch 1, turn, sc2tog, sc in next 5 sts, sc2tog. (7 sts)
Row 8: ch 1, turn, sc2tog, sc in next 3 sts, sc2tog. (5 sts)
Row 9: ch 1, turn, sc3tog over next 3 sts, sc2tog. (2 sts)`,
  },
  {
    name: 'one-sided', title: 'Shaped on one side only', group: 'rows', look: { fills: 'none', grid: false },
    text: `Foundation: ch 13.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (12 sc)
Row 2: ch 1, turn, sc2tog, sc in each st across. (11 sts)
Row 3: ch 1, turn, sc in next 9 sts, sc2tog. (10 sts)
Row 4: ch 1, turn, sc2tog, sc in each st across. (9 sts)
Row 5: ch 3, turn, dc in next 6 sts, dc2tog. (8 sts)
Row 6: ch 3, turn, dc2tog, dc in each st across. (7 sts)`,
  },
  {
    name: 'chevron', title: 'Zigzag of increases and decreases', group: 'rows', look: { fills: 'none', grid: false },
    text: `Foundation: ch 22.
Row 1 (RS): 2 sc in 2nd ch from hook, (sc in next 3 ch, sc3tog over next 3 ch, sc in next 3 ch, 3 sc in next ch) 1 time, sc in next 3 ch, sc3tog over next 3 ch, sc in next 3 ch, 2 sc in last ch. (21 sts)
Rows 2-4: ch 1, turn, 2 sc in next st, sc in next 3 sts, sc3tog over next 3 sts, sc in next 3 sts, 3 sc in next st, sc in next 3 sts, sc3tog over next 3 sts, sc in next 3 sts, 2 sc in last st. (21 sts)`,
  },
  {
    name: 'mitre', title: 'Mitre: three together in the middle of each row', group: 'rows', look: { fills: 'none', grid: false },
    text: `Foundation: ch 16.
Row 1 (RS): sc in 2nd ch from hook, sc in next 5 ch, sc3tog over next 3 ch, sc in next 6 ch. (13 sts)
Row 2: ch 1, turn, sc in next 5 sts, sc3tog over next 3 sts, sc in next 5 sts. (11 sts)
Row 3: ch 1, turn, sc in next 4 sts, sc3tog over next 3 sts, sc in next 4 sts. (9 sts)
Row 4: ch 1, turn, sc in next 3 sts, sc3tog over next 3 sts, sc in next 3 sts. (7 sts)
Row 5: ch 1, turn, sc in next 2 sts, sc3tog over next 3 sts, sc in next 2 sts. (5 sts)`,
  },
  {
    name: 'ripple', title: 'Ripple in double crochet, two skipped in each valley', group: 'rows', look: { fills: 'none', grid: false },
    text: `Foundation: ch 35.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (34 sc)
Rows 2-4: ch 3, turn, dc in same st, *dc in next 4 sts, skip next 2 sts, dc in next 4 sts, 3 dc in next st; rep from * once more, dc in next 4 sts, skip next 2 sts, dc in next 4 sts, 2 dc in last st. (34 dc)`,
  },
  {
    name: 'steps', title: 'Stitches left open at the end of rows', group: 'rows', look: { fills: 'none', grid: false },
    text: `Foundation: ch 17.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (16 sc)
Row 2: ch 1, turn, sc in next 12 sts. Leave 4 unworked. (12 sc)
Row 3: ch 1, turn, sc in next 9 sts. Leave 3 unworked. (9 sc)
Row 4: ch 1, turn, sc in each st across. (9 sc)`,
  },
];
