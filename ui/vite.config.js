import { svelte } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath, URL } from 'node:url';
import { defaultClientConditions, defineConfig } from 'vite';
import { wholeApp } from './web/build.js';

const at = (path) => fileURLToPath(new URL(path, import.meta.url));

// Relative paths and no inlined assets, so that the shell's strict content
// security policy (`default-src 'self'`) holds.
//
// `--mode web` builds the same window for a browser (.ci/web): `#shell` is then `web/shell.ts`,
// and the core and the press
// are what wasm-bindgen wrote.
export default defineConfig(({ mode }) => {
  const isWeb = mode === 'web';
  return {
    base: './',
    plugins: [svelte(), ...(isWeb ? [wholeApp()] : [])],
    publicDir: isWeb ? 'web/public' : false,
    resolve: {
      conditions: isWeb ? ['web', ...defaultClientConditions] : [...defaultClientConditions],
      alias: isWeb
        ? {
            '#core': at('../target/web-glue/core.js'),
            '#press': at('../target/web-glue/press.js'),
          }
        : {},
    },
    worker: { format: 'es' },
    build: {
      outDir: isWeb ? '../target/web' : 'dist',
      emptyOutDir: true,
      target: ['safari15', 'chrome100'],
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
    },
  };
});
