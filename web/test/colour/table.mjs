// The figures of many pictures brought together, and printed.
import { ASKED, FIGURES, PAINTED_MOST, figure } from './aims.mjs';
import { mean, median, quantile } from './house.mjs';
import { EXTRA, VARIANTS } from './pictures.mjs';

const ALL = [...VARIANTS, EXTRA];

/** {every: {mid, tail}, ..., ms} of the rows of one contender and variant. */
export function together(rows) {
  const out = { pictures: rows.length, ms: median(rows.map((r) => r.ms)), failed: rows.filter((r) => r.failed).length };
  for (const f of FIGURES) {
    const values = rows.map((r) => r[f.key]);
    out[f.key] = { mid: f.average ? mean(values) : median(values), tail: quantile(values, f.high ? 0.1 : 0.9) };
  }
  return out;
}

/** {variant: {contender: figures}} in the order of the rows. */
export function summary(rows) {
  const out = {};
  for (const variant of ALL) {
    const here = rows.filter((r) => r.variant === variant);
    if (here.length === 0) continue;
    out[variant] = {};
    for (const name of new Set(here.map((r) => r.contender))) out[variant][name] = together(here.filter((r) => r.contender === name));
  }
  return out;
}

const NAME = 18;
const WIDTH = 15;
const TITLES = { clean: 'clean PNG', jpeg: 'JPEG 80 on white', photo: 'simulated photograph', [EXTRA]: 'the same, mixed in encoded values' };

function cell(f, figures) {
  const { mid, tail } = figures[f.key];
  return (f.average ? mid.toFixed(f.digits) : `${mid.toFixed(f.digits)} ${tail.toFixed(f.digits)}`).padStart(WIDTH);
}

export function printFlat(sums) {
  for (const [variant, byName] of Object.entries(sums)) {
    const n = Object.values(byName)[0].pictures;
    console.log(`\n${TITLES[variant]}, ${n} drawings: median and worst tenth (every colour, edge mixes: mean)\n`);
    console.log(''.padEnd(NAME) + FIGURES.map((f) => f.words.padStart(WIDTH)).join('') + 'ms'.padStart(8));
    for (const [name, figures] of Object.entries(byName)) {
      console.log(name.padEnd(NAME) + FIGURES.map((f) => cell(f, figures)).join('') + figures.ms.toFixed(0).padStart(8));
    }
    if (byName.ours) printAsked(variant, byName);
  }
}

const reached = (f, value, wanted) => (f.high ? value >= wanted - 1e-9 : value <= wanted + 1e-9);

function printAsked(variant, byName) {
  const at = VARIANTS.indexOf(variant === EXTRA ? 'photo' : variant);
  const peers = Object.entries(byName).filter(([name]) => name !== 'ours' && !name.startsWith('('));
  console.log(`\n${'ours, asked'.padEnd(46)}${'ours'.padStart(9)}${'floor'.padStart(16)}${'aim'.padStart(16)}   best peer`);
  for (const a of ASKED) {
    const f = figure(a.key);
    const value = byName.ours[a.key][a.of];
    const verdict = (wanted) => (wanted === undefined ? '-' : `${wanted} ${reached(f, value, wanted) ? 'pass' : 'MISS'}`).padStart(16);
    console.log(`${a.words.padEnd(46)}${value.toFixed(f.digits).padStart(9)}${verdict(a.floor?.[at])}${verdict(a.aim[at])}   ${best(peers, a, f, value)}`);
  }
  printBehind(byName.ours, peers);
}

function best(peers, a, f, value) {
  if (peers.length === 0) return '-';
  const [name, figures] = peers.reduce((top, p) => (reached(f, p[1][a.key][a.of], top[1][a.key][a.of]) ? p : top));
  const theirs = figures[a.key][a.of];
  const place = theirs === value ? 'level' : reached(f, value, theirs) ? 'ahead' : 'BEHIND';
  return `${name} ${theirs.toFixed(f.digits)}: ${place}`;
}

/** Where ours is not the best of all, of every figure and both its ends. */
function printBehind(ours, peers) {
  const behind = [];
  for (const f of FIGURES) {
    for (const end of f.average ? ['mid'] : ['mid', 'tail']) {
      const better = peers.filter(([, p]) => !reached(f, ours[f.key][end], p[f.key][end]));
      if (better.length > 0) behind.push(`${f.words}${end === 'tail' ? ' (worst tenth)' : ''}: ${better.map(([name, p]) => `${name} ${p[f.key][end].toFixed(f.digits)}`).join(', ')}`);
    }
  }
  console.log(behind.length === 0 ? 'No peer is ahead of ours on any figure above.' : `Ahead of ours: ${behind.join('; ')}.`);
}

/** How the count suggested by ours agrees with the truth. */
export function printCounts(rows) {
  for (const variant of ALL) {
    const here = rows.filter((r) => r.variant === variant && r.contender === 'ours' && !r.failed);
    if (here.length === 0) continue;
    const off = here.map((r) => r.extra.suggested + (r.extra.lined ? 1 : 0) - r.K);
    const share = (test) => `${((100 * off.filter(test).length) / off.length).toFixed(0)} %`;
    const spilt = here.map((r) => r.extra.spilt);
    console.log(`${TITLES[variant]}: suggested count (and 1 for metal lines) right on ${share((d) => d === 0)}, within one on ${share((d) => Math.abs(d) <= 1)}, too many on ${share((d) => d > 0)}; ground taken for drawing: mean ${(100 * mean(spilt)).toFixed(2)} %`);
  }
}

export function printPainted(rows) {
  console.log('\nno flat truth: mean CIEDE2000 with nearest-colour labels, median over pictures\n');
  console.log(['', 'pngquant', 'k-means', 'ours', 'ours/better', 'freed of nesting', 'our own labels'].map((w, i) => (i === 0 ? w.padEnd(NAME) : w.padStart(17))).join(''));
  const kinds = [...new Set(rows.map((r) => r.kind))];
  for (const kind of [...kinds, 'all']) {
    for (const k of new Set(rows.map((r) => r.k))) console.log(paintedLine(kind, k, rows.filter((r) => r.k === k && (kind === 'all' || r.kind === kind))));
  }
}

export function paintedFigures(rows) {
  const mid = (of) => median(rows.map(of));
  const better = Math.min(mid((r) => r.pngquant), mid((r) => r['k-means']));
  const ours = mid((r) => r.ours);
  return { pngquant: mid((r) => r.pngquant), kmeans: mid((r) => r['k-means']), ours, ratio: ours / better, freed: mid((r) => r.freed), whole: mid((r) => r.whole) };
}

function paintedLine(kind, k, rows) {
  const f = paintedFigures(rows);
  const verdict = `${f.ratio.toFixed(3)} ${f.ratio <= PAINTED_MOST ? 'pass' : 'MISS'}`;
  return `${`${kind}, ${k}`.padEnd(NAME)}${[f.pngquant.toFixed(2), f.kmeans.toFixed(2), f.ours.toFixed(2), verdict, f.freed.toFixed(2), f.whole.toFixed(2)].map((c) => c.padStart(17)).join('')}`;
}
