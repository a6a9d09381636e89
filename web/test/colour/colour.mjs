// Colour arithmetic of the benchmark: CIEDE2000 and OKLab by culori, held to
// the published pairs before anything is measured.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { converter, differenceCiede2000 } from 'culori';
import { root } from './house.mjs';

const toLab = converter('lab65');
const toOklab = converter('oklab');
const fromOklab = converter('rgb');
const difference = differenceCiede2000();

/** One colour as 0xRRGGBB. */
export const packed = (r, g, b) => (r << 16) | (g << 8) | b;
export const unpacked = (c) => [c >> 16, (c >> 8) & 255, c & 255];
export const hex = (c) => `#${c.toString(16).padStart(6, '0')}`;

const unit = (c) => ({ mode: 'rgb', r: (c >> 16) / 255, g: ((c >> 8) & 255) / 255, b: (c & 255) / 255 });
const byte = (v) => Math.min(255, Math.max(0, Math.round(v * 255)));

export const labOf = (c) => toLab(unit(c));

export function oklabOf(c) {
  const o = toOklab(unit(c));
  return [o.l, o.a, o.b];
}

export function ofOklab([l, a, b]) {
  const c = fromOklab({ mode: 'oklab', l, a, b });
  return packed(byte(c.r), byte(c.g), byte(c.b));
}

/** CIEDE2000 of two colours given as 0xRRGGBB. */
export const ciede2000 = (c, d) => (c === d ? 0 : difference(labOf(c), labOf(d)));

/** CIEDE2000 to one colour: a function of another colour. */
export function ciede2000Of(c) {
  const lab = labOf(c);
  return (d) => difference(lab, labOf(d));
}

/** The greatest error, in CIEDE2000, that the published four decimals allow. */
const TABLE_ERROR = 1e-4;

/** Fails unless CIEDE2000 gives all 34 pairs of Sharma, Wu & Dalal (2005), Table 1. */
export function checkCiede2000() {
  const rows = readFileSync(join(root, 'testdata/reference/ciede2000_sharma2005.csv'), 'utf8').trim().split('\n').slice(1);
  for (const row of rows) {
    const [pair, l1, a1, b1, l2, a2, b2, published] = row.split(',').map(Number);
    const got = difference({ mode: 'lab65', l: l1, a: a1, b: b1 }, { mode: 'lab65', l: l2, a: a2, b: b2 });
    if (!(Math.abs(got - published) <= TABLE_ERROR)) throw new Error(`CIEDE2000 of pair ${pair} is ${got}; published is ${published}.`);
  }
  if (rows.length !== 34) throw new Error(`The table of CIEDE2000 pairs has ${rows.length} rows; 34 are published.`);
  return rows.length;
}

/** IEC 61966-2-1: sRGB 0..1 to linear light 0..1. */
export const decoded = (v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);

/** The same for 8-bit values. */
export const LINEAR = Float64Array.from({ length: 256 }, (_, i) => decoded(i / 255));

/** Linear light to sRGB, 0..255, not rounded. */
export function encoded(v) {
  const c = Math.min(1, Math.max(0, v));
  return 255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055);
}
