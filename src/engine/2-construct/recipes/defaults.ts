import type { DiscSettings, EdgeSettings, PanelSettings, SockSettings, TubeSettings } from './settings.ts';

const NO_MOTIF = { repeat: 0, edge: 0 } as const;

/** No edge but the first row. */
export const NO_EDGE: EdgeSettings = { edge: 'none', heightCm: 0, yarn: 'A' };

/** A boot sock in its usual make: flat leg with ridges at the cuff, heel in short rows on half of the round, toe half and half. */
export const SOCK: SockSettings = {
  kind: 'sock',
  cuff: { edge: 'backLoops', heightCm: 3.5, yarn: 'A' },
  leg: { way: 'flat', calf: false, yarn: 'A', motif: NO_MOTIF },
  heel: { kind: 'shortRows', share: 0.5, turn: 'atOnce', step: 1, corners: false, gusset: 'second', yarn: 'A' },
  foot: { yarn: 'A' },
  toe: { pace: 'half', evens: null, inStep: true, close: 'drawn', yarn: 'A' },
  loop: null,
  fringe: null,
};

/** A flat panel of single crochet. */
export const PANEL: PanelSettings = { kind: 'panel', stitch: 'sc', yarn: 'A', motif: NO_MOTIF, bobbles: null, loop: null, fringe: null };

/** A tube in a spiral without edges. */
export const TUBE: TubeSettings = { kind: 'tube', start: NO_EDGE, end: NO_EDGE, yarn: 'A', motif: NO_MOTIF, changes: 'staggered', loop: null };

/** A disc of single crochet with the same number more in each round. */
export const DISC: DiscSettings = { kind: 'disc', stitch: 'sc', more: 'constant', changes: 'stacked', yarn: 'A', brim: NO_EDGE };
