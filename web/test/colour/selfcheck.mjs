// Checks of the measuring itself, made before anything is measured.
import assert from 'node:assert/strict';
import { checkCiede2000, ciede2000 } from './colour.mjs';
import { chance } from './house.mjs';
import { assigned, known, measured } from './measure.mjs';
import { NONE } from './raster.mjs';

export function selfCheck() {
  const pairs = checkCiede2000();
  checkAssignment();
  checkFigures();
  return `CIEDE2000 agrees with all ${pairs} published pairs; assignment and figures agree with small cases done by hand.`;
}

/** Against every order tried one by one. */
function checkAssignment() {
  const rand = chance('assignment');
  for (let round = 0; round < 50; round++) {
    const [rows, swatches] = [2 + Math.floor(rand() * 4), 1 + Math.floor(rand() * 6)];
    const cells = Float64Array.from({ length: rows * swatches }, () => Math.floor(rand() * 9));
    const worth = (to) => to.reduce((sum, s, t) => sum + (s < 0 ? 0 : cells[t * swatches + s]), 0);
    const to = assigned(cells, rows, swatches, swatches);
    assert.equal(new Set(to.filter((s) => s >= 0)).size, to.filter((s) => s >= 0).length, 'a swatch is given twice');
    assert.equal(worth(to), tried(cells, rows, swatches, 0, new Set()), 'a better assignment exists');
  }
}

function tried(cells, rows, swatches, t, had) {
  if (t === rows) return 0;
  let best = tried(cells, rows, swatches, t + 1, had);
  for (let s = 0; s < swatches; s++) {
    if (had.has(s)) continue;
    had.add(s);
    best = Math.max(best, cells[t * swatches + s] + tried(cells, rows, swatches, t + 1, had));
    had.delete(s);
  }
  return best;
}

/** Letters are colours, dots the ground. */
const TRUTH = ['........', '.aaaabb.', '.aaaabb.', '.aaaabb.', '.aaaabb.', '........'];
const GIVEN = ['........', '.xxxyyy.', '.xzxxyy.', '.xxxxyy.', '.xxxx.y.', '........'];
const COLOURS = { a: 0xff0000, b: 0x0000ff, x: 0xff0000, y: 0x0000fe, z: 0x800080 };

function checkFigures() {
  const map = (rows, letters) => Uint8Array.from(rows.join(''), (c) => (c === '.' ? NONE : letters.indexOf(c)));
  const v = { name: 'self check', w: 8, h: 6, truth: map(TRUTH, 'ab'), palette: [COLOURS.a, COLOURS.b] };
  const got = measured(v, known(v), map(GIVEN, 'xyz'), [COLOURS.x, COLOURS.y, COLOURS.z], 0xffffff);
  assert.equal(got.every, 1);
  assert.equal(got.right, 21 / 24, 'one a is y, one a is z, one b is nothing');
  assert.equal(got.edge, 21 / 24, 'no pixel of so small a drawing is far from a boundary');
  assert.equal(got.pieces, 4 / 2, 'x, y, z and the hole');
  assert.equal(got.inner, 3 / 2, 'the hole is open to the ground');
  assert.equal(got.mixes, 1, 'z is neither and lies along an edge');
  const off = ciede2000(COLOURS.a, COLOURS.y) + ciede2000(COLOURS.a, COLOURS.z) + 7 * ciede2000(COLOURS.b, COLOURS.y) + ciede2000(COLOURS.b, 0xffffff);
  assert.ok(Math.abs(got.off - off / 24) < 1e-9);
}
