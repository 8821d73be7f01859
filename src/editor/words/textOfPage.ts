/** Elements that stand on lines of their own. */
const BLOCKS = new Set(['ADDRESS', 'ARTICLE', 'ASIDE', 'BLOCKQUOTE', 'DD', 'DIV', 'DL', 'DT', 'FIGCAPTION', 'FIGURE', 'FOOTER', 'H1', 'H2', 'H3', 'H4', 'H5', 'H6', 'HEADER', 'LI', 'MAIN', 'OL', 'P', 'PRE', 'SECTION', 'TABLE', 'TR', 'UL']);
/** Of these, those with a gap before them. */
const APART = new Set(['H1', 'H2', 'H3', 'H4', 'SECTION', 'TABLE']);
const UNSEEN = new Set(['HEAD', 'NAV', 'NOSCRIPT', 'SCRIPT', 'STYLE', 'TEMPLATE']);

/** The words of a web page, a line for each of its blocks; a term and what explains it stand on one line. Nothing of the page is run or loaded. */
export function textOfPage(html: string): string {
  const page = new DOMParser().parseFromString(html, 'text/html');
  const lines: string[] = [];
  let line = '';
  const end = () => {
    if (line.trim() !== '') lines.push(line.trim());
    line = '';
  };
  const visit = (node: Node): void => {
    if (node.nodeType === Node.TEXT_NODE) {
      line += (node.nodeValue ?? '').replace(/\s+/g, ' ');
      return;
    }
    const name = node.nodeName.toUpperCase();
    if (UNSEEN.has(name)) return;
    if (name === 'BR') return end();
    if (name === 'TD' || name === 'TH') line += ' ';
    const block = BLOCKS.has(name);
    const explains = name === 'DD' && line.endsWith(': ');
    if (block && !explains) end();
    if (APART.has(name) && lines.length > 0) lines.push('');
    for (const child of node.childNodes) visit(child);
    if (name === 'DT') line = `${line.trim().replace(/:$/, '')}: `;
    else if (block) end();
  };
  visit(page.body);
  end();
  return `${lines.join('\n')}\n`;
}
