/** A line that may name a section. */
export interface SectionName {
  readonly name: string;
  readonly remark: string;
  /** Capitals only, which need no row line right after them. */
  readonly capitals: boolean;
}

const NAME = /^([^()[\]:.;*]{1,60}?)[ \t]*(?:[([]([^()[\]]*)[)\]])?[ \t]*(:)?$/u;

/** Reads a line as the name of a section: a few words, with or without a remark in parentheses or a colon. Null if it can't be one. */
export function readSectionName(line: string): SectionName | null {
  const match = NAME.exec(line);
  const name = match?.[1]?.trim();
  if (!match || name === undefined || !/\p{L}/u.test(name) || name.split(/\s+/).length > 7 || /^[\d,]/.test(name) || name.endsWith(',')) return null;
  return { name, remark: match[2]?.trim() ?? '', capitals: name === name.toUpperCase() && name !== name.toLowerCase() };
}
