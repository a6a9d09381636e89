// Finding flat colours: ours against general-purpose quantisers, on drawings
// whose truth is known, and on pictures that have none.
//   make bench-colour [PICTURES=n] [ONLY=ours,pngquant] [VARIANTS=clean,jpeg,photo,photo-encoded] [LOOK=name] [LOT=text] [ENGINE=path]
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { COLLECTIONS, LOT } from './choose.mjs';
import { PROGRAM, closeEngine, ours } from './engine.mjs';
import { readJSON, room, stampOf, work, writeJSON } from './house.mjs';
import { sheetRow, writeSheet } from './look.mjs';
import { known, measured } from './measure.mjs';
import { measurePaintings } from './painted.mjs';
import { PEERS, closePeers, peer, trueColours } from './peers.mjs';
import { EXTRA, VARIANTS, pictures, variantOf } from './pictures.mjs';
import { selfCheck } from './selfcheck.mjs';
import { printCounts, printFlat, printPainted, summary } from './table.mjs';

/** In brackets: no contender, but what labels alone cost. */
const TRUE = '(true palette)';
const CONTENDERS = { ours, ...Object.fromEntries(PEERS.map((name) => [name, (v) => peer(name, v)])), [TRUE]: trueColours };
const PAINTINGS = 'paintings';

const listed = (text) => text?.split(',').map((s) => s.trim()).filter((s) => s !== '');
const only = listed(process.env.ONLY) ?? [...Object.keys(CONTENDERS), PAINTINGS];
const variants = listed(process.env.VARIANTS) ?? VARIANTS;
const most = Number(process.env.PICTURES ?? Infinity);
const names = Object.keys(CONTENDERS).filter((name) => only.includes(name));

const WHITE = 0xffffff;
const say = (text) => process.stderr.write(`${text}\n`);

const MEASURE = stampOf('measure.mjs', 'raster.mjs', 'colour.mjs', 'engine.mjs');
const METHODS = { ours: stampOf(PROGRAM), other: stampOf('peers.mjs', 'kmeans.mjs', 'goquantize.go', 'package-lock.json') };
const stampFor = (picture, name) => `${picture.stamp}-${MEASURE}-${METHODS[name] ?? METHODS.other}`;

async function main() {
  refuseUnknown();
  say(selfCheck());
  const list = inTurns(await pictures(say));
  if (process.env.LOOK) return look(list.filter((p) => p.name.includes(process.env.LOOK)));
  const rows = [];
  for (const picture of list.slice(0, most)) {
    for (const variant of variants) rows.push(...(await rowsOf(picture, variant)));
  }
  const painted = only.includes(PAINTINGS) ? await measurePaintings(most, say) : undefined;
  report(rows, painted);
}

function refuseUnknown() {
  for (const name of only) if (!CONTENDERS[name] && name !== PAINTINGS) throw new Error(`No contender is called ${name}: ${[...Object.keys(CONTENDERS), PAINTINGS].join(', ')}.`);
  for (const v of variants) if (![...VARIANTS, EXTRA].includes(v)) throw new Error(`No variant is called ${v}: ${[...VARIANTS, EXTRA].join(', ')}.`);
}

/** One of each collection after another, so that the first few are of all styles. */
function inTurns(list) {
  const turn = (p) => list.filter((q) => q.collection === p.collection).indexOf(p);
  return list.map((p) => [turn(p), p]).sort((a, b) => a[0] - b[0]).map(([, p]) => p);
}

/** Figures of all contenders on one variant of a picture; what was measured before is kept. */
async function rowsOf(picture, variant) {
  const at = (name) => join(room('runs', LOT, picture.name), `${variant}-${name.replace(/\W+/g, '-')}.json`);
  const rows = names.map((name) => {
    const kept = readJSON(at(name));
    return kept?.stamp === stampFor(picture, name) ? kept.row : undefined;
  });
  if (rows.every(Boolean)) return rows;
  const v = await variantOf(picture, variant);
  const k = known(v);
  say(`${picture.name}, ${variant}: ${names.filter((_, i) => !rows[i]).join(', ')}`);
  for (const [i, name] of names.entries()) {
    if (rows[i]) continue;
    rows[i] = { name: picture.name, style: picture.style, variant, contender: name, K: v.K, asked: v.asked, ...(await figuresOf(v, k, name)) };
    writeJSON(at(name), { stamp: stampFor(picture, name), row: rows[i] });
  }
  return rows;
}

/** A contender that gives no answer has found nothing. */
async function figuresOf(v, k, name) {
  let answer;
  try {
    answer = await CONTENDERS[name](v);
  } catch (error) {
    say(`  ${name} failed: ${error.message}`);
    answer = { labels: new Uint8Array(v.w * v.h).fill(255), palette: [], ms: Number.NaN, extra: {}, failed: error.message };
  }
  return { ...measured(v, k, answer.labels, answer.palette, WHITE), ms: answer.ms, extra: answer.extra, failed: answer.failed };
}

async function look(list) {
  const shown = process.env.ONLY ? names : ['ours', 'image-q wu'];
  for (const picture of list) {
    const rows = [];
    for (const variant of variants) {
      const v = await variantOf(picture, variant);
      const answers = [];
      for (const name of shown) answers.push(await CONTENDERS[name](v));
      rows.push(await sheetRow(v, answers));
    }
    console.log(`${await writeSheet(picture.name, rows)}: ${variants.join(', ')}; as brought, true${shown.map((n) => `, ${n}, its faults`).join('')}`);
  }
}

function report(rows, painted) {
  const sums = summary(rows);
  console.log(`Drawings by lot "${LOT}" from ${COLLECTIONS.map((c) => `${c.name} (${c.licence})`).join(', ')}.`);
  console.log('Every contender is asked for K, the colours of the drawing. Quantisers that see a white ground which is no colour of the drawing');
  console.log('are asked for one more; a clear ground is taken away from them (alpha made all or nothing). All figures speak of the drawing alone.');
  printFlat(sums);
  if (names.includes('ours')) {
    console.log('');
    printCounts(rows);
  }
  if (painted) printPainted(painted);
  const path = join(room(), 'results.json');
  writeJSON(path, { lot: LOT, summary: sums, rows, painted });
  console.log(`\nAll rows: ${path}`);
}

try {
  await main();
} finally {
  closeEngine();
  closePeers();
  rmSync(work(), { recursive: true });
}
