import { COLOUR_SAMPLES } from './colourSamples.ts';
import { HEEL_SAMPLES } from './heelSamples.ts';
import { PIECE_SAMPLES } from './pieceSamples.ts';
import { ROUND_SAMPLES } from './roundSamples.ts';
import { ROW_SAMPLES } from './rowSamples.ts';
import type { Sample } from './sample.ts';
import { TEXTURE_SAMPLES } from './textureSamples.ts';

/** Every sample chart, in the order of the gallery. The tests keep each one as a file. */
export const SAMPLES: readonly Sample[] = [...ROW_SAMPLES, ...TEXTURE_SAMPLES, ...ROUND_SAMPLES, ...HEEL_SAMPLES, ...PIECE_SAMPLES, ...COLOUR_SAMPLES];
