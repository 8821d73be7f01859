import { fileURLToPath } from 'node:url';
import { svelte, vitePreprocess } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

const source = (part: string): string => fileURLToPath(new URL(`../../src/${part}`, import.meta.url));

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  logLevel: 'warn',
  plugins: [svelte({ configFile: false, preprocess: vitePreprocess() })],
  resolve: { alias: { $engine: source('engine'), $editor: source('editor'), $keep: source('keep') } },
  build: { target: 'es2022' },
});
