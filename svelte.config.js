import adapter from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** @type {import('@sveltejs/kit').Config} */
export default {
  preprocess: vitePreprocess(),
  kit: {
    adapter: adapter({ fallback: '404.html' }),
    alias: { $engine: 'src/engine', $editor: 'src/editor', $keep: 'src/keep', $publish: 'src/publish' },
    // Nothing but this app's own files; scripts in pages only by their hash. `wasm-unsafe-eval` lets WebAssembly modules of the app run, no text.
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['none'], 'script-src': ['self', 'wasm-unsafe-eval'], 'style-src': ['self'], 'style-src-attr': ['unsafe-inline'], 'img-src': ['self', 'data:', 'blob:'], 'font-src': ['self'],
        'connect-src': ['self'], 'worker-src': ['self'], 'manifest-src': ['self'], 'frame-src': ['blob:'], 'base-uri': ['none'], 'form-action': ['none'], 'object-src': ['none'],
      },
    },
    files: { assets: 'static' },
    typescript: { config: (config) => ({ ...config, include: [] }) },
  },
};
