import type { Yarn } from '../../../src/engine/1-pattern/pattern.ts';
import type { Terms } from '../../../src/engine/craft/terms.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { gaugeAtScale } from '../../../src/engine/5-layout/gaugeAtScale.ts';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import type { LayOutOptions } from '../../../src/engine/5-layout/layOutSection.ts';
import { draw } from '../../../src/engine/6-drawing/draw.ts';
import type { DrawOptions } from '../../../src/engine/6-drawing/draw.ts';
import type { Drawing } from '../../../src/engine/6-drawing/drawing.ts';
import { legend } from '../../../src/engine/6-drawing/legend.ts';
import { printLook } from '../../../src/engine/6-drawing/look.ts';
import type { LookChoice } from '../../../src/engine/6-drawing/look.ts';
import type { SvgOptions } from '../../../src/engine/6-drawing/writeSvg.ts';
import { workText } from '../workText.ts';

/** The three yarns of the invented boot socks. */
export const YARNS: readonly Yarn[] = [
  { letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'cross' },
  { letter: 'B', name: 'chalk', colour: '#f2efe6', mark: 'none' },
  { letter: 'C', name: 'lamp orange', colour: '#d9772b', mark: 'dot' },
];

/** What a test chart is made with. */
export interface ChartOptions extends LookChoice {
  readonly section?: number;
  readonly mmPerStitch?: number;
  readonly layOut?: LayOutOptions;
  readonly draw?: Partial<DrawOptions>;
  readonly terms?: Terms;
  /** Yarn of a stitch, by its number. */
  readonly yarn?: (stitch: number, fabric: Fabric) => number;
  readonly svg?: Partial<SvgOptions>;
}

/** A drawing with all that `writeSvg` takes, from a written pattern. */
export function chartOf(text: string, options: ChartOptions = {}): { fabric: Fabric; drawing: Drawing; svg: SvgOptions } {
  const { fabric } = workText(text);
  const gauge = gaugeAtScale({ stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, options.mmPerStitch ?? 4);
  const layout = layOut(fabric, options.section ?? 0, gauge, options.layOut ?? {});
  const drawing = draw(fabric, layout, { symbols: 'all', numbers: true, grid: true, ...options.draw });
  const yarnOf = options.yarn ? Uint8Array.from({ length: fabric.count }, (_, stitch) => options.yarn!(stitch, fabric)) : fabric.yarn;
  const look = printLook(YARNS, options);
  return {
    fabric, drawing,
    svg: { look, yarnOf, rows: fabric.rows, title: 'Puffin Quay', desc: 'A sample chart', legend: legend(fabric, drawing, { terms: options.terms ?? 'us', yarns: YARNS, yarnOf }), ...options.svg },
  };
}
