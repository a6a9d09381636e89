import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/** What the page may do: run its own files and nothing else, speak to its own
 * origin and nobody else. The engine's worker starts from a blob, which
 * inherits this. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self' blob:",
  "style-src 'self'",
  "font-src 'self'",
  "manifest-src 'self'",
  "img-src 'self' blob: data:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Puts the policy into the built page, before anything it binds. The dev
 * server goes without: it puts styles into the page as it serves them. */
export function policy(): Plugin {
  return {
    name: 'policy',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY }, injectTo: 'head-prepend' },
    ],
  };
}

export default defineConfig({
  // The page must work from any sub-path of any static host.
  base: './',
  publicDir: 'public',
  plugins: [policy()],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    // The policy allows no inline style, script or font.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // What the first screen does not wait for is told by where it lies.
    rolldownOptions: { output: { chunkFileNames: 'assets/later/[name]-[hash].js' } },
  },
  server: { host: '127.0.0.1', fs: { strict: true, allow: ['..'] } },
  test: {
    include: ['src/**/*.test.ts', 'src/**/*.test.tsx', 'dev/**/*.test.ts', 'test/unit/**/*.test.ts'],
    environment: 'node',
  },
});
