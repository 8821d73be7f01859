import resvgAt from '@resvg/resvg-wasm/index_bg.wasm?url';
import type { FontFile, PublishResources } from '$publish/fonts/fontFiles.ts';
import alegreyaBold from '$publish/fonts/files/AlegreyaSans-Bold.ttf?url';
import alegreyaItalic from '$publish/fonts/files/AlegreyaSans-Italic.ttf?url';
import alegreyaRegular from '$publish/fonts/files/AlegreyaSans-Regular.ttf?url';
import dejaVu from '$publish/fonts/files/DejaVuSans.ttf?url';
import literataBold from '$publish/fonts/files/Literata-Bold.ttf?url';
import literataItalic from '$publish/fonts/files/Literata-Italic.ttf?url';
import literataRegular from '$publish/fonts/files/Literata-Regular.ttf?url';

const FONTS_AT: Readonly<Record<FontFile, string>> = {
  'Literata-Regular': literataRegular, 'Literata-Italic': literataItalic, 'Literata-Bold': literataBold,
  'AlegreyaSans-Regular': alegreyaRegular, 'AlegreyaSans-Italic': alegreyaItalic, 'AlegreyaSans-Bold': alegreyaBold, DejaVuSans: dejaVu,
};

const known = new Map<string, Promise<Uint8Array>>();

/** Fonts and drawer as the app has them, each fetched when first asked for and kept; a failed fetch is tried again the next time. */
export const APP_RESOURCES: PublishResources = {
  font: (file) => fetched(FONTS_AT[file]),
  resvg: () => fetched(resvgAt),
};

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
