import type { Measure, MeasureName } from '../../engine/1-pattern/pieceFacts.ts';
import type { PieceSettings } from '../../engine/2-construct/recipes/settings.ts';

/** The measurements that a piece can be made to. */
export interface Needs {
  readonly needed: readonly MeasureName[];
  /** Heeded where they are given. */
  readonly heeded: readonly MeasureName[];
}

const NEEDS: Readonly<Record<PieceSettings['kind'], Needs>> = {
  sock: { needed: ['footGirth', 'footLength', 'legLength'], heeded: ['ankle', 'heelDiagonal'] },
  panel: { needed: ['width', 'height'], heeded: ['topWidth'] },
  tube: { needed: ['girth', 'height'], heeded: ['endGirth'] },
  disc: { needed: ['across'], heeded: ['girth', 'height'] },
  oval: { needed: ['width', 'length'], heeded: [] },
  ball: { needed: ['across'], heeded: [] },
};

/** What the piece of these settings is made to: a sock to its calf where the leg is shaped for it; a cap to its girth, and needs no width across then. */
export function neededMeasures(settings: PieceSettings, measures: readonly Measure[]): Needs {
  const needs = NEEDS[settings.kind];
  if (settings.kind === 'sock' && settings.leg.calf) return { needed: needs.needed, heeded: ['calf', ...needs.heeded] };
  const girth = measures.find((one) => one.name === 'girth');
  return settings.kind === 'disc' && girth?.cm.some((cm) => cm !== null) ? { needed: ['girth'], heeded: ['across', 'height'] } : needs;
}

/** A measurement that the piece can't be made without, and the sizes (indices) that lack it. */
export interface Missing {
  readonly name: MeasureName;
  readonly sizes: readonly number[];
}

/** What is missing to make the piece in every size. */
export function missingMeasures(settings: PieceSettings, measures: readonly Measure[], sizes: number): readonly Missing[] {
  return neededMeasures(settings, measures).needed.flatMap((name) => {
    const cm = measures.find((one) => one.name === name)?.cm ?? [];
    const lacking = Array.from({ length: sizes }, (_, size) => size).filter((size) => (cm[size] ?? null) === null);
    return lacking.length > 0 ? [{ name, sizes: lacking }] : [];
  });
}
