import { describe, expect, it } from 'vitest';
import { stitchOfCode } from '../../../src/engine/craft/stitches.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { rules, workText } from '../workText.ts';

const ring = (rows: string) => workText(`Foundation: ch 12, join to form a ring.\nRnd 1: sc in each st around. (12 sc)\n${rows}`);
const kinds = (fabric: Fabric) => [...fabric.kind.slice(fabric.rows.at(-1)!.first, fabric.rows.at(-1)!.end)].map((code) => stitchOfCode(code).kind);

describe('picots made of chains', () => {
  // Published chart keys draw the picot as one sign, a ring of chains closed on top, and define it as ch 3 and a slip stitch in the top.
  it.each([
    ['ch 3, sl st in 3rd ch from hook'],
    ['ch 3, sl st in first ch'],
    ['ch 3, sl st in first ch of ch-3'],
    ['ch 3, sl st in same st'],
    ['ch 3, sl st in last sc made'],
    ['ch 3, sl st in top of sc just made'],
    ['ch 3, sl st in 3rd ch from hook (picot made)'],
    ['ch-3 picot'],
    ['picot'],
  ])('are one stitch of three chains that counts as none: %s', (picot) => {
    const { fabric, rows, findings } = ring(`Rnd 2: *sc in next 3 sts, ${picot}; rep from * around. (12 sc)\nRnd 3: sc in each st around. (12 sc)`);
    expect(rules(findings)).toEqual([]);
    expect(rows.map((row) => row.made)).toEqual([12, 12, 12, 12]);
    const second = fabric.rows.at(-2)!;
    const made = [...fabric.kind.slice(second.first, second.end)].map((code) => stitchOfCode(code).kind);
    expect(made.filter((kind) => kind === 'picot')).toHaveLength(4);
    expect(made.includes('ch') || made.includes('slst')).toBe(false);
    expect([...fabric.legs.slice(second.first, second.end)].filter((legs) => legs === 3)).toHaveLength(4);
  });

  it('take their chains from the pattern’s own definition', () => {
    const text = 'T\nTerms: US\nSpecial stitches: Picot (p): ch 4, sl st in first ch\n\nPIECE\nFoundation: ch 5.\nRow 1: sc in 2nd ch from hook, p, sc in next ch, picot, sc in next 2 chs. (4 sc)';
    const { fabric, findings } = workText(text);
    expect(rules(findings)).toEqual([]);
    expect([...fabric.legs].filter((legs) => legs > 0)).toEqual([4, 4]);
  });

  it('in the middle of a loop leave it one space', () => {
    const { rows, findings, fabric } = ring('Rnd 2: *sc in next st, ch 2, picot, ch 2, skip 2 sts; rep from * around. (4 sc, 4 ch-sps)\nRnd 3: 3 sc in each ch-sp around. (12 sc)');
    expect(rules(findings)).toEqual([]);
    expect(rows.at(-1)!.made).toBe(12);
    expect(kinds(fabric).every((kind) => kind === 'sc')).toBe(true);
  });

  it('right after a turning chain leave it a stitch', () => {
    const { rows, findings } = workText('Foundation: ch 8.\nRow 1: dc in 4th ch from hook and in each ch across. (6 dc)\nRow 2: turn, ch 3, picot, dc in next 5 sts. (6 dc)\nRow 3: ch 1, turn, sc in each st across. (6 sc)');
    expect(rules(findings)).toEqual([]);
    expect(rows.map((row) => row.made)).toEqual([8, 6, 6, 6]);
  });

  it('are no petals: chains that come down beside a taller stitch stay chains', () => {
    const { fabric } = ring('Rnd 2: *(sl st, ch 3, dc, ch 3, sl st) in next st, skip 2 sts; rep from * around.');
    expect(kinds(fabric).filter((kind) => kind === 'picot')).toEqual([]);
  });
});
