import { create, type Font } from 'fontkit';
import { FALLBACK_FONT, FONT_FILES, fontFileFor, type FontFile, type PublishResources } from './fontFiles.ts';

/** Words that one font file can set. `stands` is what they stand for where no font has their characters. */
export interface FacedRun {
  readonly file: FontFile;
  readonly text: string;
  readonly stands: string | null;
}

/** Fonts read from their bytes: which file sets which words. */
export interface FontBook {
  readonly bytes: (file: FontFile) => Uint8Array;
  readonly font: (file: FontFile) => Font;
  readonly split: (text: string, families: string, bold: boolean, italic: boolean) => FacedRun[];
}

/** Reads all fonts that are shipped; each is parsed when first used. */
export async function openFontBook({ font }: Pick<PublishResources, 'font'>): Promise<FontBook> {
  const loaded = new Map(await Promise.all(FONT_FILES.map(async (file) => [file, await font(file)] as const)));
  const parsed = new Map<FontFile, Font>();
  const bytes = (file: FontFile): Uint8Array => loaded.get(file)!;
  const fontOf = (file: FontFile): Font => {
    const known = parsed.get(file);
    if (known) return known;
    // fontkit reads plain byte arrays; its types ask for node's own.
    const made = create(bytes(file) as Parameters<typeof create>[0]);
    if (!('layout' in made)) throw new RangeError(`${file} is a collection of fonts; one font was expected`);
    parsed.set(file, made);
    return made;
  };
  return { bytes, font: fontOf, split: (text, families, bold, italic) => splitByFace(text, fontFileFor(families, bold, italic), fontOf) };
}

/** A character and the marks that sit on it. */
const CLUSTER = /\P{M}\p{M}*|\p{M}+/gu;
/** Characters that steer and are not seen: joiners, directions, variation selectors. */
const UNSEEN = /^[\p{Cf}\ufe00-\ufe0f]+$/u;
const BOX = '\ufffd';

function splitByFace(text: string, wanted: FontFile, font: (file: FontFile) => Font): FacedRun[] {
  const runs: { file: FontFile; text: string; stands: string | null }[] = [];
  const has = (file: FontFile, cluster: string): boolean => [...cluster].every((mark) => font(file).hasGlyphForCodePoint(mark.codePointAt(0)!));
  for (const cluster of text.match(CLUSTER) ?? []) {
    const seen = has(wanted, cluster) ? cluster : cluster.replace(/[\p{Cf}\ufe00-\ufe0f]/gu, '');
    if (UNSEEN.test(cluster) && !has(wanted, cluster)) continue;
    const file = has(wanted, seen) ? wanted : has(FALLBACK_FONT, seen) ? FALLBACK_FONT : null;
    const last = runs.at(-1);
    if (file === null) runs.push({ file: FALLBACK_FONT, text: BOX, stands: cluster });
    else if (last?.file === file && last.stands === null) last.text += seen;
    else runs.push({ file, text: seen, stands: null });
  }
  return runs;
}
