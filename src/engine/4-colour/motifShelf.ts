import type { Motif } from '../1-pattern/pattern.ts';

/** A motif to start from. Drawn for Turnwork; letters stand for the yarns of the demo (A slate, B chalk, C lamp orange). */
export interface ShelfMotif extends Motif {
  /** What it is good for, in a few words. */
  readonly use: string;
}

/** The motifs that come with the tool. */
export const MOTIF_SHELF: readonly ShelfMotif[] = [
  {
    id: 'waves',
    name: 'Waves',
    use: 'a border, repeats every 8 stitches',
    cells: [
      '..BBB...',
      '.BBBBB..',
      'BBBB.BB.',
      'BBB...B.',
      'BBBB....',
      'BBBBBB.B',
      'BBBBBBBB',
    ],
  },
  {
    id: 'puffin',
    name: 'Puffin',
    use: 'a figure, alone or in a row',
    cells: [
      '.....AAAA....',
      '....AAAAAA...',
      '...AABBBAAA..',
      '..CABBABBAA..',
      '.CCABBABBAA..',
      '.CCABBABBAA..',
      '.CCABBBBAAAA.',
      '...AAAAAAAAA.',
      '..ABBBBAAAAAA',
      '..ABBBBBAAAAA',
      '..ABBBBBBAAAA',
      '...ABBBBBAAAA',
      '....AABBAA.A.',
      '....CC.CC....',
    ],
  },
  {
    id: 'sail',
    name: 'Sail',
    use: 'a figure, alone or in a row',
    cells: [
      '.....B.....',
      '....BB.....',
      '....BB.B...',
      '...BBB.BB..',
      '...BBB.BB..',
      '..BBBB.BBB.',
      '..BBBB.BBB.',
      '.BBBBB.BBBB',
      '...........',
      'CCCCCCCCCCC',
      '.CCCCCCCCC.',
      '..CCCCCCC..',
    ],
  },
  {
    id: 'gull',
    name: 'Gull',
    use: 'a small figure, good half-dropped',
    cells: [
      'BB.........BB',
      '.BBBB...BBBB.',
      '...BBB.BBB...',
      '.....BBB.....',
      '......B......',
    ],
  },
  {
    id: 'rope',
    name: 'Rope',
    use: 'an edging, repeats every 4 stitches',
    cells: [
      '..BB',
      '.BBB',
      'BBB.',
      'BB..',
    ],
  },
  {
    id: 'pebble',
    name: 'Pebble',
    use: 'an all-over ground, 8 stitches and 8 rows',
    cells: [
      '..BB....',
      '.BBBB...',
      '..BB....',
      '........',
      '......BB',
      'B....BBB',
      '......BB',
      '........',
    ],
  },
  {
    id: 'star',
    name: 'Star',
    use: 'a figure, the same from every side',
    cells: [
      '.....B.....',
      '.....B.....',
      '.C..BBB..C.',
      '..C.BBB.C..',
      '..BBBCBBB..',
      'BBBBCCCBBBB',
      '..BBBCBBB..',
      '..C.BBB.C..',
      '.C..BBB..C.',
      '.....B.....',
      '.....B.....',
    ],
  },
];
