import { defineConfig } from 'vitest/config';

// The page must work from any sub-path of any static host, so every address in
// it is relative.
export default defineConfig({
  base: './',
  publicDir: 'public',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    // The policy of the page allows no inline style, script or font.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rollupOptions: { input: { main: 'index.html' } },
  },
  server: { host: '127.0.0.1', fs: { strict: true } },
  preview: { host: '127.0.0.1', port: 4180, strictPort: false },
  test: {
    include: ['src/**/*.test.ts', 'src/**/*.test.tsx'],
    environment: 'node',
  },
});
