import resvg from '@resvg/resvg-wasm/index_bg.wasm?url';
import type { ResourceAddresses } from '$publish/fonts/resourcesAt.ts';
import alegreyaBold from '$publish/fonts/files/AlegreyaSans-Bold.ttf?url';
import alegreyaItalic from '$publish/fonts/files/AlegreyaSans-Italic.ttf?url';
import alegreyaRegular from '$publish/fonts/files/AlegreyaSans-Regular.ttf?url';
import dejaVu from '$publish/fonts/files/DejaVuSans.ttf?url';
import literataBold from '$publish/fonts/files/Literata-Bold.ttf?url';
import literataItalic from '$publish/fonts/files/Literata-Italic.ttf?url';
import literataRegular from '$publish/fonts/files/Literata-Regular.ttf?url';

/**
 * Fonts and drawer as the app has them. The page tells its workers these addresses, whole: what a worker imports itself is built a
 * second time, and the service worker doesn't know of it.
 */
export const APP_RESOURCES: ResourceAddresses = {
  fonts: {
    'Literata-Regular': whole(literataRegular), 'Literata-Italic': whole(literataItalic), 'Literata-Bold': whole(literataBold),
    'AlegreyaSans-Regular': whole(alegreyaRegular), 'AlegreyaSans-Italic': whole(alegreyaItalic), 'AlegreyaSans-Bold': whole(alegreyaBold), DejaVuSans: whole(dejaVu),
  },
  resvg: whole(resvg),
};

function whole(address: string): string {
  return new URL(address, location.href).href;
}
