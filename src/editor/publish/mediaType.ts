const TYPES: Readonly<Record<string, string>> = {
  pdf: 'application/pdf', svg: 'image/svg+xml', png: 'image/png', zip: 'application/zip', txt: 'text/plain;charset=utf-8', md: 'text/markdown;charset=utf-8', html: 'text/html;charset=utf-8',
};

/** Media type of a published file by the ending of its name (IANA media types). */
export function mediaType(name: string): string {
  return TYPES[name.slice(name.lastIndexOf('.') + 1).toLowerCase()] ?? 'application/octet-stream';
}
