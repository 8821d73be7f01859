import type { Measure, MeasureName, Swatch } from '../../1-pattern/pieceFacts.ts';
import type { Pattern } from '../../1-pattern/pattern.ts';
import type { Origin } from '../../2-construct/recipes/origin.ts';
import { Reckoning } from '../../2-construct/recipes/reckoning.ts';
import { wanted } from '../../2-construct/recipes/wanted.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Colours } from '../../4-colour/colours.ts';
import { doubledSections } from '../../6-drawing/schematic/doubledSections.ts';
import { finishedMeasures, type FinishedMeasure } from '../../6-drawing/schematic/finishedMeasures.ts';
import { rowMeasures } from '../../6-drawing/schematic/rowMeasures.ts';
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
}

/** A finished measurement beside the one that was wanted. */
export interface FinishedSize extends FinishedMeasure {
  /** With its ease; null where none is asked for. */
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
}

/** The measurements of a worked size from its fabric, beside what was wanted. Linear in stitches. */
export function sizeReport(pattern: Pattern, fabric: Fabric, colours: Colours, size: number, facts: SizeFacts): SizeReport {
  const rows = rowMeasures(fabric, { gauge: pattern.gauge, swatches: facts.swatches, yarn: colours.yarn });
  const sections = sectionMeasures(fabric, rows);
  const r = new Reckoning(size);
  const finished = finishedMeasures(fabric, sections, doubledSections(pattern));
  return {
    size, name: pattern.sizes[size] ?? '',
    sections: sections.filter((section) => section.rows.length > 0).map((section) => {
      const widest = section.rows.reduce((most, row) => (row.widthMm > most.widthMm ? row : most), section.rows[0]!);
      return {
        section: pattern.sections[section.section]!.id, name: section.name, kind: section.kind, rows: section.rows.length,
        stitches: { first: section.rows[0]!.stitches, last: section.rows.at(-1)!.stitches, most: Math.max(...section.rows.map((row) => row.stitches)) },
        widthCm: widest.widthMm / 10, heightCm: heightOf(section.rows) / 10,
      };
    }),
    finished: finished.map((one) => {
      // Measurements are asked of the first piece; loops and heels made apart have none.
      // The narrowest row of a leg is its ankle.
      const name: MeasureName = one.name === 'opening' ? 'ankle' : one.name;
      const asked = one.piece === 0 ? wanted(r, facts.measures, name) : null;
      return { ...one, wanted: asked, differenceCm: asked ? one.cm - asked.value : null };
    }),
    motifs: motifCosts(pattern, colours),
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
