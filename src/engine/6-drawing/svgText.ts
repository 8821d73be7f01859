/** Text for XML content and attribute values: markup escaped, characters that XML 1.0 doesn't allow left out. */
export function escapeXml(text: string): string {
  return legalXml(text).replace(/[&<>"']/g, (mark) => ENTITIES[mark]!);
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** XML 1.0 production 2 (Char): control characters, lone surrogates, U+FFFE and U+FFFF are not allowed; line ends become spaces. */
function legalXml(text: string): string {
  let legal = '';
  for (const mark of text) {
    const code = mark.codePointAt(0)!;
    if (code === 0x9 || code === 0xa || code === 0xd) legal += ' ';
    else if (code >= 0x20 && !(code >= 0x7f && code <= 0x9f) && !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff) legal += mark;
  }
  return legal;
}

/** A number rounded to 0.001, the shortest way. */
export function num(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return rounded === 0 ? '0' : String(rounded);
}

/** Path data through points, `x, y, x, y …`. */
export function pathData(points: readonly number[], closed: boolean): string {
  let d = '';
  for (let i = 0; i + 1 < points.length; i += 2) d += `${i === 0 ? 'M' : 'L'}${num(points[i]!)} ${num(points[i + 1]!)}`;
  return closed ? `${d}Z` : d;
}

/** Attributes in the order given; `null` and `undefined` leave one out. */
export function attributes(values: Readonly<Record<string, string | number | null | undefined>>): string {
  return Object.entries(values)
    .filter(([, value]) => value !== null && value !== undefined)
    .map(([name, value]) => ` ${name}="${typeof value === 'number' ? num(value) : escapeXml(value!)}"`)
    .join('');
}
