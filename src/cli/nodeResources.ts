import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { PublishResources } from '../publish/fonts/fontFiles.ts';

const { resolve } = createRequire(import.meta.url);

/** Fonts and drawer from the files that the app is built from. */
export const NODE_RESOURCES: PublishResources = {
  font: async (file) => new Uint8Array(await readFile(new URL(`../publish/fonts/files/${file}.ttf`, import.meta.url))),
  resvg: async () => new Uint8Array(await readFile(resolve('@resvg/resvg-wasm/index_bg.wasm'))),
};
