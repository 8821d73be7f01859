import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { changeName, type StitchChange } from '../bench/commands/stitchChange.ts';

/** How a motif is to lie in the row: as often as it fits from the centre or an edge, spread over the whole row, or once where it is touched. */
export type MotifLie = 'centre' | 'left' | 'right' | 'spread' | 'once';

/** How a yarn is laid: where the stroke goes, in a straight line along the row, or on all that hangs together in one yarn. */
export type LaidHow = 'free' | 'straight' | 'fill';

/** What the next touch of the chart does. */
export type Choice =
  | { readonly kind: 'point' }
  | { readonly kind: 'yarn'; readonly letter: string }
  | { readonly kind: 'motif'; readonly motif: string; readonly lie: MotifLie; readonly mirror: boolean }
  /** A placed motif, by the id of its placement, that goes where it is dragged. */
  | { readonly kind: 'move'; readonly placement: string }
  | { readonly kind: 'stitch'; readonly change: StitchChange }
  | { readonly kind: 'turn' }
  /** A block of stitches, from corner to corner. */
  | { readonly kind: 'block' }
  | { readonly kind: 'pickUp' };

/** What the next touch does to a stitch, as a sentence. */
function changeSentence(change: StitchChange, pattern: Pattern): string {
  switch (change.kind) {
    case 'increase':
      return 'Increase here: one more in the place you touch; the rows above follow.';
    case 'decrease':
      return 'Decrease here: the stitch you touch and the next one together; the rows above follow.';
    case 'replace':
      return `${changeName(change, pattern.terms)} in the place of the stitch you touch.`;
    case 'group':
      return `${changeName(change, pattern.terms)}, that of the stitch you touch.`;
  }
}

const LAID: Readonly<Record<LaidHow, string>> = {
  free: '. Drag over stitches.',
  straight: ' in a straight line: drag along a row.',
  fill: ' on all stitches that hang together in the yarn of the one you touch, row over row.',
};

/** The choice as a sentence under the chart. */
export function choiceSentence(choice: Choice, pattern: Pattern, laid: LaidHow = 'free'): string {
  switch (choice.kind) {
    case 'point':
      return 'Point at a stitch to see its row in all three readings.';
    case 'yarn': {
      const yarn = pattern.yarns.find((each) => each.letter === choice.letter);
      return `Lay ${choice.letter}${yarn ? ` ${yarn.name}` : ''}${LAID[laid]}`;
    }
    case 'motif': {
      const motif = pattern.motifs.find((each) => each.id === choice.motif);
      return `Place ${motif?.name ?? 'the motif'}. Its bottom row goes on the row you touch.`;
    }
    case 'move': {
      const placed = pattern.placements.find((each) => each.id === choice.placement);
      const motif = pattern.motifs.find((each) => each.id === placed?.motif);
      return placed?.locked ? `${motif?.name ?? 'The motif'} is locked where it lies.` : `Move ${motif?.name ?? 'the motif'}: drag it over the chart.`;
    }
    case 'stitch':
      return changeSentence(choice.change, pattern);
    case 'turn':
      return 'Turn here: the row you touch stops after that stitch, and the rows above follow.';
    case 'block':
      return 'Choose a block of stitches: drag from corner to corner.';
    case 'pickUp':
      return 'Pick up the yarn of the stitch you touch.';
  }
}
