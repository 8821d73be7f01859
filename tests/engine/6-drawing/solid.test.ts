import { describe, expect, it } from 'vitest';
import type { Yarn } from '../../../src/engine/1-pattern/pattern.ts';
import { solidPaths } from '../../../src/engine/6-drawing/solidPaths.ts';
import { SOLID_CAPTION, solidSvg } from '../../../src/engine/6-drawing/solidSvg.ts';
import { shadedColour, shadeOf, SHADES } from '../../../src/engine/6-drawing/solidShade.ts';
import { turnPoints } from '../../../src/engine/6-drawing/solidView.ts';
import { PUFFIN_QUAY, shaped } from '../5-layout/solid/solidOf.ts';
import { xmlFault } from './wellFormed.ts';

const YARNS: readonly Yarn[] = [
  { letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' },
  { letter: 'B', name: 'chalk', colour: '#f2efe6', mark: 'none' },
  { letter: 'C', name: 'lamp orange', colour: '#e07b39', mark: 'none' },
];
const FRONT = { yawRad: 0, pitchRad: 0 };
const sock = shaped(PUFFIN_QUAY);
const panel = shaped('Foundation: ch 5.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across. (4 sc)\nRow 2: ch 1, turn, sc in each st across. (4 sc)');

/** Hue of a colour in sixths, roughly: enough to tell orange from slate and chalk. */
const isOrange = (fill: string): boolean => {
  const [r, g, b] = [1, 3, 5].map((from) => parseInt(fill.slice(from, from + 2), 16)) as [number, number, number];
  return r > 1.3 * g && g > 1.2 * b;
};
const numbersOf = (d: string): number[] => (d.match(/-?[\d.]+/g) ?? []).map(Number);

describe('turning', () => {
  it('brings the right side to the viewer for a quarter turn, and the top for tipping', () => {
    const points = Float32Array.of(1, 0, 0, 0, 1, 0, 0, 0, 1);
    const quarter = [...turnPoints(points, { yawRad: Math.PI / 2, pitchRad: 0 })].map((value) => Math.round(value * 1e6) / 1e6 + 0);
    // What was right now points away, what was in front points to the right; y is down.
    expect(quarter).toEqual([0, 0, -1, 0, -1, 0, 1, 0, 0]);
    const tipped = [...turnPoints(points, { yawRad: 0, pitchRad: Math.PI / 2 })].map((value) => Math.round(value * 1e6) / 1e6 + 0);
    expect(tipped).toEqual([1, 0, 0, 0, 0, 1, 0, 1, 0]);
  });
});

describe('light', () => {
  it('falls from the upper left, leaves the wrong side dark, and darkens the rim', () => {
    expect(shadeOf(-0.5, -0.5, 0.7, true)).toBeGreaterThan(shadeOf(0.5, 0.5, 0.7, true));
    expect(shadeOf(0, 0, -1, false)).toBeLessThan(shadeOf(0, 0, 1, true));
    expect(shadeOf(0.99, 0, 0.05, true)).toBeLessThan(shadeOf(0.5, 0, 0.87, true));
    for (const n of [-1, -0.5, 0, 0.5, 1]) expect(shadeOf(n, 0, Math.sqrt(1 - n * n), true)).toBeLessThan(SHADES);
  });

  it('keeps a yarn in its hue and never leaves the colours there are', () => {
    expect(isOrange(shadedColour('#e07b39', 20, 1))).toBe(true);
    expect(shadedColour('#ffffff', SHADES - 1, 1.1)).toBe('#ffffff');
    expect(shadedColour('', 10, 1)).toMatch(/^#[0-9a-f]{6}$/);
  });
});

describe('the picture of a solid', () => {
  it('draws each cell once, and two strands for each that shows its right side', () => {
    const yarnOf = new Uint8Array(panel.fabric.count);
    const plain = solidPaths(panel.solid, yarnOf, YARNS, FRONT, { strands: false });
    const strands = solidPaths(panel.solid, yarnOf, YARNS, FRONT, { strands: true });
    const closed = (paths: typeof plain): number => paths.reduce((sum, { d }) => sum + (d.match(/Z/g) ?? []).length, 0);
    expect(closed(plain)).toBe(8);
    expect(closed(strands)).toBe(8 + 2 * 8);
    const back = solidPaths(panel.solid, yarnOf, YARNS, { yawRad: Math.PI, pitchRad: 0 }, { strands: true });
    expect(closed(back)).toBe(8);
  });

  it('draws the panel true to scale', () => {
    const [path] = solidPaths(panel.solid, new Uint8Array(panel.fabric.count), YARNS, FRONT, { strands: false });
    const values = numbersOf(path!.d);
    const x = values.filter((_, k) => k % 2 === 0);
    const y = values.filter((_, k) => k % 2 === 1);
    expect(Math.max(...x) - Math.min(...x)).toBeCloseTo((4 * 100) / 18, 1);
    expect(Math.max(...y) - Math.min(...y)).toBeCloseTo(10, 1);
  });

  it('shows the cuff of the sock in its orange on top, heel at the right and toe at the left below', () => {
    const paths = solidPaths(sock.solid, sock.fabric.yarn, YARNS, FRONT, { strands: false });
    const orange = paths.filter(({ fill }) => isOrange(fill)).flatMap(({ d }) => numbersOf(d));
    const x = orange.filter((_, k) => k % 2 === 0);
    const y = orange.filter((_, k) => k % 2 === 1);
    const [halfX, halfY] = sock.solid.halfMm;
    const at = (wanted: (x: number, y: number) => boolean): number => x.filter((value, k) => wanted(value, y[k]!)).length;
    expect(at((_, py) => py < -0.6 * halfY)).toBeGreaterThan(200);
    expect(at((px, py) => px > 0.5 * halfX && py > 0.4 * halfY)).toBeGreaterThan(200);
    expect(at((px, py) => px < -0.7 * halfX && py > 0.3 * halfY)).toBeGreaterThan(200);
    expect(at((_, py) => Math.abs(py) < 0.2 * halfY)).toBe(0);
  });

  it('paints what is near over what is far: seen from the toe, the toe comes last', () => {
    const paths = solidPaths(sock.solid, sock.fabric.yarn, YARNS, { yawRad: Math.PI / 2, pitchRad: 0 }, { strands: false });
    expect(paths.slice(-5).every(({ fill }) => isOrange(fill))).toBe(true);
    const away = solidPaths(sock.solid, sock.fabric.yarn, YARNS, { yawRad: -Math.PI / 2, pitchRad: 0 }, { strands: false });
    expect(away.slice(0, 5).every(({ fill }) => isOrange(fill))).toBe(true);
  });

  it('shares paths: far fewer than cells', () => {
    expect(solidPaths(sock.solid, sock.fabric.yarn, YARNS, FRONT, { strands: false }).length).toBeLessThan(sock.solid.cells.length / 2);
  });

  it('gives a valid file that says what it is', () => {
    const svg = solidSvg(sock.solid, sock.fabric.yarn, YARNS, sock.solid.restView, { title: 'Puffin Quay <S>', desc: 'The sock from the side.' });
    expect(xmlFault(svg)).toBeNull();
    expect(svg).toContain('Puffin Quay &lt;S&gt;');
    expect(svg).toContain(`The sock from the side. ${SOLID_CAPTION}`);
    expect(svg).not.toMatch(/NaN|Infinity/);
    const [, x, y, width, height] = /viewBox="([-\d.]+) ([-\d.]+) ([-\d.]+) ([-\d.]+)"/.exec(svg)!.map(Number) as [number, number, number, number, number];
    const drawn = [...svg.matchAll(/ d="([^"]+)"/g)].flatMap((match) => numbersOf(match[1]!));
    expect(drawn.every((value, k) => (k % 2 === 0 ? value >= x && value <= x + width : value >= y && value <= y + height))).toBe(true);
  });

  it('gives a valid file for nothing', () => {
    expect(xmlFault(solidSvg(shaped('Foundation: ch 5.').solid, new Uint8Array(8), YARNS, FRONT, { title: 'Empty', desc: '' }))).toBeNull();
  });
});
