// How far a reduced picture is from the true one. All figures speak of the
// drawing alone: the pixels that have a true colour.
import { ciede2000, hex, labOf } from './colour.mjs';
import { NONE } from './raster.mjs';

/** Share of the drawing from which a true colour has to be found. */
const COUNTS_FROM = 0.005;
/** CIEDE2000 within which a colour is found, and within which it is nearly. */
const FOUND = 2;
const NEARLY = 5;
/** Distance from a boundary, px, within which edges are judged. */
const NEAR = 2;
/** A swatch is an edge mix when it is no true colour and more than this share of it lies near boundaries. */
const MIX_NEAR = 0.5;

/** Steps to every pixel no farther than NEAR. */
const DISC = [];
for (let y = -NEAR; y <= NEAR; y++) for (let x = -NEAR; x <= NEAR; x++) if ((x || y) && x * x + y * y <= NEAR * NEAR) DISC.push([x, y]);

/** 1 where another label of the truth, the ground among them, lies within NEAR px. */
export function nearBoundary(truth, w, h) {
  const near = new Uint8Array(truth.length);
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      const here = truth[y * w + x];
      if (here === NONE) continue;
      near[y * w + x] = DISC.some(([dx, dy]) => {
        const [u, v] = [x + dx, y + dy];
        return u >= 0 && v >= 0 && u < w && v < h && truth[v * w + u] !== here;
      }) ? 1 : 0;
    }
  }
  return near;
}

/** Pixels of one label joined along their sides: calls with the number of
 * pixels of each piece and how many of them are drawing. */
function eachPiece(labels, truth, w, h, onlyDrawing, call) {
  const seen = onlyDrawing ? Uint8Array.from(truth, (t) => (t === NONE ? 1 : 0)) : new Uint8Array(labels.length);
  const stack = new Int32Array(labels.length);
  for (let start = 0; start < labels.length; start++) {
    if (seen[start]) continue;
    const label = labels[start];
    let [top, all, drawn] = [0, 0, 0];
    const visit = (i) => {
      if (seen[i] || labels[i] !== label) return;
      seen[i] = 1;
      stack[top++] = i;
    };
    visit(start);
    while (top > 0) {
      const i = stack[--top];
      all++;
      if (truth[i] !== NONE) drawn++;
      const x = i % w;
      if (x > 0) visit(i - 1);
      if (x < w - 1) visit(i + 1);
      if (i >= w) visit(i - w);
      if (i < (h - 1) * w) visit(i + w);
    }
    call(all, drawn);
  }
}

/** Pieces among the pixels of the drawing; where ground bites into its rim, each bite is one. */
export function piecesOf(labels, truth, w, h) {
  let pieces = 0;
  eachPiece(labels, truth, w, h, true, () => pieces++);
  return pieces;
}

/** Pieces of the whole picture that lie for the greater part in the drawing: bites are none. */
export function innerPiecesOf(labels, truth, w, h) {
  let pieces = 0;
  eachPiece(labels, truth, w, h, false, (all, drawn) => (pieces += 2 * drawn > all ? 1 : 0));
  return pieces;
}

/** What follows from the truth alone; kept for all contenders of a variant. */
export function known(v) {
  const near = nearBoundary(v.truth, v.w, v.h);
  const counts = new Float64Array(v.palette.length);
  const nears = new Float64Array(v.palette.length);
  for (let i = 0; i < v.truth.length; i++) {
    if (v.truth[i] === NONE) continue;
    counts[v.truth[i]]++;
    nears[v.truth[i]] += near[i];
  }
  const area = counts.reduce((a, b) => a + b, 0);
  return { near, counts, nears, area, pieces: piecesOf(v.truth, v.truth, v.w, v.h) }; // truth has no bites: both counts are one
}

/** Rows: true colours. Columns: swatches, then "no colour". All pixels, and those near a boundary. */
function crossed(v, k, labels, swatches) {
  const columns = swatches + 1;
  const all = new Float64Array(v.palette.length * columns);
  const near = new Float64Array(all.length);
  for (let i = 0; i < labels.length; i++) {
    if (v.truth[i] === NONE) continue;
    const cell = v.truth[i] * columns + Math.min(labels[i], swatches);
    all[cell]++;
    near[cell] += k.near[i];
  }
  return { columns, all, near };
}

/** The one-to-one assignment of true colours to swatches that gets most pixels
 * right, by trying all sets of swatches: to[t] is a swatch or -1. */
export function assigned(cells, rows, columns, swatches) {
  const sets = 1 << swatches;
  const best = Array.from({ length: rows + 1 }, () => new Float64Array(sets).fill(-1));
  best[0][0] = 0;
  const from = Array.from({ length: rows }, () => new Int8Array(sets));
  for (let t = 0; t < rows; t++) {
    for (let set = 0; set < sets; set++) {
      if (best[t][set] < 0) continue;
      improve(best[t + 1], from[t], set, best[t][set], -1);
      for (let s = 0; s < swatches; s++) {
        if (!(set & (1 << s))) improve(best[t + 1], from[t], set | (1 << s), best[t][set] + cells[t * columns + s], s);
      }
    }
  }
  let set = best[rows].reduce((top, v, i) => (v > best[rows][top] ? i : top), 0);
  const to = Array.from({ length: rows });
  for (let t = rows - 1; t >= 0; t--) {
    to[t] = from[t][set];
    if (to[t] >= 0) set &= ~(1 << to[t]);
  }
  return to;
}

function improve(best, from, set, value, swatch) {
  if (value <= best[set]) return;
  best[set] = value;
  from[set] = swatch;
}

/** Greatest number of swatches the assignment is made for. */
export const MOST_SWATCHES = 16;

/** All figures of one contender on one variant of a picture. */
export function measured(v, k, labels, palette, ground) {
  const used = usedSwatches(v, labels, palette);
  const x = crossed(v, k, used.labels, used.palette.length);
  const to = assigned(x.all, v.palette.length, x.columns, used.palette.length);
  const right = (cells) => to.reduce((sum, s, t) => sum + (s < 0 ? 0 : cells[t * x.columns + s]), 0);
  const colours = coloursOf(v, k, x, to, used.palette, ground);
  const judged = colours.filter((c) => c.share >= COUNTS_FROM);
  const pieces = piecesOf(labels, v.truth, v.w, v.h);
  return {
    every: judged.every((c) => c.off <= FOUND) ? 1 : 0,
    found: judged.filter((c) => c.off <= FOUND).length / judged.length,
    nearly: judged.filter((c) => c.off <= NEARLY).length / judged.length,
    right: right(x.all) / k.area,
    edge: right(x.near) / k.nears.reduce((a, b) => a + b, 0),
    mixes: mixesOf(v, k, x, used.palette, ground).length,
    pieces: pieces / k.pieces,
    inner: innerPiecesOf(labels, v.truth, v.w, v.h) / k.pieces,
    off: meanOff(v, x, used.palette, ground) / k.area,
    swatches: used.palette.length,
    detail: { pieces, truePieces: k.pieces, palette: used.palette.map(hex), mixes: mixesOf(v, k, x, used.palette, ground).map(hex), colours },
  };
}

/** For each true colour, the label it is assigned to. */
export function assignedColours(v, labels, palette) {
  const k = { near: new Uint8Array(labels.length) };
  const x = crossed(v, k, labels, palette.length);
  return assigned(x.all, v.palette.length, x.columns, palette.length);
}

/** Only the swatches that the drawing uses, numbered anew; two of one colour are one. */
function usedSwatches(v, labels, palette) {
  const number = new Map();
  const renumber = new Uint8Array(256).fill(NONE);
  const has = new Uint8Array(256);
  for (let i = 0; i < labels.length; i++) if (v.truth[i] !== NONE) has[labels[i]] = 1;
  palette.forEach((c, l) => {
    if (!has[l]) return;
    if (!number.has(c)) number.set(c, number.size);
    renumber[l] = number.get(c);
  });
  if (number.size > MOST_SWATCHES) throw new Error(`${v.name}: ${number.size} swatches are more than can be assigned.`);
  return { palette: [...number.keys()], labels: Uint8Array.from(labels, (l) => renumber[l]) };
}

/** For each true colour: its share, how far the nearest swatch is, and what became of its pixels. */
function coloursOf(v, k, x, to, palette, ground) {
  return v.palette.map((c, t) => {
    const row = Array.from(x.all.subarray(t * x.columns, (t + 1) * x.columns));
    const lost = row.map((n, s) => [s, n]).filter(([s, n]) => s !== to[t] && n > 0).sort((a, b) => b[1] - a[1]).slice(0, 3);
    return {
      rgb: hex(c), share: k.counts[t] / k.area, nearShare: k.nears[t] / k.counts[t],
      off: Math.min(Infinity, ...palette.map((p) => ciede2000(c, p))),
      closest: Math.min(...v.palette.filter((d) => d !== c).map((d) => ciede2000(c, d))),
      fromGround: ciede2000(c, ground), light: labOf(c).l,
      to: to[t] < 0 ? null : hex(palette[to[t]]),
      right: to[t] < 0 ? 0 : row[to[t]] / k.counts[t],
      lost: lost.map(([s, n]) => ({ to: s === palette.length ? 'none' : hex(palette[s]), share: n / k.area })),
    };
  });
}

/** Swatches that are no true colour, lie mostly along boundaries, and hold no true colour's greater part. */
function mixesOf(v, k, x, palette, ground) {
  return palette.filter((p, s) => {
    if ([...v.palette, ground].some((c) => ciede2000(p, c) <= NEARLY)) return false;
    let [all, near] = [0, 0];
    for (let t = 0; t < v.palette.length; t++) {
      const n = x.all[t * x.columns + s];
      if (n > k.counts[t] / 2) return false;
      all += n;
      near += x.near[t * x.columns + s];
    }
    return near > MIX_NEAR * all;
  });
}

/** Sum of CIEDE2000 over the drawing; a pixel without colour shows the ground. */
function meanOff(v, x, palette, ground) {
  let sum = 0;
  v.palette.forEach((c, t) => {
    for (let s = 0; s < x.columns; s++) {
      const n = x.all[t * x.columns + s];
      if (n > 0) sum += n * ciede2000(c, s < palette.length ? palette[s] : ground);
    }
  });
  return sum;
}
