// General-purpose quantisers, each asked for the colours in view, none dithered.
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import sharp from 'sharp';
import { buildPaletteSync, utils } from 'image-q';
import { ofOklab, oklabOf, packed } from './colour.mjs';
import { lineProgram } from './engine.mjs';
import { root, work } from './house.mjs';
import { kmeans, nearestOf } from './kmeans.mjs';
import { NONE, census, flatsOf, read, writePNG } from './raster.mjs';

const goQuantize = lineProgram(join(root, '.build/colour/goquantize'));
export const closePeers = () => goQuantize.close();

const out = () => join(work(), 'peer.png');
const run = (command, ...args) => execFileSync(command, args, { stdio: ['ignore', 'ignore', 'inherit'] });

/** Programs that read a file and write one with a palette. Where the ground is
 * clear it takes an entry of that palette, so one more is asked for. */
const programs = {
  pngquant: async (file, k) => run('pngquant', String(Math.max(2, k)), '--nofs', '--speed', '1', '--force', '--output', out(), '--', await asPNG(file)),
  libvips: async (file, k) => sharp(file).png({ palette: true, colours: Math.max(2, k), dither: 0, effort: 10 }).toFile(out()),
};

/** pngquant reads PNG only. */
async function asPNG(file) {
  if (file.endsWith('.png')) return file;
  const path = join(work(), 'peer-in.png');
  await sharp(file).png({ compressionLevel: 1 }).toFile(path);
  return path;
}

/** Libraries that find a palette in a list of pixels: clear ones are left out. */
const finders = {
  goquantize: async (v, k) => (await goQuantize.ask({ file: v.peerFile, count: k })).palette,
  'image-q wu': (v, k, p) => imageQ(p, k),
  imagemagick: (v, k, p) => imageMagick(p, k),
};

/** The seen pixels in one row after another, with no clear ones between. */
function lined({ data }) {
  const seen = Buffer.alloc(data.length);
  let n = 0;
  for (let i = 0; i < data.length; i += 4) if (data[i + 3] >= 128) n += data.copy(seen, n, i, i + 4);
  return seen.subarray(0, n);
}

function imageQ(p, k) {
  const seen = lined(p);
  const points = utils.PointContainer.fromUint8Array(seen, seen.length / 4, 1);
  const palette = buildPaletteSync([points], { colors: k, paletteQuantization: 'wuquant', colorDistanceFormula: 'euclidean' });
  return palette.getPointContainer().getPointArray().map((c) => packed(c.r, c.g, c.b));
}

/** Its tree of colours spends entries on half-clear ones, so it sees opaque
 * pixels only, like the libraries; of its colour spaces sRGB served it best. */
async function imageMagick(p, k) {
  const seen = lined(p);
  const path = join(work(), 'peer-in.png');
  await writePNG(path, { w: p.w, h: Math.ceil(seen.length / 4 / p.w), data: filled(seen, 4 * p.w) });
  run('convert', path, '-alpha', 'off', '+dither', '-quantize', 'sRGB', '-colors', String(k), `PNG32:${out()}`);
  return flatsOf(await read(out())).palette;
}

/** The last row made whole with the last pixel. */
function filled(seen, row) {
  const missing = (row - (seen.length % row)) % row;
  return Buffer.concat([seen, Buffer.alloc(missing, seen.subarray(-4))]);
}

export const PEERS = [...Object.keys(programs), ...Object.keys(finders), 'k-means'];

/** Labels and palette of one peer on a variant; at most the count asked for. */
export async function peer(name, v) {
  const begun = performance.now();
  const flat = await answered(name, v);
  const ms = performance.now() - begun;
  const more = flat.palette.length > v.asked;
  return { ...(more ? merged(flat, v.asked) : flat), ms, extra: { merged: more ? flat.palette.length : 0 } };
}

async function answered(name, v) {
  if (programs[name]) {
    await programs[name](v.peerFile, v.asked + (v.clear ? 1 : 0));
    return flatsOf(await read(out()));
  }
  const p = await read(v.peerFile);
  const count = census(p);
  if (name === 'k-means') {
    const { palette, to } = kmeans(count, v.asked, v.name);
    return labelled(count, palette, to);
  }
  const palette = await finders[name](v, v.asked, p);
  return labelled(count, palette, nearestInSRGB(count, palette));
}

export function labelled(count, palette, to) {
  return { palette, labels: Uint8Array.from(count.of, (i) => (i < 0 ? NONE : to[i])) };
}

/** Nearest by plain distance of 8-bit sRGB, as these libraries label by themselves. */
function nearestInSRGB(count, palette) {
  const parts = palette.map((c) => [c >> 16, (c >> 8) & 255, c & 255]);
  return Uint8Array.from(count.colours, (c) => {
    const d = parts.map(([r, g, b]) => ((c >> 16) - r) ** 2 + (((c >> 8) & 255) - g) ** 2 + ((c & 255) - b) ** 2);
    return d.indexOf(Math.min(...d));
  });
}

/** Brings a palette down to k by joining, each time, the two colours that cost
 * the least squared error in OKLab (Ward, 1963). */
function merged({ labels, palette }, k) {
  const groups = palette.map((c, i) => ({ members: [i], at: oklabOf(c), n: 0 }));
  for (const l of labels) if (l !== NONE) groups[l].n++;
  while (groups.length > k) {
    let best;
    groups.forEach((g, i) => groups.slice(0, i).forEach((h, j) => {
      const cost = ((g.n * h.n) / Math.max(1, g.n + h.n)) * g.at.reduce((s, v, c) => s + (v - h.at[c]) ** 2, 0);
      if (!best || cost < best.cost) best = { cost, i, j };
    }));
    const [g, h] = [groups[best.i], groups[best.j]];
    const n = g.n + h.n;
    groups[best.j] = { members: [...h.members, ...g.members], at: h.at.map((v, c) => (v * h.n + g.at[c] * g.n) / Math.max(1, n)), n };
    groups.splice(best.i, 1);
  }
  const to = new Uint8Array(256).fill(NONE);
  groups.forEach((g, i) => g.members.forEach((m) => (to[m] = i)));
  return { palette: groups.map((g) => ofOklab(g.at)), labels: labels.map((l) => to[l]) };
}

/** No contender: the true palette, each pixel given its nearest colour, with the
 * light and the paper of a photograph taken out exactly. It shows what labels cost. */
export async function trueColours(v) {
  const begun = performance.now();
  const count = census(await read(v.levelFile));
  const palette = v.asked > v.K ? [...v.palette, 0xffffff] : v.palette;
  return { ...labelled(count, palette, nearestOf(count, palette)), ms: performance.now() - begun, extra: {} };
}

/** Palettes alone, for pictures without a flat truth. */
export async function peerPalette(name, file, k, count, seed) {
  if (name === 'k-means') return kmeans(count, k, seed).palette;
  await programs[name](file, k);
  return flatsOf(await read(out())).palette;
}
