import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';

// Three tiers, looking only downwards: parts know nothing of the app, trade
// parts know the trade's types and words, screens know the store. Only
// `lib/ipc.ts` talks to the shell, and only `lib/program.ts` is one.
const shell = {
  group: ['@tauri-apps/*'],
  message: 'Only lib/program.ts calls the program.',
};
const direction = (...patterns) => ({
  'no-restricted-imports': ['error', { patterns }],
});

export default ts.config(
  { ignores: ['dist', 'node_modules', 'src/lib/types.ts'] },
  js.configs.recommended,
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  {
    languageOptions: {
      globals: Object.fromEntries(
        [
          'window',
          'document',
          'navigator',
          'history',
          'localStorage',
          'sessionStorage',
          'matchMedia',
          'MutationObserver',
          'setTimeout',
          'clearTimeout',
          'setInterval',
          'clearInterval',
          'requestAnimationFrame',
          'cancelAnimationFrame',
          'crypto',
          'HTMLElement',
          'HTMLInputElement',
          'HTMLDialogElement',
          'HTMLTextAreaElement',
          'SVGElement',
          'SVGSVGElement',
          'Element',
          'Event',
          'EventTarget',
          'FocusEvent',
          'KeyboardEvent',
          'MouseEvent',
          'PointerEvent',
          'PopStateEvent',
          'ResizeObserver',
          'WakeLockSentinel',
          'console',
        ].map((name) => [name, 'readonly']),
      ),
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser } },
    rules: { 'svelte/no-at-html-tags': 'error' },
  },
  {
    // The second shell is of the browser, down to its workers; what builds it runs in Node.
    files: ['web/**'],
    languageOptions: {
      parserOptions: { parser: ts.parser },
      globals: Object.fromEntries(
        [
          ...['AbortSignal', 'Blob', 'Buffer', 'DOMException', 'File', 'MessageChannel'],
          ...['MessageEvent', 'OffscreenCanvas', 'Response', 'ServiceWorker', 'URL', 'WebAssembly'],
          ...[
            'Worker',
            'btoa',
            'caches',
            'createImageBitmap',
            'fetch',
            'location',
            'process',
            'self',
          ],
        ].map((name) => [name, 'readonly']),
      ),
    },
  },
  {
    // Tests run in Node, without a browser.
    files: ['test/**', '**/*.test.js'],
    languageOptions: { globals: { URL: 'readonly', setImmediate: 'readonly' } },
  },
  { files: ['src/**'], ignores: ['src/lib/program.ts'], rules: direction(shell) },
  {
    files: ['src/parts/**'],
    rules: direction(shell, {
      regex: '\\.\\./(trade|screens|lib/(?!types$))',
      message: 'Parts know nothing of the app.',
    }),
  },
  {
    files: ['src/trade/**'],
    rules: direction(shell, {
      regex: '\\.\\./(screens|lib/(ipc|store))',
      message: 'Trade parts get what they show handed in.',
    }),
  },
  {
    files: ['src/lib/**'],
    ignores: ['src/lib/program.ts'],
    rules: direction(shell, {
      regex: '\\.\\./(parts|trade|screens)',
      message: 'The store knows no screens.',
    }),
  },
  {
    files: ['src/screens/**'],
    rules: direction(shell, {
      regex: 'lib/ipc',
      message: 'Screens go through the store.',
    }),
  },
);
