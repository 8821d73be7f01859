import type { Measure, MeasureName, Swatch } from '../../1-pattern/pieceFacts.ts';
import type { Pattern, Section } from '../../1-pattern/pattern.ts';
import type { Origin } from '../../2-construct/recipes/origin.ts';
import { Reckoning } from '../../2-construct/recipes/reckoning.ts';
import type { PieceSettings } from '../../2-construct/recipes/settings.ts';
import { settingsOf } from '../../2-construct/recipes/settingsOf.ts';
import { wanted } from '../../2-construct/recipes/wanted.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Colours } from '../../4-colour/colours.ts';
import { doubledSections } from '../../6-drawing/schematic/doubledSections.ts';
import { finishedMeasures, type FinishedMeasure } from '../../6-drawing/schematic/finishedMeasures.ts';
import { rowMeasures } from '../../6-drawing/schematic/rowMeasures.ts';
import { wholeRows } from '../../6-drawing/schematic/sockParts.ts';
import { sectionWants, type SectionWants } from './sectionWants.ts';
import { heightOf, sectionMeasures, type SectionKind } from '../../6-drawing/schematic/sectionMeasures.ts';

/** What a size of a pattern came out as. */
export interface SizeReport {
  readonly size: number;
  readonly name: string;
  readonly sections: readonly SectionSize[];
  readonly finished: readonly FinishedSize[];
  readonly motifs: readonly MotifCost[];
}

/** A section in one size: its rows, its stitches at start, end and widest, and what it measures laid out flat. */
export interface SectionSize {
  readonly section: string;
  readonly name: string;
  readonly kind: SectionKind;
  readonly rows: number;
  readonly stitches: { readonly first: number; readonly last: number; readonly most: number };
  /** Of the widest row; a girth where the section is in rounds. */
  readonly widthCm: number;
  readonly heightCm: number;
  /** Beside what the measurements ask of it; null where no recipe made it, or its numbers are not known. */
  readonly wanted: SectionDifference | null;
}

/** How far a section's whole stitches and rows are off the exact numbers that the measurements ask for. */
export interface SectionDifference {
  /** Exact counts; null where nothing asks. */
  readonly stitches: number | null;
  readonly rows: number | null;
  /** Made less asked for, in cm of that section's stitches and rows. */
  readonly widthCm: number | null;
  readonly heightCm: number | null;
  readonly wants: SectionWants;
}

/** A finished measurement beside the one that was wanted. */
export interface FinishedSize extends FinishedMeasure {
  /** Section that its piece begins with. */
  readonly section: string;
  /** With its ease; null where none is asked for. An opening or a top that nothing else asks of is to be as wide as the foot, a far edge as the near one. */
  readonly wanted: Origin | null;
  /** Finished less wanted. */
  readonly differenceCm: number | null;
}

/** What a motif asks of the stitches it is laid on. */
export interface MotifCost {
  readonly placement: string;
  readonly motif: string;
  readonly stitches: number;
  /** Stitches that no whole repeat covers. */
  readonly over: number;
  readonly down: number;
  readonly up: number;
  /** How much narrower or wider the piece would be with those. */
  readonly downCm: number;
  readonly upCm: number;
}

/** What to compare a worked size with. */
export interface SizeFacts {
  readonly swatches: readonly Swatch[];
  readonly measures: readonly Measure[];
  /** The numbers that the size was made by, where they are known. */
  readonly numbers?: ReadonlyMap<string, Origin>;
}

/** The measurements of a worked size from its fabric, beside what was wanted. Linear in stitches. */
export function sizeReport(pattern: Pattern, fabric: Fabric, colours: Colours, size: number, facts: SizeFacts): SizeReport {
  const rows = rowMeasures(fabric, { gauge: pattern.gauge, swatches: facts.swatches, yarn: colours.yarn });
  const sections = sectionMeasures(fabric, rows);
  const r = new Reckoning(size);
  const finished = finishedMeasures(fabric, sections, doubledSections(pattern));
  const settings = settingsOf(pattern);
  return {
    size, name: pattern.sizes[size] ?? '',
    sections: sections.filter((section) => section.rows.length > 0).map((section) => {
      const widest = section.rows.reduce((most, row) => (row.widthMm > most.widthMm ? row : most), section.rows[0]!);
      const of = pattern.sections[section.section]!;
      const made: Omit<SectionSize, 'wanted'> = {
        section: of.id, name: section.name, kind: section.kind, rows: section.rows.length,
        stitches: { first: section.rows[0]!.stitches, last: wholeRows(fabric, section.rows).at(-1)!.stitches, most: Math.max(...section.rows.map((row) => row.stitches)) },
        widthCm: widest.widthMm / 10, heightCm: heightOf(section.rows) / 10,
      };
      const wants = facts.numbers ? sectionWants(of, facts.numbers) : null;
      return { ...made, wanted: wants && differenceOf(made, wants, widest.widthMm / 10 / widest.stitches) };
    }),
    finished: finished.map((one) => {
      const first = pattern.sections[sections.find(({ piece }) => piece === one.piece)!.section]!;
      const asked = one.piece === 0 ? wantedOf(r, facts.measures, settings, one.name) : wantedOfStrip(r, first, one.name);
      return { ...one, section: first.id, wanted: asked, differenceCm: asked ? one.cm - asked.value : null };
    }),
    motifs: motifCosts(pattern, colours),
  };
}

/** What a measurement asks of the first piece. The narrowest row of a leg is its ankle. */
function wantedOf(r: Reckoning, measures: readonly Measure[], settings: PieceSettings | null, name: FinishedMeasure['name']): Origin | null {
  const own: MeasureName = name === 'opening' ? 'ankle' : name;
  const asked = wanted(r, measures, own);
  if (asked || !settings) return asked;
  if (settings.kind === 'sock' && (name === 'opening' || (name === 'calf' && !settings.leg.calf))) return wanted(r, measures, 'footGirth');
  if (settings.kind === 'panel' && name === 'topWidth') return wanted(r, measures, 'width');
  return settings.kind === 'tube' && name === 'endGirth' ? wanted(r, measures, 'girth') : null;
}

/** What is asked of a strip that is sewn on: how long it is. */
function wantedOfStrip(r: Reckoning, { recipe }: Section, name: FinishedMeasure['name']): Origin | null {
  const cm = recipe?.settings['cm'];
  return recipe?.name.endsWith('.loop') && (name === 'width' || name === 'topWidth') && typeof cm === 'number' ? r.given('loop.cm', 'length of the strip', 'cm', cm, 'given') : null;
}

function differenceOf(made: Omit<SectionSize, 'wanted'>, wants: SectionWants, stitchCm: number): SectionDifference {
  const { stitches, rows } = wants;
  return {
    stitches: stitches?.exact ?? null, rows: rows?.exact ?? null, wants,
    widthCm: stitches && (made.stitches[stitches.of] - stitches.exact) * stitchCm,
    heightCm: rows && ((rows.origin.value - rows.exact) * made.heightCm) / made.rows,
  };
}

function motifCosts(pattern: Pattern, colours: Colours): readonly MotifCost[] {
  const stitchCm = pattern.gauge.overCm / pattern.gauge.stitches;
  return colours.fits.flatMap((fit) => {
    const placement = pattern.placements.find((one) => one.id === fit.placement);
    const motif = pattern.motifs.find((one) => one.id === placement?.motif);
    if (!motif || fit.width === 0) return [];
    const over = Math.max(0, fit.leftOver.left) + Math.max(0, fit.leftOver.right);
    return [{
      placement: fit.placement, motif: motif.name, stitches: fit.width, over, down: fit.nearest.down, up: fit.nearest.up,
      downCm: (fit.nearest.down - fit.width) * stitchCm, upCm: (fit.nearest.up - fit.width) * stitchCm,
    }];
  });
}
