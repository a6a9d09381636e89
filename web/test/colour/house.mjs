// Where things lie, and chance that is the same every time.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const here = dirname(fileURLToPath(import.meta.url));
export const root = join(here, '../../..');
export const store = join(root, '.build/colour');

/** A folder of the store, made when it is not there. */
export function room(...parts) {
  const path = join(store, ...parts);
  mkdirSync(path, { recursive: true });
  return path;
}

/** A folder of this run alone. */
export const work = () => room('work', String(process.pid));

export const digest = (text) => createHash('sha256').update(text).digest('hex');

/** Says whether files of this folder, or of the repository, have changed. */
export const stampOf = (...files) => digest(files.map((f) => digest(readFileSync(f.startsWith('/') ? f : join(here, f)))).join()).slice(0, 16);

export const readJSON = (path) => (existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : undefined);
export const writeJSON = (path, value) => writeFileSync(path, JSON.stringify(value));

/** Uniform numbers in 0..1 from a text: the same text, the same numbers (mulberry32). */
export function chance(text) {
  let state = Number.parseInt(digest(text).slice(0, 8), 16);
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The value below which a share q of the numbers lie (nearest rank). */
export function quantile(values, q) {
  const all = values.filter((v) => Number.isFinite(v)).sort((a, b) => a - b);
  return all.length === 0 ? Number.NaN : all[Math.min(all.length - 1, Math.max(0, Math.ceil(q * all.length) - 1))];
}

export const median = (values) => quantile(values, 0.5);
export const mean = (values) => values.reduce((sum, v) => sum + v, 0) / values.length;
