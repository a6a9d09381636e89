// Which drawings are measured: by rule and by lot, never by hand.
import { createRequire } from 'node:module';
import { parse } from 'culori';
import { ciede2000, oklabOf, packed } from './colour.mjs';
import { chance, digest } from './house.mjs';
import { NONE, census } from './raster.mjs';
import { drawn } from './draw.mjs';

const load = createRequire(import.meta.url);

/** Open collections of different styles, and how many drawings of each. */
export const COLLECTIONS = [
  { name: 'openmoji', style: 'outlined', licence: 'CC BY-SA 4.0', drawings: 14 },
  { name: 'streamline-emojis', style: 'outlined', licence: 'CC BY 4.0', drawings: 8 },
  { name: 'twemoji', style: 'lineless', licence: 'CC BY 4.0', drawings: 10 },
  { name: 'fluent-emoji-flat', style: 'lineless', licence: 'MIT', drawings: 10 },
  { name: 'fxemoji', style: 'lineless', licence: 'Apache 2.0', drawings: 10 },
];

/** The lot. Another text draws other pictures: LOT=... checks that nothing was tuned to these. */
export const LOT = process.env.LOT ?? 'first';

/** What a flat drawing does not use. */
const NOT_FLAT = /gradient|opacity|filter|<text|mask|<image|clip|<use|pattern|animate|blend|style=|currentColor|rgba|hsla/i;

/** Series of one picture in many colours, or of letters. */
const SERIES = /skin-tone|-tone|flag|keycap|regional|letter|copyright|logo/;

const FEWEST = 2;
const MOST = 12;
/** Share of the drawing below which a colour is a sliver, not a colour. */
const SLIVER = 0.0005;
/** CIEDE2000 below which two colours are one colour to the eye. */
const SAME = 2;
/** CIEDE2000 to white below which a colour without a line round it cannot be told from white paper. */
const AS_PAPER = 5;
/** Share of the outer boundary that such a colour may have. */
const OPEN_TO_PAPER = 0.02;
/** Share of the picture that must be drawn on. */
const LEAST_DRAWN = 0.1;

/** All drawings of the lot, as {name, collection, style, svg}. */
export function chosen() {
  return COLLECTIONS.flatMap((collection) => draw(collection));
}

function draw(collection) {
  const set = load(`@iconify-json/${collection.name}/icons.json`);
  const lot = (name) => digest(`${LOT}/${collection.name}/${name}`);
  const names = Object.keys(set.icons).filter((n) => !SERIES.test(n) && !NOT_FLAT.test(set.icons[n].body));
  names.sort((a, b) => (lot(a) < lot(b) ? -1 : 1));
  const perCount = Math.ceil(collection.drawings / 5);
  const had = new Set();
  const counts = new Map();
  const out = [];
  for (const name of names) {
    if (out.length === collection.drawings) break;
    const subject = name.split('-')[0];
    if (had.has(subject)) continue;
    const svg = svgOf(set, set.icons[name]);
    const count = countOf(svg, set.icons[name].body);
    if (count === undefined || (counts.get(count) ?? 0) >= perCount) continue;
    had.add(subject);
    counts.set(count, (counts.get(count) ?? 0) + 1);
    out.push({ name: `${collection.name}--${name}`, collection: collection.name, style: collection.style, svg });
  }
  if (out.length < collection.drawings) throw new Error(`${collection.name} has only ${out.length} drawings that fit the rules.`);
  return out;
}

function svgOf(set, icon) {
  const side = (what, otherwise) => icon[what] ?? set[what] ?? otherwise;
  const box = [side('left', 0), side('top', 0), side('width', 16), side('height', 16)];
  return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="${box.join(' ')}" width="${box[2]}" height="${box[3]}">${icon.body}</svg>`;
}

/** The number of colours of a drawing, or undefined when it breaks a rule. */
function countOf(svg, body) {
  const p = drawn(svg, 1200, 'crisp');
  const { colours, counts, of } = census(p);
  if (colours.length < FEWEST || colours.length > MOST) return undefined;
  const area = counts.reduce((a, b) => a + b, 0);
  if (area < LEAST_DRAWN * of.length || Math.min(...counts) < SLIVER * area) return undefined;
  if (!onlyWhole(p) || !onlyWritten(colours, body) || tooClose(colours)) return undefined;
  return openToPaper(p, colours, of) > OPEN_TO_PAPER ? undefined : colours.length;
}

/** True when no pixel is half covered. */
function onlyWhole(p) {
  for (let i = 3; i < p.data.length; i += 4) if (p.data[i] !== 0 && p.data[i] !== NONE) return false;
  return true;
}

/** True when every colour seen is one that the drawing names; black is not always named. */
function onlyWritten(colours, body) {
  const written = new Set([0]);
  for (const [, paint] of body.matchAll(/(?:fill|stroke)="([^"]+)"/g)) {
    const c = parse(paint);
    if (c) written.add(packed(...[c.r, c.g, c.b].map((v) => Math.round(v * 255))));
  }
  return colours.every((c) => written.has(c));
}

function tooClose(colours) {
  return colours.some((c, i) => colours.slice(0, i).some((d) => ciede2000(c, d) < SAME));
}

/** Share of the outer boundary held by colours that white paper would swallow. */
function openToPaper(p, colours, of) {
  const pale = colours.map((c) => oklabOf(c)[0] > 0.9 && ciede2000(c, 0xffffff) < AS_PAPER);
  let all = 0;
  let open = 0;
  for (let i = p.w; i < of.length - p.w; i++) {
    if (of[i] < 0 || (of[i - 1] >= 0 && of[i + 1] >= 0 && of[i - p.w] >= 0 && of[i + p.w] >= 0)) continue;
    all++;
    if (pale[of[i]]) open++;
  }
  return all === 0 ? 0 : open / all;
}

/** A stream of chance that belongs to one drawing of this lot. */
export const chanceOf = (name) => chance(`${LOT}/${name}`);
