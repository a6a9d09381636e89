// Pictures without a flat truth: how close a palette of few colours can come
// when every pixel takes its nearest one.
import { join } from 'node:path';
import { ourFlats, PROGRAM } from './engine.mjs';
import { readJSON, room, stampOf, writeJSON } from './house.mjs';
import { coloursOf, nearestOf, oklabs, settle } from './kmeans.mjs';
import { ciede2000Of } from './colour.mjs';
import { paintings } from './paintings.mjs';
import { peerPalette } from './peers.mjs';
import { NONE, census, read } from './raster.mjs';

export const COUNTS = [4, 6, 8, 12];
const PEERS = ['pngquant', 'k-means'];

const METHOD = stampOf('painted.mjs', 'kmeans.mjs', 'peers.mjs', 'colour.mjs');

/** One row for each picture and count; undefined when the pictures cannot be had. */
export async function measurePaintings(most, say) {
  const list = await paintings(say);
  if (!list) return undefined;
  const stamp = `${METHOD}-${stampOf(PROGRAM)}`;
  const rows = [];
  for (const picture of spread(list, most)) {
    const path = join(room('painted'), `${picture.name}.json`);
    const kept = readJSON(path);
    if (kept?.stamp === stamp) {
      rows.push(...kept.rows);
      continue;
    }
    say(`${picture.kind} ${picture.name}`);
    const fresh = await measure(picture);
    writeJSON(path, { stamp, rows: fresh });
    rows.push(...fresh);
  }
  return rows;
}

/** As many of each kind when only some are wanted. */
function spread(list, most) {
  const kinds = [...new Set(list.map((p) => p.kind))];
  return kinds.flatMap((kind) => list.filter((p) => p.kind === kind).slice(0, Math.ceil(most / kinds.length)));
}

async function measure(picture) {
  const count = census(await read(picture.file));
  const { at } = await ourFlats(picture.file, COUNTS, picture.clear ? 'clear' : 'none');
  const rows = [];
  for (const [i, k] of COUNTS.entries()) {
    const row = { name: picture.name, kind: picture.kind, k, given: at[i].palette.length, ms: at[i].ms };
    for (const peer of PEERS) {
      row[peer] = meanOff(count, await peerPalette(peer, picture.file, k + (peer === 'pngquant' && picture.clear ? 1 : 0), count, picture.name));
    }
    rows.push({ ...row, ...oursAt(count, at[i]) });
  }
  return rows;
}

/**
 * Ours thrice, all mean CIEDE2000: with nearest-colour labels; with our own
 * labels, which leave no speckle; and our colours freed from nesting, that is
 * moved by Lloyd's steps to where they serve this one count best.
 */
function oursAt(count, { palette, labels }) {
  const freed = settle(oklabs(count.colours), Float64Array.from(count.counts), oklabs(palette));
  return { ours: meanOff(count, palette), freed: meanOff(count, coloursOf(freed.centres)), whole: offAsLabelled(count, palette, labels) };
}

function meanOff(count, palette) {
  const to = nearestOf(count, palette);
  const off = palette.map(ciede2000Of);
  let [sum, n] = [0, 0];
  count.colours.forEach((c, i) => {
    sum += count.counts[i] * off[to[i]](c);
    n += count.counts[i];
  });
  return sum / n;
}

/** By the label of every pixel; pixels left to the ground are not ours to colour. */
function offAsLabelled(count, palette, labels) {
  const off = palette.map(ciede2000Of);
  const kept = palette.map(() => new Map());
  let [sum, n] = [0, 0];
  labels.forEach((l, i) => {
    const c = count.of[i];
    if (l === NONE || c < 0) return;
    let d = kept[l].get(c);
    if (d === undefined) kept[l].set(c, (d = off[l](count.colours[c])));
    sum += d;
    n++;
  });
  return sum / n;
}
