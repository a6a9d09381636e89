// What is sent to a maker, looked at by other programs: the layers drawn by
// librsvg (in sharp) against the flat drawing they were traced from, and the
// papers at 600 dpi by poppler, where it is there.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const fonts = join(root, 'web/node_modules/@expo-google-fonts');
const to = mkdtempSync(join(tmpdir(), 'printed-'));
const SIZE = 38;
/** A bank card on an orange ground, the pin's middle where it was put. */
const CARD = { kind: 'bank', across: true, pin: [40, 27], ground: { r: 255, g: 120, b: 0 } };
let struck;

before(() => {
  const lines = [
    { call: 'font', file: join(fonts, 'noto-sans/400Regular/NotoSans_400Regular.ttf'), ask: { name: 'NotoSans', place: 0 } },
    { call: 'font', file: join(fonts, 'noto-sans/600SemiBold/NotoSans_600SemiBold.ttf'), ask: { name: 'NotoSans', strong: true, place: 1 } },
    { call: 'font', file: join(fonts, 'noto-sans-jp/400Regular/NotoSansJP_400Regular.ttf'), ask: { name: 'NotoSansJP', place: 2 } },
    { call: 'open', file: join(root, 'testdata/drawings/lighthouse.png') },
    { set: { name: 'Hải đăng Żółw 灯台 Φάρος Маяк', colours: 4, size: { mm: SIZE, by: 'longest' } }, version: { quantity: 100 } },
    { call: 'struck', out: join(to, 'rasters') },
    { call: 'layers', ask: { today: '2026-03-02' }, out: join(to, 'layers.svg') },
    { call: 'layers', ask: { today: '2026-03-02', pdf: true }, out: join(to, 'layers.pdf') },
    { call: 'specsheet', ask: { format: 'a4', today: '2026-03-02' }, out: join(to, 'spec.pdf') },
    { call: 'cardfile', ask: { card: CARD, pdf: true, today: '2026-03-02' }, out: join(to, 'card.pdf') },
  ];
  const out = execFileSync('go', ['run', './wasm'], { cwd: root, input: lines.map((l) => JSON.stringify(l)).join('\n'), maxBuffer: 1 << 28 });
  const answers = out.toString().trim().split('\n').map((l) => JSON.parse(l));
  assert.deepEqual(answers.filter((a) => a.error), []);
  struck = answers.find((a) => a.call === 'struck').answer;
});

after(() => rmSync(to, { recursive: true, force: true }));

test('layers show the flat drawing, pixel by pixel', async () => {
  const { w, h, flats, check } = struck;
  const rasters = readFileSync(join(to, 'rasters'));
  const svg = art(readFileSync(join(to, 'layers.svg'), 'utf8'), w, h, check);
  const { data } = await sharp(Buffer.from(svg), { density: 72, limitInputPixels: false }).resize(w, h, { fit: 'fill' }).raw().toBuffer({ resolveWithObject: true });
  const metal = /id="outline"[^]*?fill="#(......)"/.exec(svg)[1];
  let wrong = 0;
  let seen = 0;
  for (let y = 2; y < h - 2; y++) {
    for (let x = 2; x < w - 2; x++) {
      const i = y * w + x;
      if (!calm(rasters, i, w)) continue;
      seen++;
      if (!same(data.subarray(4 * i, 4 * i + 4), flats[rasters[i]], metal)) wrong++;
    }
  }
  assert.ok(seen > 0.7 * w * h, `${seen} of ${w * h} px are away from every border`);
  assert.ok(wrong <= seen * 1e-4, `${wrong} of ${seen} px differ`);
});

/** The art alone, drawn so that a pixel is one of the raster's. */
function art(svg, w, h, check) {
  const per = check.scale;
  const box = [-check.outline[0] / per, -check.outline[1] / per, w / per, h / per].join(' ');
  return svg
    .replace(/<g id="(posts|measures|cut-outs|chain|back-stamp)">[^]*?<\/g>/g, '')
    .replace(/width="[^"]*" height="[^"]*" viewBox="[^"]*"/, `width="${w}" height="${h}" viewBox="${box}"`);
}

/** A pixel two away from anything else. */
function calm(labels, i, w) {
  for (let dy = -2; dy <= 2; dy++) {
    for (let dx = -2; dx <= 2; dx++) if (labels[i + dy * w + dx] !== labels[i]) return false;
  }
  return true;
}

function same(px, flat, metal) {
  if (!flat || flat.role === 'cut-out') return px[3] === 0;
  const want = flat.role === 'metal' ? [0, 2, 4].map((k) => Number.parseInt(metal.slice(k, k + 2), 16)) : [flat.rgb.r, flat.rgb.g, flat.rgb.b];
  return px[3] === 255 && want.every((v, k) => Math.abs(v - px[k]) <= 1);
}

const poppler = spawnSync('pdftoppm', ['-v']).error === undefined;
const without = poppler ? false : 'pdftoppm (poppler-utils) is not here';

/** The first page of a paper at 600 dpi, as poppler writes it (PPM, Netpbm). */
function page(name) {
  execFileSync('pdftoppm', ['-r', '600', '-f', '1', '-l', '1', '-singlefile', join(to, `${name}.pdf`), join(to, name)]);
  const file = readFileSync(join(to, `${name}.ppm`));
  const [head, w, h] = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(file.toString('latin1', 0, 40));
  return { data: file.subarray(head.length), w: Number(w), h: Number(h) };
}

const MM = 25.4 / 600;

/** The box in mm of pixels of a kind, below a height. */
function boxOf({ data, w, h }, is, from = 0) {
  let [x0, y0, x1, y1] = [w, h, 0, 0];
  for (let y = Math.round(from / MM); y < h; y++) {
    for (let x = 0; x < w; x++) {
      const i = 3 * (y * w + x);
      if (!is(data[i], data[i + 1], data[i + 2])) continue;
      [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x + 1), Math.max(y1, y + 1)];
    }
  }
  return { w: (x1 - x0) * MM, h: (y1 - y0) * MM };
}

const coloured = (r, g, b) => Math.max(r, g, b) - Math.min(r, g, b) > 60;
const near = (got, want, what) => assert.ok(Math.abs(got - want) <= 0.1, `${what}: ${got.toFixed(3)} mm for ${want}`);

test('papers are true at 600 dpi', { skip: without }, () => {
  const { w, h } = struck.check;
  const layers = boxOf(page('layers'), coloured);
  near(layers.w, w, 'width of the layers');
  near(layers.h, h, 'height of the layers');

  const sheet = page('spec');
  near(sheet.w * MM, 210, 'width of A4');
  near(sheet.h * MM, 297, 'height of A4');
  // The one coloured thing in the lower half is the front at true size.
  const front = boxOf(sheet, coloured, 165);
  near(front.w, w, 'width of the front');
  near(front.h, h, 'height of the front');
  near(bar(sheet), 50, 'the proving bar');
});

/** A page without a rim of so many mm. */
function within({ data, w, h }, rim) {
  const r = Math.round(rim / MM);
  const rows = Array.from({ length: h - 2 * r }, (_, y) => data.subarray(3 * ((y + r) * w + r), 3 * ((y + r) * w + w - r)));
  return { data: Buffer.concat(rows), w: w - 2 * r, h: h - 2 * r };
}

// ISO/IEC 7810, ID-1: 85.60 by 53.98 mm; the ground runs 3 mm over the cut.
test('a backing card is true at 600 dpi, its outline and holes where the pin is', { skip: without }, () => {
  const { w, h, back } = struck.check;
  const sheet = page('card');
  const ground = boxOf(sheet, coloured);
  near(ground.w, 85.6 + 6, 'width with its bleed');
  near(ground.h, 53.98 + 6, 'height with its bleed');
  const row = 3 * sheet.w * Math.round(3 / MM);
  const marks = [...Array(sheet.w).keys()].filter((x) => sheet.data[row + 3 * x] < 128);
  near((marks.at(-1) - marks[0]) * MM, 85.6, 'from mark to mark');
  const grey = (least, most) => (r, g, b) => Math.max(r, g, b) - Math.min(r, g, b) < 12 && r > least && r < most;
  const card = within(sheet, 9); // without the marks of the cut
  const aid = boxOf(card, grey(0xa8, 0xc8));
  near(aid.w, w + 0.15, 'width of the outline');
  near(aid.h, h + 0.15, 'height of the outline');
  // From the left end of the first cross to the right end of the last: as far
  // apart as the posts, a hole and 0.8 mm either side.
  const xs = back.posts.map((p) => p.x);
  near(boxOf(card, grey(0x60, 0x80)).w, Math.max(...xs) - Math.min(...xs) + 1.5 + 1.6, 'from hole to hole');
});

/** The length of the proving bar: its upper edge is the one line of about its
 * length near the foot of the sheet. */
function bar({ data, w, h }) {
  let best = 0;
  for (let y = h - Math.round(30 / MM); y < h; y++) {
    let run = 0;
    for (let x = 0; x <= w; x++) {
      const dark = x < w && data[3 * (y * w + x)] < 200;
      if (dark) run++;
      else {
        const mm = run * MM;
        if (mm > 45 && mm < 55) best = Math.max(best, mm);
        run = 0;
      }
    }
  }
  return best;
}

test('text is found and fonts are subsets inside the file', { skip: without }, () => {
  const text = execFileSync('pdftotext', ['-layout', join(to, 'spec.pdf'), '-']).toString();
  for (const words of ['Hải đăng', 'Żółw', '灯台', 'Φάρος', 'Маяк', '38 mm', 'Print at 100 percent']) assert.ok(text.includes(words), words);
  const rows = execFileSync('pdffonts', [join(to, 'spec.pdf')]).toString().trim().split('\n').slice(2);
  assert.equal(rows.length, 3);
  for (const r of rows) assert.match(r, /^[A-Z]{6}\+Noto\S+\s+CID TrueType\s+Identity-H\s+yes yes yes/);
});
