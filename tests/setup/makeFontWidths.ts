/*
 * Writes the advance widths of the faces that are shipped into the engine, so that text is measured alike everywhere:
 *   npx tsx tests/setup/makeFontWidths.ts
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openSync } from 'fontkit';
import { FACES, type Face } from '../../src/engine/publish/type/face.ts';

const folder = join(import.meta.dirname, '../../src/publish/fonts/files');
const FILES: Readonly<Record<Face, string>> = { text: 'Literata-Regular', italic: 'Literata-Italic', bold: 'Literata-Bold', label: 'AlegreyaSans-Regular', strong: 'AlegreyaSans-Bold' };
/** Ranges worth their room: Latin, Greek and Cyrillic as they are written today, punctuation, currency, arrows and signs. */
const RANGES = [[0x20, 0x7e], [0xa0, 0x17f], [0x218, 0x21b], [0x386, 0x3ce], [0x400, 0x45f], [0x2010, 0x2026], [0x2032, 0x203a], [0x2044, 0x2044], [0x20ac, 0x20ac], [0x2122, 0x2122], [0x2150, 0x215e], [0x2190, 0x2193], [0x2212, 0x2212], [0x2248, 0x2248], [0x2260, 0x2265]] as const;

/** Two digits to the base of 36, thousandths of the size; `--` where the face has no such character. */
export function fontWidths(): string {
  const lines = (Object.keys(FACES) as Face[]).map((face) => {
    const font = openSync(join(folder, `${FILES[face]}.ttf`)) as unknown as Font;
    const widths = RANGES.map(([from, to]) => `${from.toString(16)} ${Array.from({ length: to - from + 1 }, (_, i) => widthOf(font, from + i)).join('')}`);
    return `  ${face}: [\n${widths.map((one) => `    '${one}',`).join('\n')}\n  ],`;
  });
  return `import type { Face } from './face.ts';

/**
 * Advance widths of the faces that are shipped (Literata and Alegreya Sans, SIL Open Font License 1.1), read out of the font files
 * by tests/setup/makeFontWidths.ts: for each range its first character (hexadecimal), then two digits to the base of 36 a character, in
 * thousandths of the size; \`--\` where the face has no such character.
 */
export const FONT_WIDTHS: Readonly<Record<Face, readonly string[]>> = {
${lines.join('\n')}
};
`;
}

/** Width of a text as a program that knows kerning and ligatures sets it, in thousandths of the size. */
export function setWidth(text: string, face: Face): number {
  const font = openSync(join(folder, `${FILES[face]}.ttf`)) as unknown as Font;
  return (font.layout(text).advanceWidth / font.unitsPerEm) * 1000;
}

interface Font {
  readonly layout: (text: string) => { readonly advanceWidth: number };
  readonly unitsPerEm: number;
  readonly hasGlyphForCodePoint: (code: number) => boolean;
  readonly glyphForCodePoint: (code: number) => { readonly advanceWidth: number };
}

function widthOf(font: Font, code: number): string {
  if (!font.hasGlyphForCodePoint(code)) return '--';
  const width = Math.round((font.glyphForCodePoint(code).advanceWidth / font.unitsPerEm) * 1000);
  if (width > 36 * 36 - 1) throw new RangeError(`character ${code.toString(16)} is ${width} thousandths wide; 1295 is the most`);
  return width.toString(36).padStart(2, '0');
}

if (process.argv[1]?.endsWith('makeFontWidths.ts')) {
  const path = join(import.meta.dirname, '../../src/engine/publish/type/fontWidths.ts');
  writeFileSync(path, fontWidths());
  console.log(path);
}
