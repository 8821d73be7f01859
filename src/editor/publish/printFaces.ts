import { APP_RESOURCES } from './appResources.ts';

const CUTS = [
  ['Literata-Regular', { weight: '400', style: 'normal' }],
  ['Literata-Italic', { weight: '400', style: 'italic' }],
  ['Literata-Bold', { weight: '700', style: 'normal' }],
] as const;

/** Gives the page the text face that sheets are measured in, so that they look as they print. Once a page. */
export function showPrintFaces(): void {
  if ([...document.fonts].some((face) => face.family === 'Literata')) return;
  for (const [file, cut] of CUTS) document.fonts.add(new FontFace('Literata', `url(${JSON.stringify(APP_RESOURCES.fonts[file])})`, cut));
}
