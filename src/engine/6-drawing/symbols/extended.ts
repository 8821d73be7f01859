import { oval } from './frame.ts';
import type { SymbolDrawing, SymbolFrame } from './frame.ts';
import { post } from './post.ts';
import { singleCrochet } from './singleCrochet.ts';

/**
 * Extended stitches: the symbol of the stitch above the small oval of the chain that is made before it is closed. The tool's own drawing:
 * no sheet of either family could be read for them.
 */
export const extended: SymbolDrawing = (frame) => onChain(frame, post(raised(frame)));

/** Extended single crochet: a cross above the oval. */
export const extendedSingle: SymbolDrawing = (frame) => onChain(frame, singleCrochet(raised(frame)));

/** Height of the oval and the room it takes, in single-crochet heights. */
const CHAIN = 0.13;
const ROOM = 0.36;

function raised(frame: SymbolFrame): SymbolFrame {
  const up = Math.min(ROOM * frame.h, 0.3 * frame.length);
  return { ...frame, length: frame.length - up, feet: frame.feet.map(([x, y]) => [x, y - up] as const), shared: false };
}

function onChain(frame: SymbolFrame, above: ReturnType<SymbolDrawing>): ReturnType<SymbolDrawing> {
  const up = Math.min(ROOM * frame.h, 0.3 * frame.length);
  const ovals = frame.feet.map(([x, y]) => oval(x * 0.96, y - up / 2, 0.14 * frame.w, Math.min(CHAIN * frame.h, 0.42 * up)));
  return [...above, ...ovals];
}
