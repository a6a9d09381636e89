// One trouble spot of every kind that lines, areas and letters can have, as the
// engine would give them.
import type { Finding } from '../../src/engine/wire.gen';

const spot = (f: Partial<Finding> & Pick<Finding, 'kind'>): Finding => ({
  flat: 0, other: -2, ends: [0, 0, 0, 0], area: 0, count: 1, x: 400, y: 500, x0: 380, y0: 480, x1: 420, y1: 520, path: [], length: 1.2,
  thinnest: 0.14, typical: 0.19, error: 0.01, limit: 0.2, verdict: 'fails', needPx: 0, ...f,
});

export const EVERY_KIND: readonly Finding[] = [
  spot({ kind: 'gap', other: 3, ends: [390, 500, 410, 500], thinnest: 0.4, typical: 0.34 }),
  spot({ kind: 'gap', ends: [390, 500, 410, 500], thinnest: 0.4, typical: 0.7, limit: 0.3 }),
  spot({ kind: 'gap', count: 30, verdict: 'cannot-tell', needPx: 900, thinnest: 0.5, typical: 1.6 }),
  spot({ kind: 'no-line', other: 3, length: 8.1 }),
  spot({ kind: 'no-edge', length: 21, limit: 0.3 }),
  spot({ kind: 'open-area', flat: 5, ends: [390, 500, 410, 500], thinnest: 0.17, area: 4.81, limit: 1.5 }),
  spot({ kind: 'thin-line', flat: 5 }),
  spot({ kind: 'narrow-area', thinnest: 0.22, limit: 0.3 }),
  spot({ kind: 'small-area', thinnest: 0.31, limit: 0.5, area: 0.1 }),
  spot({ kind: 'pinhole', thinnest: 0.11, area: 0.012 }),
  spot({ kind: 'metal-island', flat: 5, count: 14, thinnest: 0.09, area: 0.1 }),
  spot({ kind: 'small-lettering', flat: 5, count: 11, thinnest: 1.2, limit: 1.5, length: 9.4 }),
  spot({ kind: 'small-cut-out', flat: -2, thinnest: 0.95, limit: 1.5, area: 0.72 }),
  spot({ kind: 'fades-out', flat: 5, verdict: 'holds', ends: [380, 500, 420, 500], length: 0.92 }),
  spot({ kind: 'fades-out', count: 8, verdict: 'holds', length: 0.88 }),
  spot({ kind: 'solid-metal', flat: 5, verdict: 'holds', thinnest: 7.7, area: 46, limit: 5 }),
  spot({ kind: 'rounded-corners', verdict: 'holds', count: 27, area: 0.56 }),
];
