// Plain k-means in OKLab over the distinct colours of a picture, weighted by
// pixels: k-means++ starts, Lloyd's steps, the best of a few starts.
import { oklabOf, ofOklab } from './colour.mjs';
import { chance } from './house.mjs';

const STARTS = 3;
const MOST_STEPS = 60;
/** Share of the weighted error that a step must still take off. */
const STILL = 1e-4;

/** Colours as three numbers each in one array. */
export function oklabs(colours) {
  const out = new Float64Array(3 * colours.length);
  colours.forEach((c, i) => out.set(oklabOf(c), 3 * i));
  return out;
}

/** The index of the nearest centre for every point, and the weighted squared error. */
export function nearest(points, weights, centres, to) {
  let error = 0;
  for (let i = 0, o = 0; i < weights.length; i++, o += 3) {
    let [best, at] = [Infinity, 0];
    for (let k = 0; k < centres.length; k += 3) {
      const [l, a, b] = [points[o] - centres[k], points[o + 1] - centres[k + 1], points[o + 2] - centres[k + 2]];
      const d = l * l + a * a + b * b;
      if (d < best) [best, at] = [d, k / 3];
    }
    to[i] = at;
    error += weights[i] * best;
  }
  return error;
}

/** k-means++ (Arthur & Vassilvitskii, 2007): each centre by lot, by squared distance. */
function seeds(points, weights, k, rand) {
  const centres = [];
  const d = new Float64Array(weights.length).fill(Infinity);
  let claims = Float64Array.from(weights);
  while (centres.length < 3 * k) {
    const i = drawn(claims, rand);
    if (i < 0) break;
    const c = points.subarray(3 * i, 3 * i + 3);
    centres.push(...c);
    claims = claims.map((_, j) => {
      const far = (points[3 * j] - c[0]) ** 2 + (points[3 * j + 1] - c[1]) ** 2 + (points[3 * j + 2] - c[2]) ** 2;
      d[j] = Math.min(d[j], far);
      return weights[j] * d[j];
    });
  }
  return Float64Array.from(centres);
}

function drawn(claims, rand) {
  let left = rand() * claims.reduce((a, b) => a + b, 0);
  for (let i = 0; i < claims.length; i++) {
    left -= claims[i];
    if (left < 0) return i;
  }
  return claims.findIndex((c) => c > 0);
}

/** Lloyd's steps from given centres, which are moved. */
export function settle(points, weights, centres) {
  const to = new Uint8Array(weights.length);
  let last = Infinity;
  for (let step = 0; step < MOST_STEPS; step++) {
    const error = nearest(points, weights, centres, to);
    if (error === 0 || last - error < STILL * last) return { centres, to, error };
    last = error;
    move(points, weights, centres, to);
  }
  return { centres, to, error: nearest(points, weights, centres, to) };
}

function move(points, weights, centres, to) {
  const sums = new Float64Array(centres.length);
  const mass = new Float64Array(centres.length / 3);
  for (let i = 0; i < weights.length; i++) {
    mass[to[i]] += weights[i];
    for (let c = 0; c < 3; c++) sums[3 * to[i] + c] += weights[i] * points[3 * i + c];
  }
  for (let k = 0; k < mass.length; k++) {
    if (mass[k] > 0) for (let c = 0; c < 3; c++) centres[3 * k + c] = sums[3 * k + c] / mass[k];
  }
}

/** Palette of k colours, and which one each distinct colour has. */
export function kmeans(count, k, seed) {
  const points = oklabs(count.colours);
  const weights = Float64Array.from(count.counts);
  const rand = chance(seed);
  let best;
  for (let start = 0; start < STARTS; start++) {
    const run = settle(points, weights, seeds(points, weights, k, rand));
    if (!best || run.error < best.error) best = run;
  }
  return { palette: coloursOf(best.centres), to: best.to };
}

export function coloursOf(centres) {
  return Array.from({ length: centres.length / 3 }, (_, k) => ofOklab(centres.subarray(3 * k, 3 * k + 3)));
}

/** The nearest palette colour, in OKLab, of every distinct colour. */
export function nearestOf(count, palette) {
  const to = new Uint8Array(count.colours.length);
  nearest(oklabs(count.colours), count.counts, oklabs(palette), to);
  return to;
}
