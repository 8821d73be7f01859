import type { Measure, MeasureName } from '../../1-pattern/pieceFacts.ts';
import type { Gauge, Pattern, Section } from '../../1-pattern/pattern.ts';
import { alongChain, chain, withYarn } from './clauses.ts';
import { DISC, PANEL, SOCK, TUBE } from './defaults.ts';
import { joinSizes } from './joinSizes.ts';
import { foundation, rows } from './madeRow.ts';
import { makePiece } from './makePiece.ts';
import type { PieceSettings } from './settings.ts';

/** Constructions that a pattern can be started from with three measurements. */
export type Construction = 'bootSock' | 'legWarmer' | 'flatPanel' | 'disc' | 'empty';

/** What to start with. Measurements in cm; girth is the width of a flat panel, the diameter of a disc. */
export interface StartSettings {
  readonly title: string;
  readonly gauge: Gauge;
  readonly hookMm: number | null;
  readonly sizes: readonly { readonly name: string; readonly girthCm: number; readonly heightCm: number; readonly footCm: number }[];
  readonly yarns: Pattern['yarns'];
}

const ROUTES: Readonly<Record<Exclude<Construction, 'empty'>, { readonly settings: PieceSettings; readonly girth: MeasureName; readonly height: MeasureName; readonly foot: MeasureName | null }>> = {
  bootSock: { settings: SOCK, girth: 'footGirth', height: 'legLength', foot: 'footLength' },
  legWarmer: { settings: TUBE, girth: 'girth', height: 'height', foot: null },
  flatPanel: { settings: PANEL, girth: 'width', height: 'height', foot: null },
  disc: { settings: DISC, girth: 'across', height: 'height', foot: null },
};

/**
 * A workable pattern of a construction in its usual make, in the first yarn. The id is the caller's to set. Refuses settings
 * without a size, a yarn or a gauge above 0, which are a programmer's slip: the form checks them first.
 */
export function startPattern(construction: Construction, settings: StartSettings): Pattern {
  const { gauge, sizes, yarns } = settings;
  if (sizes.length < 1) throw new RangeError('0 sizes given, at least 1 is needed');
  if (yarns.length < 1) throw new RangeError('0 yarns given, at least 1 is needed');
  if (!(gauge.stitches > 0 && gauge.rows > 0 && gauge.overCm > 0)) throw new RangeError(`gauge ${gauge.stitches} × ${gauge.rows} over ${gauge.overCm} cm, above 0 expected`);
  const letter = yarns[0]!.letter;
  const measures = construction === 'empty' ? null : measuresOf(construction, settings);
  return {
    id: 'pattern', title: settings.title, designer: '', terms: 'us', gauge, hookMm: settings.hookMm, yarns, sizes: sizes.map((size) => size.name), hdcTurningChainCounts: true, notes: [],
    sections: construction === 'empty' || !measures ? [emptySection(letter, sizes.length)] : sectionsOf(construction, settings, measures, letter),
    motifs: [], placements: [], cells: [], ...(measures ? { piece: { measures } } : {}),
  };
}

function measuresOf(construction: Exclude<Construction, 'empty'>, { sizes }: StartSettings): readonly Measure[] {
  const { girth, height, foot } = ROUTES[construction];
  const measure = (name: MeasureName, cm: readonly number[]): Measure => ({ name, cm, easePercent: 0, easeCm: 0 });
  return [measure(girth, sizes.map((size) => size.girthCm)), measure(height, sizes.map((size) => size.heightCm)), ...(foot ? [measure(foot, sizes.map((size) => size.footCm))] : [])];
}

function sectionsOf(construction: Exclude<Construction, 'empty'>, { gauge, sizes }: StartSettings, measures: readonly Measure[], letter: string): readonly Section[] {
  const { settings } = ROUTES[construction];
  return makePiece({ settings: inYarn(settings, letter), gauge, swatches: [], sizes: sizes.map((size) => size.name), measures, pins: {} }).sections;
}

/** Settings with every yarn that they name exchanged for one. */
function inYarn<T>(value: T, letter: string): T {
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, name === 'yarn' ? letter : inYarn(inner, letter)])) as T;
}

function emptySection(letter: string, sizes: number): Section {
  const made = [foundation([withYarn(letter), chain(21)]), rows('row1', 1, alongChain('sc', 2), 20, 'sc', 'RS')];
  return { id: 'piece', name: 'PIECE', remark: '', lines: joinSizes('piece', Array.from({ length: sizes }, () => made), 'us'), recipe: null };
}
