import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '../../reference/workExample.ts';
import type { Example } from '../../reference/workExample.ts';
import { writeSvg } from '../../../src/engine/6-drawing/writeSvg.ts';
import { chartOf } from './chartOf.ts';
import { xmlFault } from './wellFormed.ts';

/** An example as a written pattern: its foundation, then its rows numbered from 1. */
function exampleText({ foundation, construction, rows }: Example): string {
  const ring = foundation.type === 'ring' && foundation.chains === undefined;
  const lines = [`Foundation: ${ring ? 'magic ring' : `ch ${foundation.chains ?? 20}${foundation.joined ? ', join to form a ring' : ''}`}.`];
  let number = 1;
  for (const row of rows) {
    const range = /\b(\d+)\s*[-–]\s*(\d+)/.exec(row.label);
    const count = range ? Number(range[2]) - Number(range[1]) + 1 : 1;
    const word = construction === 'rounds' || /rnd/i.test(row.label) ? 'Rnd' : 'Row';
    lines.push(`${word}${count > 1 ? 's' : ''} ${number}${count > 1 ? `-${number + count - 1}` : ''}: ${row.instruction}`);
    number += count;
  }
  return lines.join('\n');
}

describe('published examples', () => {
  it.each(EXAMPLES.map((example) => [example.id, example.source.title, example] as const))('%s (%s) is drawn: every stitch has a place, spacing holds, the file is valid', (_, __, example) => {
    const { drawing, svg } = chartOf(exampleText(example));
    const { stitches } = drawing;
    [stitches.corners, stitches.x, stitches.y, stitches.glyphX, stitches.glyphY, stitches.glyphTurnRad].forEach((values) => expect(values.every(Number.isFinite)).toBe(true));
    expect(stitches.count).toBeGreaterThan(0);
    // A stitch that was never placed would lie in the origin with an empty cell.
    const lost = Array.from({ length: stitches.count }, (_, i) => i).filter((i) => !stitches.corners.subarray(i * 8, i * 8 + 8).some((value) => value !== 0));
    expect(lost).toEqual([]);
    expect(xmlFault(writeSvg(drawing, svg))).toBeNull();
  });
});
