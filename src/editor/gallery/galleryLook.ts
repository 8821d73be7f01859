import type { Look } from '../../engine/6-drawing/look.ts';

/** Inks and paper of a chart on the dark page. Yarns keep their colours. */
const DARK: Partial<Look> = {
  inks: { rightSide: '#ece5d6', wrongSide: '#8fbfe6', attaching: '#ff9c80', shaping: '#ff9c80' },
  // The other inks, for pale yarns.
  paleInks: { rightSide: '#27221b', wrongSide: '#2a5a86', attaching: '#a8321b', shaping: '#a8321b' },
  ghostInk: '#7d7463', paper: '#272320', textInk: '#ece5d6', bandRS: '#332e28', bandWS: '#263039', openFill: '#5c4310', openInk: '#e8b95a', seamInk: '#d3a24a',
  gridInk: '#5f574b', gridStrongInk: '#a89d8a',
};

/** The printed look on the page's own paper, light or dark. Black and white stays on white paper. */
export function galleryLook(print: Look, dark: boolean): Look {
  if (print.mono) return print;
  if (!dark) return { ...print, paper: '#fcf9f2' };
  return { ...print, ...DARK };
}
