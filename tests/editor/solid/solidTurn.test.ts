import { describe, expect, it } from 'vitest';
import { between, dragBy, lookWords, turnBy, turnOfKey, zoomed } from '../../../src/editor/solid/solidTurn.ts';
import type { SolidLook } from '../../../src/editor/solid/solidTurn.ts';

const FRONT: SolidLook = { yawRad: 0, pitchRad: 0, zoom: 1 };
const degrees = (rad: number): number => Math.round((rad * 180) / Math.PI);

describe('turning a solid', () => {
  it.each([
    ['ArrowLeft', { yaw: -15, pitch: 0, zoom: 1 }],
    ['ArrowRight', { yaw: 15, pitch: 0, zoom: 1 }],
    ['ArrowUp', { yaw: 0, pitch: -15, zoom: 1 }],
    ['ArrowDown', { yaw: 0, pitch: 15, zoom: 1 }],
    ['+', { yaw: 0, pitch: 0, zoom: 1.25 }],
    ['-', { yaw: 0, pitch: 0, zoom: 1 }],
  ])('%s does what it says', (key, { yaw, pitch, zoom }) => {
    const look = turnBy(FRONT, turnOfKey(key)!, FRONT);
    expect([degrees(look.yawRad), degrees(look.pitchRad), look.zoom]).toEqual([yaw, pitch, zoom]);
  });

  it('knows no other keys', () => {
    for (const key of ['a', 'Enter', 'Tab', 'toString', ' ']) expect(turnOfKey(key)).toBeNull();
  });

  it('goes back to the rest view with 0 and Home, in all', () => {
    const rest = { yawRad: -0.45, pitchRad: 0.12 };
    for (const key of ['0', 'Home']) expect(turnBy({ yawRad: 2, pitchRad: 1, zoom: 3 }, turnOfKey(key)!, rest)).toEqual({ ...rest, zoom: 1 });
  });

  it('turns half round for a drag over the width, and takes it back', () => {
    const there = dragBy(FRONT, 0.25, 0.1);
    expect(degrees(there.yawRad)).toBe(45);
    expect(degrees(there.pitchRad)).toBe(18);
    const back = dragBy(there, -0.25, -0.1);
    expect(back.yawRad).toBeCloseTo(0, 12);
    expect(back.pitchRad).toBeCloseTo(0, 12);
  });

  it('never tips over, and comes round after 24 steps', () => {
    let look: SolidLook = FRONT;
    for (let k = 0; k < 24; k++) look = turnBy(turnBy(look, 'right', FRONT), 'down', FRONT);
    expect(degrees(look.yawRad)).toBe(0);
    expect(degrees(look.pitchRad)).toBe(90);
    expect(turnBy(FRONT, 'right', FRONT, true).yawRad).toBeLessThan(turnBy(FRONT, 'right', FRONT).yawRad);
  });

  it('is never shown smaller than all of it, nor larger than eight times', () => {
    expect(zoomed(FRONT, 0.1).zoom).toBe(1);
    expect(zoomed(FRONT, 100).zoom).toBe(8);
  });

  it('glides the short way round', () => {
    const from = { yawRad: 3, pitchRad: 0, zoom: 2 };
    const to = { yawRad: -3, pitchRad: 0.2, zoom: 1 };
    const half = between(from, to, 0.5);
    expect(Math.cos(half.yawRad)).toBeCloseTo(-1, 1);
    expect(half.pitchRad).toBeCloseTo(0.1, 12);
    expect(between(from, to, 1)).toEqual(to);
    expect(Math.sin(between(from, to, 0).yawRad)).toBeCloseTo(Math.sin(3), 12);
  });

  it.each([
    [FRONT, 'Seen from the front.'],
    [{ yawRad: -0.45, pitchRad: 0.12, zoom: 1 }, 'Seen turned 26° to the left, 7° from above.'],
    [{ yawRad: Math.PI, pitchRad: 0, zoom: 1 }, 'Seen from behind.'],
    [{ yawRad: 0, pitchRad: -0.5, zoom: 2 }, 'Seen 29° from below, 2.0 times as large.'],
  ])('says how it is seen', (look, words) => {
    expect(lookWords(look)).toBe(words);
  });
});
