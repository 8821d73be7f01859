import type { WordsDocument } from '../readings/words/wordsDocument.ts';
import { wordsToHtml, wordsToMarkdown } from '../readings/words/wordsToMarkup.ts';
import { wordsToText } from '../readings/words/wordsToText.ts';
import type { PublishedFile } from './publication.ts';

/** The written pattern as plain text, Markdown and a page for the web. */
export function wordFiles(document: WordsDocument, name: string): readonly PublishedFile[] {
  return [
    { name: `${name}.txt`, text: wordsToText(document) },
    { name: `${name}.md`, text: wordsToMarkdown(document) },
    { name: `${name}.html`, text: wordsToHtml(document) },
  ];
}
