/** The font files that are shipped (fonts/files): what PDF files embed and pictures are drawn with. */
export const FONT_FILES = ['Literata-Regular', 'Literata-Italic', 'Literata-Bold', 'AlegreyaSans-Regular', 'AlegreyaSans-Italic', 'AlegreyaSans-Bold', 'DejaVuSans'] as const;

export type FontFile = (typeof FONT_FILES)[number];

/** Stands in for characters that the other faces don't have. */
export const FALLBACK_FONT: FontFile = 'DejaVuSans';

/** Where the bytes of fonts and of the drawer of pictures come from: files for the command line, addresses for the app. The same bytes in both. */
export interface PublishResources {
  readonly font: (file: FontFile) => Promise<Uint8Array>;
  /** The WebAssembly of @resvg/resvg-wasm. */
  readonly resvg: () => Promise<Uint8Array>;
}

/**
 * The file for a font-family list: the first family in it that is shipped or generic. Bold italic is set in bold, as no such
 * file is shipped; a list of strangers is set in Alegreya Sans.
 */
export function fontFileFor(families: string, bold: boolean, italic: boolean): FontFile {
  const family = families.split(',').map((name) => FAMILIES[name.trim().replace(/^(["'])(.*)\1$/, '$2').toLowerCase()]).find((name) => name !== undefined);
  return `${family ?? 'AlegreyaSans'}-${bold ? 'Bold' : italic ? 'Italic' : 'Regular'}`;
}

const FAMILIES: Readonly<Record<string, 'Literata' | 'AlegreyaSans'>> = { literata: 'Literata', serif: 'Literata', 'alegreya sans': 'AlegreyaSans', 'sans-serif': 'AlegreyaSans' };

export const SERIF_FAMILY = 'Literata';
export const SANS_FAMILY = 'Alegreya Sans';
