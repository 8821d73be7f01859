import { spawnSync } from 'node:child_process';

/** What is wrong with an XML text, or null: `xmllint` where it is installed, else a strict reading of tags and references. */
export function xmlFault(xml: string): string | null {
  const run = spawnSync('xmllint', ['--noout', '-'], { input: xml, encoding: 'utf8' });
  if (!run.error) return run.status === 0 ? null : run.stderr;
  return tagFault(xml);
}

function tagFault(xml: string): string | null {
  const open: string[] = [];
  const illegal = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/u.exec(xml);
  if (illegal) return `character ${illegal[0].codePointAt(0)} at ${illegal.index}`;
  for (const [whole, closing, name, attributes, empty] of xml.replace(/^<\?xml[^?]*\?>/, '').matchAll(/<(\/?)([A-Za-z][\w:.-]*)((?:\s+[\w:.-]+="[^"<]*")*)\s*(\/?)>|<[^>]*>?/g)) {
    if (!name) return `not a tag: ${whole}`;
    if (closing) {
      if (attributes || open.pop() !== name) return `closed without being open: ${whole}`;
    } else if (!empty) open.push(name);
  }
  const reference = /&(?!(?:amp|lt|gt|quot|apos|#\d+|#x[\da-f]+);)/i.exec(xml);
  if (reference) return `bare & at ${reference.index}`;
  return open.length === 0 ? null : `left open: ${open.join(', ')}`;
}

/** Every value of an attribute, in order. */
export function attributeValues(xml: string, name: string): string[] {
  return [...xml.matchAll(new RegExp(`\\s${name}="([^"]*)"`, 'g'))].map(([, value]) => value!);
}
