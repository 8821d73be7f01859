import adapter from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** @type {import('@sveltejs/kit').Config} */
export default {
  preprocess: vitePreprocess(),
  kit: {
    adapter: adapter({ fallback: '404.html' }),
    alias: { $engine: 'src/engine', $editor: 'src/editor', $keep: 'src/keep' },
    files: { assets: 'static' },
    typescript: { config: (config) => ({ ...config, include: [] }) },
  },
};
