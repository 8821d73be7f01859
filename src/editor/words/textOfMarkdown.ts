/**
 * The words of a pattern in Markdown: without the marks of headings, lists, bold words and line ends, and with what a
 * backslash kept from being a mark as it is. Single stars and underscores stay: in a pattern they begin repeats.
 */
export function textOfMarkdown(text: string): string {
  return text
    .split(/\r\n|\r|\n/)
    .map((line) =>
      line
        .replace(/^ {0,3}#{1,6}[ \t]+(.*?)(?:[ \t]+#+)?[ \t]*$/, '$1')
        .replace(/^[ \t]*[-+][ \t]+/, '')
        .replace(/^ {0,3}>[ \t]?/, '')
        .replace(/(?<!\\)\*\*(?!\s)(.+?)(?<![\s\\])\*\*/g, '$1')
        .replace(/(?<!\\)__(?!\s)(.+?)(?<![\s\\])__/g, '$1')
        .replace(/\\$/, '')
        .replace(/\\([!-/:-@[-`{-~])/g, '$1'),
    )
    .join('\n');
}
