import type { FontFile, PublishResources } from './fontFiles.ts';

/** Where an app keeps its fonts and the drawer of pictures: addresses that it has built, so that they are kept for work without a network. */
export interface ResourceAddresses {
  readonly fonts: Readonly<Record<FontFile, string>>;
  readonly resvg: string;
}

const known = new Map<string, Promise<Uint8Array>>();

/** Fonts and drawer from addresses, each fetched when first asked for and kept; a failed fetch is tried again the next time. */
export function resourcesAt({ fonts, resvg }: ResourceAddresses): PublishResources {
  return { font: (file) => fetched(fonts[file]), resvg: () => fetched(resvg) };
}

function fetched(address: string): Promise<Uint8Array> {
  const before = known.get(address);
  if (before) return before;
  const bytes = fetch(address).then(async (response) => {
    if (!response.ok) throw new Error(`${address.split('/').pop()} could not be loaded (${response.status})`);
    return new Uint8Array(await response.arrayBuffer());
  });
  known.set(address, bytes);
  bytes.catch(() => known.delete(address));
  return bytes;
}
