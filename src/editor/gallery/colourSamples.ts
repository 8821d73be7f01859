import type { Sample } from './sample.ts';

const YARNS = `Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6
Yarn C: lamp orange #d9772b
`;

const PANEL = `${YARNS}
PANEL
Foundation: with A, ch 15.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (14 sc)
Row 2: ch 1, turn, (A sc 3, B sc 1, A sc 3) 2 times. (14 sc)
Row 3: ch 1, turn, (A sc 2, B sc 3, A sc 2) 2 times. (14 sc)
Row 4: ch 1, turn, (A sc 1, B sc 2, C sc 1, B sc 2, A sc 1) 2 times. (14 sc)
Row 5: ch 1, turn, (A sc 2, B sc 3, A sc 2) 2 times. (14 sc)
Row 6: ch 1, turn, (A sc 3, B sc 1, A sc 3) 2 times. (14 sc)
Row 7: ch 1, turn, with A, sc in each st across. (14 sc)`;

const BRACKET = [{ from: 1, to: 7, text: '' }];

/** Colourwork: columns stay columns, in colour and in black and white. */
export const COLOUR_SAMPLES: readonly Sample[] = [
  { name: 'colour-panel', title: 'Panel, cells only', group: 'colour', text: PANEL, look: { symbols: 'none', brackets: BRACKET } },
  { name: 'colour-panel-symbols', title: 'Panel with symbols', group: 'colour', text: PANEL, look: { brackets: BRACKET } },
  { name: 'colour-panel-mono', title: 'Panel in black and white', group: 'colour', text: PANEL, look: { mono: true, symbols: 'none', brackets: BRACKET } },
  { name: 'colour-panel-mono-symbols', title: 'Panel in black and white with symbols', group: 'colour', text: PANEL, look: { mono: true } },
  { name: 'colour-panel-large', title: 'Large print', group: 'colour', text: PANEL, look: { symbols: 'none', large: true, mmPerStitch: 8 } },
  {
    name: 'colour-tube', title: 'Colourwork in the round', group: 'colour', look: { symbols: 'none' },
    text: `${YARNS}
TUBE
Foundation: with A, ch 16, join to form a ring.
Rnd 1: sc in each ch around. (16 sc)
Rnd 2: (A sc 1, B sc 2, A sc 1) 4 times. (16 sc)
Rnd 3: (B sc 1, C sc 2, B sc 1) 4 times. (16 sc)
Rnd 4: (A sc 1, B sc 2, A sc 1) 4 times. (16 sc)
Rnd 5: with A, sc in each st around. (16 sc)`,
  },
];
