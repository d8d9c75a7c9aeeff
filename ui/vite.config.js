import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

// Relative paths and no inlined assets, so that the shell's strict content
// security policy (`default-src 'self'`) holds.
export default defineConfig({
  base: './',
  plugins: [svelte()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: ['safari15', 'chrome100'],
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
