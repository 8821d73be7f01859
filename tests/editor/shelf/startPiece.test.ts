import { describe, expect, it } from 'vitest';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { settingsOf } from '../../../src/engine/2-construct/recipes/settingsOf.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { CONSTRUCTIONS, type ConstructionOffer } from '../../../src/editor/shelf/constructions.ts';
import { startFault, startPiece, type StartForm } from '../../../src/editor/shelf/startPiece.ts';
import { gradedPiece } from '../../../src/editor/sizes/gradedPiece.ts';

const formOf = ({ measures }: ConstructionOffer, factors: readonly number[]): StartForm => ({
  title: '', stitches: 16, rows: 18, hookMm: 4.5,
  sizes: factors.map((factor, i) => ({ name: factors.length > 1 ? ['S', 'M', 'L'][i]! : '', cm: Object.fromEntries(measures.map(({ name, cm }) => [name, cm * factor])) })),
});

describe('starting a pattern', () => {
  it.each(CONSTRUCTIONS)('$id is worked in three sizes without a wrong number, and made anew from its own measurements it stays the same', (offer) => {
    const form = formOf(offer, [0.9, 1, 1.15]);
    expect(startFault(offer, form)).toBeNull();
    const pattern = startPiece(offer, form);
    expect(pattern.sizes).toEqual(['S', 'M', 'L']);
    for (const size of [0, 1, 2]) expect(work(construct(pattern, size)).findings.filter(({ degree }) => degree === 'wrong')).toEqual([]);
    if (offer.settings) expect(gradedPiece(pattern, settingsOf(pattern))).toMatchObject({ kind: 'graded', isSame: true });
  });

  it('needs no name for an only size', () => {
    expect(startPiece(CONSTRUCTIONS[0]!, formOf(CONSTRUCTIONS[0]!, [1])).sizes).toEqual(['']);
  });

  it('says which field is empty or beyond its range, and of which size', () => {
    const offer = CONSTRUCTIONS[0]!;
    const form = formOf(offer, [1, 1]);
    expect(startFault(offer, { ...form, stitches: Number.NaN })).toBe('Stitches over 10 cm is empty; it has to be between 1 and 80.');
    expect(startFault(offer, { ...form, sizes: [form.sizes[0]!, { name: 'M', cm: { ...form.sizes[1]!.cm, footGirth: 400 } }] })).toBe('Round the foot, size M, is 400; it has to be between 2 and 300.');
  });
});
