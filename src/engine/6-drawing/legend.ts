import type { Yarn } from '../1-pattern/pattern.ts';
import type { Terms } from '../craft/terms.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import type { Drawing, Glyph, Mark, MarkRole } from './drawing.ts';
import { legendGlyph } from './legendGlyph.ts';
import { SEEN_FROM_RIGHT } from './symbols/rightSide.ts';
import { symbolCall } from './symbols/symbolCall.ts';
import type { SymbolCall } from './symbols/symbolCall.ts';
import { symbolFullName, symbolName } from './symbols/symbolName.ts';

/** One line of a legend. */
export type LegendEntry =
  | { readonly kind: 'yarn'; readonly yarn: number; readonly text: string }
  /** A symbol as it stands by itself, in one of the drawing's inks. */
  | { readonly kind: 'stitch'; readonly glyph: Glyph; readonly ink: number; readonly ghost: boolean; readonly text: string }
  | { readonly kind: 'line' | 'area'; readonly role: MarkRole; readonly text: string };

/** What the legend needs besides the drawing. */
export interface LegendOptions {
  readonly terms: Terms;
  readonly yarns: readonly Yarn[];
  /** Yarn index per stitch number. */
  readonly yarnOf: Uint8Array;
}

/** A legend of only what the drawing uses: yarns in the pattern's order, stitches in the catalogue's order, then lines and bands. */
export function legend(fabric: Fabric, drawing: Drawing, { terms, yarns, yarnOf }: LegendOptions): LegendEntry[] {
  return [...yarnEntries(drawing, yarns, yarnOf), ...stitchEntries(fabric, drawing, terms), ...markEntries(fabric, drawing)];
}

function yarnEntries({ stitches }: Drawing, yarns: readonly Yarn[], yarnOf: Uint8Array): LegendEntry[] {
  const used = new Set<number>();
  for (let i = 0; i < stitches.count; i++) if (stitches.filled[i] && !stitches.ghost[i]) used.add(yarnOf[stitches.stitch[i]!] ?? 0);
  return yarns.flatMap(({ letter, name }, yarn) => (used.has(yarn) ? [{ kind: 'yarn', yarn, text: name ? `${letter} ${name}` : letter } satisfies LegendEntry] : []));
}

/** A stitch as the legend tells it apart: name, and whether it attaches or belongs to wrong-side rows. */
interface Seen {
  readonly text: string;
  readonly ink: number;
  readonly order: number;
  readonly glyph: Glyph;
}

const INK_WORDS = ['', ', wrong-side row', ', last of its row, into the next open stitch', ''] as const;
const SPIKE_WORDS = ', into a row further down';

function stitchEntries(fabric: Fabric, { stitches, cellWidthMm: w, cellHeightMm: h, symbols = 'us' }: Drawing, terms: Terms): LegendEntry[] {
  const seen = new Map<string, Seen>();
  for (let i = 0; i < stitches.count; i++) {
    if (stitches.glyph[i]! < 0 || stitches.ghost[i]) continue;
    const stitch = stitches.stitch[i]!;
    const call = symbolCall(fabric, stitch);
    const ink = stitches.ink[i]!;
    const short = symbolName(call, terms);
    const standing = call.kind === 'ch' && call.turning;
    // Chains look the same in every row; increases share their symbol's name with the plain stitch.
    const shownInk = call.kind === 'ch' || call.kind === 'slst' ? 0 : ink;
    const wrong = fabric.rows[fabric.row[stitch]!]?.side === 'WS' && (call.loop !== 'both' || call.post !== 'none');
    const key = `${short} ${standing} ${shownInk} ${wrong}`;
    if (seen.has(key)) continue;
    const pose = ink === 2 ? 'attaching' : ink === 3 && call.together === 1 ? 'shared' : 'plain';
    seen.set(key, { text: `${words(short, symbolFullName(call, terms), shownInk, call)}${wrong ? ` (worked as ${symbolName(turnedOver(call), terms)})` : ''}`, ink: shownInk, order: fabric.kind[stitch]! * 1000 + (standing ? 500 : 0) + call.together * 10 + shownInk, glyph: legendGlyph(call, pose, w, h, symbols) });
  }
  return [...seen.values()].sort((a, b) => a.order - b.order).map(({ text, ink, glyph }) => ({ kind: 'stitch', glyph, ink, ghost: false, text }));
}

function words(short: string, full: string, ink: number, { together, spike }: SymbolCall): string {
  const name = full === short || full === 'turning chain' ? full : `${short} = ${full}`;
  return `${name}${ink === 3 && together < 2 ? ', one of several in one stitch' : ink === 2 && spike ? SPIKE_WORDS : INK_WORDS[ink]}`;
}

/** The stitch as it is worked with the wrong side facing: front for back. */
function turnedOver(call: SymbolCall): SymbolCall {
  const { loop, post } = call;
  return { ...call, loop: loop === 'both' ? loop : SEEN_FROM_RIGHT.WS[loop], post: post === 'none' ? post : SEEN_FROM_RIGHT.WS[post] };
}

type MarkWords = readonly [role: MarkRole, kind: 'line' | 'area', text: string];

const MARK_WORDS: readonly MarkWords[] = [
  ['attach', 'area', 'last stitch of its row, into the next open stitch'],
  ['seam', 'line', 'seam, or start of the rounds'],
  ['seam', 'area', 'a round begins here, not joined'],
  ['centre', 'line', 'centre'],
  ['sizeLine', 'line', 'edges of the smaller sizes'],
];

function markEntries(fabric: Fabric, { marks, stitches, cellWidthMm: w, cellHeightMm: h, symbols = 'us' }: Drawing): LegendEntry[] {
  const has = (role: MarkRole, kind: Mark['kind']): boolean => marks.some((mark) => mark.role === role && mark.kind === kind);
  const reached = stitches.ink.includes(2) || has('attach', 'area');
  const open: MarkWords = ['open', 'area', reached ? 'stitches left open, worked into later' : 'stitches left open'];
  const entries: LegendEntry[] = [...MARK_WORDS.slice(0, 1), open, ...MARK_WORDS.slice(1)].flatMap(([role, kind, text]) => (has(role, kind) ? [{ kind, role, text }] : []));
  const isGhost = (i: number): boolean => stitches.ghost[i] === 1 && stitches.glyph[i]! >= 0;
  const drawn = Array.from({ length: stitches.count }, (_, i) => i).filter(isGhost);
  const ghost = drawn.find((i) => symbolCall(fabric, stitches.stitch[i]!).kind !== 'ch') ?? drawn[0] ?? -1;
  if (ghost >= 0) entries.push({ kind: 'stitch', glyph: legendGlyph(symbolCall(fabric, stitches.stitch[ghost]!), 'plain', w, h, symbols), ink: 0, ghost: true, text: 'grey: repeated, or of the section before' });
  return entries;
}
