import type { Sample } from './sample.ts';

/** Rounds: discs, ovals, motifs, tubes and toes. */
export const ROUND_SAMPLES: readonly Sample[] = [
  {
    name: 'disc-sc', title: 'Disc in single crochet, six increases a round', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)
Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (12 sc)
Rnd 3: ch 1, (sc in next st, 2 sc in next st) 6 times, join with sl st in first st. (18 sc)
Rnd 4: ch 1, sc in next st, 2 sc in next st, (sc in next 2 sts, 2 sc in next st) 5 times, sc in next st, join with sl st in first st. (24 sc)
Rnd 5: ch 1, (sc in next 3 sts, 2 sc in next st) 6 times, join with sl st in first st. (30 sc)
Rnd 6: ch 1, sc in next 2 sts, 2 sc in next st, (sc in next 4 sts, 2 sc in next st) 5 times, sc in next 2 sts, join with sl st in first st. (36 sc)`,
  },
  {
    name: 'disc-dc', title: 'Disc in double crochet, twelve increases a round', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Rnd 1: ch 4, join to form a ring, ch 3, 11 dc in ring, join with sl st in top of ch-3. (12 dc)
Rnd 2: ch 3, dc in same st, 2 dc in each st around, join with sl st in top of ch-3. (24 dc)
Rnd 3: ch 3, 2 dc in next st, (dc in next st, 2 dc in next st) 11 times, join with sl st in top of ch-3. (36 dc)`,
  },
  {
    name: 'disc-left-handed', title: 'Disc for the left hand, UK terms', group: 'rounds', look: { fills: 'none', grid: false, hand: 'left', terms: 'uk' },
    text: `Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)
Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (12 sc)
Rnd 3: ch 3, dc in same st, 2 dc in each st around, join with sl st in top of ch-3. (24 dc)`,
  },
  {
    name: 'disc-spiral', title: 'Disc in a spiral, not joined', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Rnd 1: magic ring, 6 sc in ring. (6 sc)
Rnd 2: 2 sc in each st around. (12 sc)
Rnd 3: (sc in next st, 2 sc in next st) 6 times. (18 sc)
Rnd 4: (sc in next 2 sts, 2 sc in next st) 6 times. (24 sc)`,
  },
  {
    name: 'ruffle', title: 'More stitches than lie flat', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Rnd 1: magic ring, 8 sc in ring, join with sl st in first st. (8 sc)
Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (16 sc)
Rnd 3: ch 1, 2 sc in each st around, join with sl st in first st. (32 sc)
Rnd 4: ch 1, 2 sc in each st around, join with sl st in first st. (64 sc)`,
  },
  {
    name: 'flower', title: 'Flower: petals in chain spaces', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Rnd 1: magic ring, (sc in ring, ch 3) 6 times, join with sl st in first st. (6 sc)
Rnd 2: (sc, hdc, dc, hdc, sc) in each ch-3 sp around, join with sl st in first st. (30 sts)`,
  },
  {
    name: 'square', title: 'Square with corner spaces', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Rnd 1: ch 4, join to form a ring, ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of ch-3. (12 dc)
Rnd 2: ch 3, dc in next 2 sts, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 3 sts; rep from * 2 times more, (2 dc, ch 2, 2 dc) in next ch-2 sp, join with sl st in top of ch-3. (28 dc)
Rnd 3: ch 3, dc in next 4 sts, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 7 sts; rep from * 2 times more, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 2 sts, join with sl st in top of ch-3. (44 dc)`,
  },
  {
    name: 'oval-sc', title: 'Oval round both sides of a foundation chain', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Foundation: ch 9.
Rnd 1: sc in 2nd ch from hook, sc in next 6 ch, 3 sc in last ch, working on the other side of the foundation chain, sc in next 6 ch, 2 sc in next ch, join with sl st in first st. (18 sc)
Rnd 2: ch 1, 2 sc in next st, sc in next 6 sts, 2 sc in each of next 3 sts, sc in next 6 sts, 2 sc in each of next 2 sts, join with sl st in first st. (24 sc)
Rnd 3: ch 1, sc in next st, 2 sc in next st, sc in next 6 sts, (sc in next st, 2 sc in next st) 3 times, sc in next 6 sts, (sc in next st, 2 sc in next st) 2 times, join with sl st in first st. (30 sc)`,
  },
  {
    name: 'oval-dc', title: 'Oval in double crochet', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Foundation: ch 10.
Rnd 1: dc in 4th ch from hook, dc in next 5 ch, 6 dc in last ch, working on the other side of the foundation chain, dc in next 5 ch, 5 dc in next ch, join with sl st in top of ch-3. (23 dc)
Rnd 2: ch 3, dc in next 6 sts, 2 dc in each of next 6 sts, dc in next 5 sts, 2 dc in each of next 5 sts, join with sl st in top of ch-3.`,
  },
  {
    name: 'tube', title: 'Tube, joined rounds, cut at their start', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Foundation: ch 16, join to form a ring.
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (16 sc)
Rnds 2-3: ch 1, sc in each st around, join with sl st in first st. (16 sc)
Rnd 4: ch 3, dc in next st and in each st around, join with sl st in top of ch-3. (16 dc)`,
  },
  {
    name: 'tube-spiral', title: 'Tube in a spiral, rising', group: 'rounds', look: { fills: 'none', grid: false, spiral: true },
    text: `Foundation: ch 16, join to form a ring.
Rnd 1: sc in each ch around. (16 sc)
Rnds 2-5: sc in each st around. (16 sc)`,
  },
  {
    name: 'tube-lean', title: 'Tube with the lean of unturned rounds', group: 'rounds', look: { fills: 'none', grid: false, leanStitches: 0.25 },
    text: `Foundation: ch 16, join to form a ring.
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (16 sc)
Rnds 2-5: ch 1, sc in each st around, join with sl st in first st. (16 sc)`,
  },
  {
    name: 'flare', title: 'Tube that widens', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Foundation: ch 18, join to form a ring.
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (18 sc)
Rnd 2: ch 1, (sc in next 5 sts, 2 sc in next st) 3 times, join with sl st in first st. (21 sc)
Rnd 3: ch 1, (sc in next 6 sts, 2 sc in next st) 3 times, join with sl st in first st. (24 sc)
Rnd 4: ch 1, sc in each st around, join with sl st in first st. (24 sc)`,
  },
  {
    name: 'toe', title: 'Toe, unrolled', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Foundation: ch 20, join to form a ring.
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (20 sc)
Rnd 2: ch 1, (sc2tog, sc in next 6 sts, sc2tog) 2 times, join with sl st in first st. (16 sts)
Rnd 3: ch 1, sc in each st around, join with sl st in first st. (16 sts)
Rnd 4: ch 1, (sc2tog, sc in next 4 sts, sc2tog) 2 times, join with sl st in first st. (12 sts)`,
  },
  {
    name: 'toe-inward', title: 'Toe seen from its tip', group: 'rounds', look: { fills: 'none', grid: false, rounds: 'disc' },
    text: `Foundation: ch 36, join to form a ring.
Rnd 1: ch 1, sc in each ch around, join with sl st in first st. (36 sc)
Rnd 2: ch 1, (sc2tog, sc in next 14 sts, sc2tog) 2 times, join with sl st in first st. (32 sts)
Rnd 3: ch 1, (sc2tog, sc in next 12 sts, sc2tog) 2 times, join with sl st in first st. (28 sts)
Rnd 4: ch 1, (sc2tog, sc in next 10 sts, sc2tog) 2 times, join with sl st in first st. (24 sts)
Rnd 5: ch 1, (sc2tog, sc in next 8 sts, sc2tog) 2 times, join with sl st in first st. (20 sts)
Rnd 6: ch 1, (sc2tog, sc in next 6 sts, sc2tog) 2 times, join with sl st in first st. (16 sts)
Rnd 7: ch 1, (sc2tog, sc in next 4 sts, sc2tog) 2 times, join with sl st in first st. (12 sts)
Rnd 8: ch 1, (sc2tog, sc in next 2 sts, sc2tog) 2 times, join with sl st in first st. (8 sts)`,
  },
  {
    name: 'closed-toe', title: 'Tube that is closed at its start', group: 'rounds', look: { fills: 'none', grid: false },
    text: `Rnd 1: magic ring, 6 sc in ring, join with sl st in first st. (6 sc)
Rnd 2: ch 1, 2 sc in each st around, join with sl st in first st. (12 sc)
Rnds 3-8: ch 1, sc in each st around, join with sl st in first st. (12 sc)`,
  },
];
