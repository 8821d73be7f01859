import ts from 'typescript-eslint';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';

export default ts.config(
  { ignores: ['**/node_modules/**', '**/build/**', '**/.svelte-kit/**'] },
  ...ts.configs.strict,
  ...svelte.configs.recommended,
  {
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'no-console': ['error', { allow: ['warn', 'error'] }],
      eqeqeq: 'error',
      'max-lines': ['error', { max: 400 }],
      'svelte/no-at-html-tags': 'error',
      'svelte/no-navigation-without-resolve': 'off',
      'svelte/prefer-svelte-reactivity': 'off',
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser } },
  },
  { files: ['src/cli/**', 'tests/**'], rules: { 'no-console': 'off' } },
  {
    files: ['src/engine/**'],
    rules: {
      'no-restricted-globals': ['error', 'window', 'document', 'Date', 'performance', 'console', 'process', 'setTimeout'],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'the engine is deterministic' }],
    },
  },
);
