import { mendedSigns } from './mendedSigns.ts';
import { textOfMarkdown } from './textOfMarkdown.ts';
import { textOfPage } from './textOfPage.ts';

/** A text as it can be read as a pattern, and what had to be done to it, in words ('' if nothing). */
export interface PlainText {
  readonly text: string;
  readonly told: string;
}

/** Takes what a web page or a Markdown file has beside its words out of a text, and sets signs right that were read in a wrong encoding. */
export function plainText(text: string): PlainText {
  const told: string[] = [];
  let plain = text;
  if (/^\s*(?:<\?xml[^>]*>\s*)?(?:<!doctype html|<html|<body|<article|<main|<div|<p[ >]|<h1)/i.test(text)) {
    plain = textOfPage(text);
    told.push('Its words were taken out of the web page.');
  } else if (/^#{1,6} \S|^\*\*[^*\n]+\*\*/m.test(text)) {
    plain = textOfMarkdown(text);
    told.push('The marks of Markdown were taken out.');
  }
  const signs = mendedSigns(plain);
  if (signs !== plain) told.push('Signs that another program had spoilt were set right.');
  return { text: signs, told: told.join(' ') };
}
