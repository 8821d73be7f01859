import { patternFromText } from '../../engine/1-pattern/patternFromText.ts';
import { construct } from '../../engine/2-construct/construct.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import { work } from '../../engine/3-fabric/work.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import { gaugeAtScale } from '../../engine/5-layout/gaugeAtScale.ts';
import type { Layout } from '../../engine/5-layout/layout.ts';
import { layOut } from '../../engine/5-layout/layOutSection.ts';
import { draw } from '../../engine/6-drawing/draw.ts';
import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { legend } from '../../engine/6-drawing/legend.ts';
import { printLook } from '../../engine/6-drawing/look.ts';
import type { SvgOptions } from '../../engine/6-drawing/writeSvg.ts';
import type { Finding } from '../../engine/notation/finding.ts';
import type { Sample } from './sample.ts';

/** A sample worked, laid out and drawn, with all that `writeSvg` takes. */
export interface SampleChart {
  readonly fabric: Fabric;
  readonly layout: Layout;
  readonly drawing: Drawing;
  readonly svg: SvgOptions;
  /** What reading and working found: none, for a sound sample. */
  readonly findings: readonly Finding[];
}

/** Draws a sample as print would have it. */
export function sampleChart({ text, title, look = {} }: Sample): SampleChart {
  const headed = /^[A-Z][A-Z ]+$/m.test(text) ? text : `PIECE\n${text}`;
  const { pattern, findings } = patternFromText(`${title}\n\n${headed}`);
  if (!pattern) throw new RangeError(`the sample ${title} can't be read`);
  const fabric = work(construct(pattern, 0));
  const { symbols = 'us', grid = true, mono = false, fills = 'yarn', large = false, terms = 'us' } = look;
  const print = printLook(pattern.yarns, { mono, fills, large, mmPerStitch: look.mmPerStitch ?? 4 });
  const layout = layOut(fabric, look.section ?? 0, gaugeAtScale(pattern.gauge, look.mmPerStitch ?? 4), look);
  const drawing = draw(fabric, layout, { symbols, numbers: true, grid, textMm: print.textMm, repeatBrackets: look.brackets ?? [] });
  const yarnOf = colour(pattern, fabric, 0).yarn;
  return {
    fabric, layout, drawing, findings: [...findings, ...fabric.findings],
    svg: { look: print, yarnOf, rows: fabric.rows, title, desc: `Sample chart: ${title}.`, legend: legend(fabric, drawing, { terms, yarns: pattern.yarns, yarnOf }) },
  };
}
