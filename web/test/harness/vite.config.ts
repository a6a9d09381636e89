import { defineConfig } from 'vite';
import { policy } from '../../vite.config';

// The engine alone, built like the page and bound by the same policy.
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  publicDir: false,
  plugins: [policy()],
  build: { outDir: '../../../.build/harness', emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
});
