import { converter, formatHex } from 'culori';

const toRgb = converter('rgb');

/** Steps of light that are told apart: fewer fills, fewer paths. */
export const SHADES = 32;

/** Light from the upper left, over the viewer's shoulder: a direction in the view (x right, y down, z to the viewer). */
const LIGHT = unit([-0.42, -0.62, 0.66]);
const AMBIENT = 0.48;
const DIFFUSE = 0.55;
/** The edge of a round thing turns away and darkens, so that a pale yarn shows on a pale ground. */
const RIM = 0.28;
/** The wrong side, seen through an opening. */
const INSIDE = 0.55;

/** For a yarn that the pattern doesn't have. */
const NO_COLOUR = { r: 0.53, g: 0.53, b: 0.53 };

/** Light on a place whose right side points along a unit normal in the view: a step from 0 to `SHADES - 1`; `facing` false for its wrong side. */
export function shadeOf(nx: number, ny: number, nz: number, facing: boolean): number {
  const side = facing ? 1 : -1;
  const diffuse = Math.max(0, side * (nx * LIGHT[0] + ny * LIGHT[1] + nz * LIGHT[2]));
  const rim = 1 - RIM * (1 - Math.min(1, Math.abs(nz))) ** 2;
  const light = (AMBIENT + DIFFUSE * diffuse) * rim * (facing ? 1 : INSIDE);
  return Math.max(0, Math.min(SHADES - 1, Math.round((light / (AMBIENT + DIFFUSE)) * (SHADES - 1))));
}

/** A yarn's colour under a step of light; `lift` over 1 is lighter. `#rrggbb`. */
export function shadedColour(colour: string, shade: number, lift: number): string {
  const { r, g, b } = toRgb(colour) ?? NO_COLOUR;
  const light = (shade / (SHADES - 1)) * (AMBIENT + DIFFUSE) * lift;
  return formatHex({ mode: 'rgb', r: r * light, g: g * light, b: b * light });
}

function unit([x, y, z]: readonly [number, number, number]): readonly [number, number, number] {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}
