import { documentParts } from './documentParts.ts';
import type { WordsDocument, WordsLine } from './wordsDocument.ts';

const MARKS = /[\\`*_{}[\]<>#|~]/g;

/** The document as Markdown, with every mark of the rows kept from being read as Markdown's own. */
export function wordsToMarkdown(document: WordsDocument): string {
  const safe = (text: string) => text.replace(MARKS, (mark) => `\\${mark}`);
  const lines = [`# ${safe(document.title === '' ? 'Untitled' : document.title)}`];
  for (const { name, entries } of documentParts(document)) {
    lines.push('', `## ${safe(name)}`, '', ...entries.map(({ word, value }) => `- ${word === '' ? safe(value) : `**${safe(word)}:** ${safe(value)}`}`));
  }
  for (const section of document.sections) {
    if (section.name !== '' || section.remark !== '') lines.push('', `## ${safe(section.name)}${section.remark === '' ? '' : ` (${safe(section.remark)})`}`);
    for (const line of section.lines) {
      const label = labelOf(line);
      lines.push('', label === '' ? safe(line.text) : `**${safe(label)}:** ${safe(line.text)}`);
    }
  }
  return `${lines.join('\n')}\n`;
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** The document as a page of HTML that stands by itself; every text is escaped. */
export function wordsToHtml(document: WordsDocument): string {
  const safe = (text: string) => text.replace(/[&<>"']/g, (mark) => ENTITIES[mark]!);
  const title = safe(document.title === '' ? 'Untitled' : document.title);
  const parts = documentParts(document).map(({ name, entries }) => {
    const rows = entries.map(({ word, value }) => (word === '' ? `<dd>${safe(value)}</dd>` : `<dt>${safe(word)}</dt><dd>${safe(value)}</dd>`));
    return `<section>\n<h2>${safe(name)}</h2>\n<dl>\n${rows.join('\n')}\n</dl>\n</section>`;
  });
  const sections = document.sections.map((section) => {
    const heading = section.name === '' && section.remark === '' ? '' : `<h2>${safe(section.name)}${section.remark === '' ? '' : ` <small>(${safe(section.remark)})</small>`}</h2>\n`;
    const rows = section.lines.map((line) => {
      const label = labelOf(line);
      return label === '' ? `<p>${safe(line.text)}</p>` : `<p><b>${safe(label)}:</b> ${safe(line.text)}</p>`;
    });
    return `<section>\n${heading}${rows.join('\n')}\n</section>`;
  });
  return `<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<title>${title}</title>\n</head>\n<body>\n<h1>${title}</h1>\n${[...parts, ...sections].join('\n')}\n</body>\n</html>\n`;
}

function labelOf({ label, sizes }: WordsLine): string {
  const only = sizes.length === 0 ? '' : `${sizes.length > 1 ? 'Sizes' : 'Size'} ${sizes.join(' and ')} only`;
  return label === '' ? only : only === '' ? label : `${only}: ${label}`;
}
