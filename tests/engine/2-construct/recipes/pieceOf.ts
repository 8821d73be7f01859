import type { Measure, MeasureName } from '../../../../src/engine/1-pattern/pieceFacts.ts';
import type { Gauge, Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { makePiece, type MadePiece } from '../../../../src/engine/2-construct/recipes/makePiece.ts';
import type { PieceRequest, PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import type { Fabric } from '../../../../src/engine/3-fabric/fabric.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../../src/engine/4-colour/colour.ts';
import type { Finding } from '../../../../src/engine/notation/finding.ts';
import { check } from '../../../../src/engine/readings/checks/check.ts';
import { sizeReport, type SizeReport } from '../../../../src/engine/readings/sizes/sizeReport.ts';

export const GAUGE: Gauge = { stitches: 18, rows: 20, overCm: 10, stitch: 'sc' };
export const YARNS: Pattern['yarns'] = ['A', 'B', 'C'].map((letter) => ({ letter, name: letter, colour: '#4b5a6b', mark: 'none' }));

/** A measurement without ease. */
export function measure(name: MeasureName, ...cm: readonly (number | null)[]): Measure {
  return { name, cm, easePercent: 0, easeCm: 0 };
}

/** A request with a middle gauge, one size for each number of the first measurement, and nothing pinned. */
export function requestOf(settings: PieceSettings, measures: readonly Measure[], more: Partial<PieceRequest> = {}): PieceRequest {
  return { settings, gauge: GAUGE, swatches: [], sizes: measures[0]!.cm.map((_, i) => `${i + 1}`), measures, pins: {}, ...more };
}

export interface WorkedPiece {
  readonly made: MadePiece;
  readonly pattern: Pattern;
  readonly fabrics: readonly Fabric[];
  readonly findings: readonly Finding[];
  readonly reports: readonly SizeReport[];
}

/** Makes a piece, works it in every size and measures it. */
export function pieceOf(request: PieceRequest, terms: Pattern['terms'] = 'us'): WorkedPiece {
  const made = makePiece(request, terms);
  const pattern: Pattern = {
    id: 'piece', title: 'Piece', designer: '', terms, gauge: request.gauge, hookMm: 4, yarns: YARNS, sizes: request.sizes, hdcTurningChainCounts: true, notes: [],
    sections: made.sections, motifs: [], placements: [], cells: [],
  };
  const fabrics = pattern.sizes.map((_, size) => work(construct(pattern, size)));
  const colours = fabrics.map((fabric, size) => colour(pattern, fabric, size));
  return {
    made, pattern, fabrics,
    findings: fabrics.flatMap((fabric, size) => check(pattern, fabric, colours[size]!)),
    reports: fabrics.map((fabric, size) => sizeReport(pattern, fabric, colours[size]!, size, { swatches: request.swatches, measures: request.measures })),
  };
}

/** What each row of a section made in a size. */
export function madeIn({ fabrics }: WorkedPiece, section: string, size = 0): number[] {
  const fabric = fabrics[size]!;
  const index = fabric.sections.findIndex(({ id }) => id === section);
  return fabric.rows.filter((row) => row.section === index && row.word !== 'step' && row.word !== 'foundation').map((row) => row.made);
}
