import { describe, expect, it } from 'vitest';
import { MOTIF_SHELF } from '../../../src/engine/4-colour/motifShelf.ts';
import { friezeOf } from '../../../src/engine/4-colour/frieze.ts';
import { addMotif } from '../../../src/editor/bench/commands/addMotif.ts';
import { removeMotif } from '../../../src/editor/bench/commands/removeMotif.ts';
import { setMotif } from '../../../src/editor/bench/commands/setMotif.ts';
import { inKnownYarns } from '../../../src/editor/motif/knownYarns.ts';
import { boxOfCrop, cropBetween, croppedSide, NO_CROP } from '../../../src/editor/motif/pictureCrop.ts';
import { pictureHead } from '../../../src/editor/motif/pictureHead.ts';
import { pictureFault, PICTURE_BYTES, workedSize, WORKED_SIDE } from '../../../src/editor/motif/pictureLimits.ts';
import { stripSentence } from '../../../src/editor/motif/stripSentence.ts';
import { symmetries } from '../../../src/editor/motif/symmetries.ts';
import { after, benchOf, LEG, TICK } from '../bench/benchOf.ts';
import { motifPath } from '../../../src/editor/motif/motifPath.ts';

describe('motifs of a pattern', () => {
  it('are taken in, drawn otherwise and taken out with their places, one step each', () => {
    const taken = after(LEG, addMotif(TICK)(benchOf(LEG)));
    expect(addMotif(TICK)(benchOf(taken))).toBeNull();
    const drawn = after(taken, setMotif({ ...TICK, cells: ['BB'] }, 'Crop')(benchOf(taken)));
    expect(drawn.motifs[0]!.cells).toEqual(['BB']);
    expect(setMotif(TICK, 'Draw')(benchOf(taken))).toBeNull();
    const placed = { ...taken, placements: [{ id: 'p', section: 'leg', motif: 'tick', row: { line: 'first', nth: 0 }, align: 'left' as const, offset: 0, across: 1, up: 1, gap: 0, mirror: false }] };
    expect(after(placed, removeMotif('tick')(benchOf(placed)))).toMatchObject({ motifs: [], placements: [] });
    expect(removeMotif('gone')(benchOf(LEG))).toBeNull();
  });

  it('of the shelf are drawn in the yarns that there are', () => {
    for (const motif of MOTIF_SHELF) {
      const known = inKnownYarns(motif, LEG.yarns);
      expect(known.cells.join('')).toMatch(/^[AB.]+$/);
    }
  });

  it('take the yarn nearest in colour where theirs is not there', () => {
    const pale = { id: 'x', name: 'X', cells: ['QZ.'] };
    expect(inKnownYarns(pale, LEG.yarns, { Q: '#ffffff', Z: '#404a58' }).cells).toEqual(['BA.']);
    expect(inKnownYarns(TICK, LEG.yarns)).toBe(TICK);
  });
});

describe('the strip that a motif makes', () => {
  it.each([
    [['B...'], 'mirrored left and right, top and bottom (p2mm), every 4 stitches'],
    [['BB..', 'B...'], 'repeated only (p1), every 4 stitches'],
    [['BBBB'], 'every stitch'],
  ])('of %j: %s', (cells, says) => {
    expect(stripSentence(friezeOf({ cells }))).toContain(says);
  });

  it('of nothing is not named', () => {
    expect(stripSentence(friezeOf({ cells: ['..'] }))).toBe('Nothing is drawn yet.');
  });

  it('can be drawn with the six groups that have more than repeats', () => {
    expect(symmetries('between').filter(({ symmetry }) => typeof symmetry === 'object')).toHaveLength(6);
  });
});

describe('the head of a picture file', () => {
  const png = (width: number, height: number) => {
    const bytes = new Uint8Array(33);
    bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    new DataView(bytes.buffer).setUint32(16, width);
    new DataView(bytes.buffer).setUint32(20, height);
    return bytes;
  };
  // Start of image, an application segment of 4 bytes, then a baseline frame of 300 × 200.
  const jpeg = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xc0, 0, 11, 8, 0, 200, 1, 44, 1, 0, 0, 0]);

  it('tells kind and size (PNG 1.2, 4.1.1; JPEG, ITU T.81, B.2.2)', () => {
    expect(pictureHead(png(640, 480))).toEqual({ kind: 'png', width: 640, height: 480 });
    expect(pictureHead(jpeg)).toEqual({ kind: 'jpeg', width: 300, height: 200 });
  });

  it.each([
    [new Uint8Array(0), /empty/],
    [new TextEncoder().encode('GIF89a, and more than enough of it'), /no PNG or JPEG/],
    [jpeg.slice(0, 9), /no PNG or JPEG/],
    [png(0, 5), /no PNG or JPEG/],
    [png(60_000, 60_000), /60000 × 60000 pixels, 3600 million; 120 million is the most/],
  ])('refuses what is no picture of a sound size (%#)', (bytes, reason) => {
    expect(pictureFault('sea.png', bytes.length, bytes)).toMatch(reason);
  });

  it('refuses a file that is too large, and takes a sound one', () => {
    expect(pictureFault('sea.png', PICTURE_BYTES + 1, png(10, 10))).toMatch(/40 MB is the most/);
    expect(pictureFault('sea.png', 900, png(10, 10))).toBeNull();
  });

  it('works with no more than the longest side', () => {
    expect(workedSize(100, 50)).toEqual({ width: 100, height: 50 });
    expect(workedSize(16_000, 8_000)).toEqual({ width: WORKED_SIDE, height: WORKED_SIDE / 2 });
    expect(workedSize(90_000, 3)).toEqual({ width: WORKED_SIDE, height: 1 });
  });
});

describe('cropping a picture', () => {
  it('takes what lies between two points, however they are given', () => {
    expect(cropBetween([0.75, 0.5], [0.25, 0])).toEqual({ left: 0.25, right: 0.25, top: 0, bottom: 0.5 });
    expect(cropBetween([-3, -1], [0.5, 2])).toEqual({ left: 0, right: 0.5, top: 0, bottom: 0 });
    expect(cropBetween([0.5, 0.5], [0.505, 0.9])).toBeNull();
  });

  it('leaves something, whatever is cut off', () => {
    const half = croppedSide(NO_CROP, 'left', 0.5);
    expect(croppedSide(half, 'right', 0.9).right).toBeCloseTo(0.48);
    expect(croppedSide(half, 'left', -1).left).toBe(0);
    expect(croppedSide(half, 'top', 0.3)).toMatchObject({ left: 0.5, top: 0.3 });
  });

  it('is a part in pixels', () => {
    expect(boxOfCrop({ left: 0.25, right: 0.25, top: 0, bottom: 0.5 }, 400, 200)).toEqual({ x: 100, y: 0, width: 200, height: 100 });
  });
});

describe('the picture of a motif', () => {
  it('has the cells of one yarn, neighbours in one piece', () => {
    expect(motifPath(['BB.B', '.A..', 'ABBB'], 'B')).toBe('M0 0h2v1h-2zM3 0h1v1h-1zM1 2h3v1h-3z');
    expect(motifPath(['BB.B'], 'C')).toBe('');
  });
});
