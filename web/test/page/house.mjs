// What the page tests share: the built page or the engine alone, served, and a browser on it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve } from '../../dev/serve.mjs';
import { chromium } from '../driver/chromium.mjs';

export const root = fileURLToPath(new URL('../../..', import.meta.url));
export const drawings = join(root, 'testdata/drawings');
export const fixtures = join(root, 'web/test/fixtures');

/** Serves the built page under a sub-path, as a static host might. */
export const servePage = () => serve(join(root, 'web/dist'), { path: '/some/shelf/' });

/** Serves the engine without the page. */
export const serveHarness = () => serve(join(root, '.build/harness'), { path: '/engine/' });

/** Opens an address in a browser of its own. */
export async function at(address, start = chromium) {
  const d = await start();
  await d.open(address);
  return d;
}

export const base64 = (path) => readFileSync(path).toString('base64');

const ALL = process.env.BADGEWRIGHT_SCREENS === 'all';

/** Widths of a phone, a tablet and a desk in the light and in the dark. Each width
 * and each scheme is looked at; every pair of them with BADGEWRIGHT_SCREENS=all. */
export const SCREENS = [
  { name: 'phone', w: 390, h: 844, scheme: 'dark' },
  { name: 'tablet', w: 820, h: 1180, scheme: 'light' },
  { name: 'desk', w: 1440, h: 900, scheme: 'dark' },
].flatMap((s) => (ALL ? [{ ...s, scheme: 'light' }, { ...s, scheme: 'dark' }] : [s]));

/** For what is seen after many steps: the narrowest alone, unless all are wanted. */
export const NARROWEST = ALL ? SCREENS : SCREENS.slice(0, 1);

/** Calls the engine by name in the harness page. */
export const call = (d, name, ask, places = []) => d.evaluate((n, a, p) => globalThis.harness.call(n, a, p), name, ask, places);

/** Opens a file in the harness page. */
export const open = (d, path, name, ground = 'auto') => d.evaluate((b, n, g) => globalThis.harness.open(b, n, g), base64(path), name, ground);

/** Reads a CSV of plain numbers and words into rows by column name. */
export function table(path) {
  const [head, ...lines] = readFileSync(path, 'utf8').trim().split(/\r?\n/).filter((l) => !l.startsWith('#'));
  const names = head.split(',');
  return lines.map((l) => Object.fromEntries(l.split(',').map((v, i) => [names[i], v])));
}
