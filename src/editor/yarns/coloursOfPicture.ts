import { formatHex } from 'culori';
import { colourDifference, labOf, type Lab } from '../../engine/craft/colourDifference.ts';

/** Most different colours that are looked at: those that most pixels have. */
const MOST_COLOURS = 512;
const ROUNDS = 12;

/**
 * The colours that stand for a picture: `count` of them, `#rrggbb`, those of most pixels first. Pixels are RGBA; clear ones
 * are passed over. Near colours are counted together, then gathered around centres in CIE L*a*b* (k-means; each
 * centre begins at the colour that is most and farthest from those before, so that the same picture gives the same colours).
 */
export function coloursOfPicture(rgba: Uint8ClampedArray, count: number): readonly string[] {
  const bins = new Map<number, { pixels: number; r: number; g: number; b: number }>();
  for (let i = 0; i + 3 < rgba.length; i += 4) {
    if (rgba[i + 3]! < 128) continue;
    const [r, g, b] = [rgba[i]!, rgba[i + 1]!, rgba[i + 2]!];
    const key = ((r >> 3) << 10) | ((g >> 3) << 5) | (b >> 3);
    const bin = bins.get(key);
    if (bin) {
      bin.pixels++;
      bin.r += r;
      bin.g += g;
      bin.b += b;
    } else bins.set(key, { pixels: 1, r, g, b });
  }
  const colours = [...bins.values()]
    .sort((a, b) => b.pixels - a.pixels)
    .slice(0, MOST_COLOURS)
    .map(({ pixels, r, g, b }) => {
      const hex = formatHex({ mode: 'rgb', r: r / pixels / 255, g: g / pixels / 255, b: b / pixels / 255 });
      return { pixels, hex, lab: labOf(hex) };
    });
  if (colours.length === 0) return [];
  const centres: Lab[] = [colours[0]!.lab];
  while (centres.length < Math.min(count, colours.length)) {
    const worth = colours.map(({ pixels, lab }) => Math.sqrt(pixels) * Math.min(...centres.map((centre) => colourDifference(lab, centre))));
    centres.push(colours[worth.indexOf(Math.max(...worth))]!.lab);
  }
  const nearest = (lab: Lab) => {
    const distances = centres.map((centre) => (lab.l - centre.l) ** 2 + (lab.a - centre.a) ** 2 + (lab.b - centre.b) ** 2);
    return distances.indexOf(Math.min(...distances));
  };
  for (let round = 0; round < ROUNDS; round++) {
    const sums = centres.map(() => ({ pixels: 0, l: 0, a: 0, b: 0 }));
    for (const { pixels, lab } of colours) {
      const sum = sums[nearest(lab)]!;
      sum.pixels += pixels;
      sum.l += lab.l * pixels;
      sum.a += lab.a * pixels;
      sum.b += lab.b * pixels;
    }
    sums.forEach(({ pixels, l, a, b }, i) => {
      if (pixels > 0) centres[i] = { l: l / pixels, a: a / pixels, b: b / pixels };
    });
  }
  const weight = centres.map(() => 0);
  for (const { pixels, lab } of colours) weight[nearest(lab)]! += pixels;
  return centres
    .map((centre, i) => ({ hex: formatHex({ mode: 'lab65', ...centre }), pixels: weight[i]! }))
    .sort((a, b) => b.pixels - a.pixels)
    .map(({ hex }) => hex);
}
