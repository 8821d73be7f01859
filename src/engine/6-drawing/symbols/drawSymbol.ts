import type { StitchKind } from '../../craft/stitches.ts';
import type { Stroke } from '../drawing.ts';
import { bobble, cluster, popcorn, puff } from './bunch.ts';
import { chain } from './chain.ts';
import { extended, extendedSingle } from './extended.ts';
import { fan, vStitch } from './fan.ts';
import type { SymbolDrawing, SymbolFrame } from './frame.ts';
import { magicRing } from './magicRing.ts';
import { picot } from './picot.ts';
import { post } from './post.ts';
import { reverseSingle, singleCrochet, twistedSingle } from './singleCrochet.ts';
import { slipStitch } from './slipStitch.ts';
import type { SymbolCall } from './symbolCall.ts';
import { loopMark, postHook } from './where.ts';

/** The drawing of each stitch; where the two families differ (`SymbolSet`), the drawing looks at its frame. */
const SYMBOLS = {
  ring: magicRing, ch: chain, slst: slipStitch, sc: singleCrochet, hdc: post, dc: post, tr: post, dtr: post, trtr: post,
  esc: extendedSingle, ehdc: extended, edc: extended, etr: extended, rsc: reverseSingle, tsc: twistedSingle,
  bobble, puff, popcorn, cluster, shell: fan, vst: vStitch, picot,
} satisfies Record<StitchKind, SymbolDrawing>;

/** The strokes of a symbol in its frame, with the marks for the loop or post it is worked into. */
export function drawSymbol(call: SymbolCall, frame: SymbolFrame): Stroke[] {
  const strokes = SYMBOLS[call.kind](frame);
  if (call.loop !== 'both') strokes.push(loopMark(frame, call.loop));
  if (call.post !== 'none') strokes.push(...postHook(frame, call.post));
  return strokes;
}
