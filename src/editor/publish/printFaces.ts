import literataBold from '$publish/fonts/files/Literata-Bold.ttf?url';
import literataItalic from '$publish/fonts/files/Literata-Italic.ttf?url';
import literataRegular from '$publish/fonts/files/Literata-Regular.ttf?url';

const CUTS = [
  [literataRegular, { weight: '400', style: 'normal' }],
  [literataItalic, { weight: '400', style: 'italic' }],
  [literataBold, { weight: '700', style: 'normal' }],
] as const;

/** Gives the page the text face that sheets are measured in, so that they look as they print. Once a page. */
export function showPrintFaces(): void {
  if ([...document.fonts].some((face) => face.family === 'Literata')) return;
  for (const [url, cut] of CUTS) document.fonts.add(new FontFace('Literata', `url(${JSON.stringify(url)})`, cut));
}
