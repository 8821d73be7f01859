import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [sveltekit()],
  build: { target: 'es2022', rolldownOptions: { checks: { pluginTimings: false } } },
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/e2e/**', 'tests/bench/**'],
    environment: 'node',
    testTimeout: 20_000,
  },
});
