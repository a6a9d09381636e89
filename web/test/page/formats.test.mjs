// Every kind of file opens; what cannot be opened is refused in words and
// leaves what was open.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, describe, it } from 'node:test';
import { at, call, drawings, fixtures, open, root, serveHarness, table } from './house.mjs';

let server;
let d;

before(async () => {
  server = await serveHarness();
  d = await at(server.address);
});
after(async () => {
  await d?.close();
  await server?.close();
});

describe('kinds of file', () => {
  // Pictures of one subject: the proportions of the lighthouse, and its colours.
  const same = [
    [join(drawings, 'demo/lighthouse.svg'), 1600],
    [join(drawings, 'lighthouse.png'), 1200],
    [join(fixtures, 'lighthouse.webp'), 480],
    [join(fixtures, 'lighthouse.avif'), 480],
  ];
  for (const [path, h] of same) {
    it(`opens ${path.split('/').at(-1)}`, async () => {
      const { opened, failure } = await open(d, path, path.split('/').at(-1));
      assert.equal(failure, undefined);
      assert.equal(opened.h, h);
      assert.ok(Math.abs(opened.w / opened.h - 1108 / 1200) < 0.003, `${opened.w} x ${opened.h}`);
      assert.equal(opened.ground, 'clear');
      assert.equal(opened.lined, true, 'its dark lines become metal');
      assert.ok(opened.suggested >= 5 && opened.suggested <= 7, `${opened.suggested} colours`);
    });
  }

  it('opens a JPEG on white paper and takes the paper away', async () => {
    const { opened } = await open(d, join(drawings, 'lighthouse-white.jpg'), 'lighthouse-white.jpg');
    assert.equal(opened.ground, 'paper');
    assert.ok(opened.suggested >= 5 && opened.suggested <= 8, `${opened.suggested} colours`);
  });

  it('turns a JPEG as its EXIF orientation says', async () => {
    // Stored 160 x 240 on its side; upright it is 240 x 160, red above the left end of blue.
    const { opened } = await open(d, join(drawings, 'turned.jpg'), 'turned.jpg', 'none');
    assert.deepEqual([opened.w, opened.h], [240, 160]);
    const picked = await d.evaluate((design) => globalThis.harness.pickedOf(design), opened.design);
    const { answer: p } = await call(d, 'picture', { picked, view: 'drawing', longSide: 240 });
    const place = (x, y) => [Math.round(x * p.scale + p.dx), Math.round(y * p.scale + p.dy)];
    const { at: [red, blue, paper] } = await call(d, 'picture', { picked, view: 'drawing', longSide: 240 }, [place(60, 40), place(180, 100), place(180, 40)]);
    assert.ok(red[0] > 180 && red[2] < 100, `red above: ${red}`);
    assert.ok(blue[2] > 120 && blue[0] < 80, `blue below: ${blue}`);
    assert.ok(Math.min(...paper.slice(0, 3)) > 240, `paper beside the red: ${paper}`);
  });

  it('draws an SVG without a viewBox by its own width and height, in any unit', async () => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="20mm"><path fill="#246" d="M0 0h152v76H0z"/><path fill="#c42" d="M75.6 0h76v76h-76z"/></svg>';
    const { opened } = await d.evaluate((b) => globalThis.harness.open(b, 'own.svg'), Buffer.from(svg).toString('base64'));
    assert.deepEqual([opened.w, opened.h, opened.suggested], [1600, 800, 2]);
  });

  it('reads an SVG in UTF-16', async () => {
    const svg = '\ufeff<?xml version="1.0" encoding="UTF-16"?><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><circle cx="4.5" cy="4.5" r="4" fill="#246"/><circle cx="4.5" cy="4.5" r="2" fill="#fd5"/></svg>';
    const { opened, failure } = await d.evaluate((b) => globalThis.harness.open(b, 'wide.svg'), Buffer.from(svg, 'utf16le').toString('base64'));
    assert.equal(failure, undefined);
    assert.equal(opened.suggested, 2);
  });

  it('opens the first frame of a GIF', async () => {
    const { opened, failure } = await open(d, join(drawings, 'two-frames.gif'), 'two-frames.gif');
    assert.equal(failure, undefined);
    assert.ok(opened.w > 0 && opened.h > 0);
  });
});

describe('Display-P3', () => {
  // CSS Color 4, display-p3 to srgb; within 2 levels of 255, out-of-gamut rows
  // clipped channel by channel.
  const rows = table(join(root, 'testdata/reference/display_p3_srgb.csv')).filter((r) => r.direction === 'display-p3_to_srgb_unclamped');
  const PATCH = 32;
  for (const name of ['p3-icc.png', 'p3-cicp.png']) {
    it(`gives the published sRGB values of ${name}`, async () => {
      const { opened, failure } = await open(d, join(drawings, name), name, 'none');
      assert.equal(failure, undefined);
      assert.equal(opened.w, rows.length * PATCH);
      const picked = await d.evaluate((design) => globalThis.harness.pickedOf(design), opened.design);
      const ask = { picked, view: 'drawing', longSide: opened.w };
      const { answer: p } = await call(d, 'picture', ask);
      const places = rows.map((_, i) => [Math.round((i + 0.5) * PATCH * p.scale + p.dx), Math.round((opened.h / 2) * p.scale + p.dy)]);
      const { at: got } = await call(d, 'picture', ask, places);
      for (const [i, r] of rows.entries()) {
        const want = [r.out_R, r.out_G, r.out_B].map((v) => 255 * Math.min(1, Math.max(0, Number(v))));
        const off = want.map((v, c) => Math.abs(v - got[i][c]));
        assert.ok(Math.max(...off) <= 2, `row ${i} (${r.in_R}, ${r.in_G}, ${r.in_B}): want ${want}, got ${got[i]}`);
      }
      const outside = rows.filter((r) => r.in_srgb_gamut === 'false').length / rows.length;
      assert.ok(Math.abs(opened.clipped - outside) < 0.02, `says that ${opened.clipped} was clipped; it is ${outside}`);
    });
  }
});

describe('what cannot be opened', () => {
  let picked;
  before(async () => {
    const { opened } = await open(d, join(drawings, 'buoy.png'), 'buoy.png');
    picked = await d.evaluate((design) => globalThis.harness.pickedOf(design), opened.design);
  });

  const said = async (bytes, name) => {
    const { failure, opened } = await d.evaluate((b, n) => globalThis.harness.open(b, n), Buffer.from(bytes).toString('base64'), name);
    assert.equal(opened, undefined, 'it opened');
    assert.equal(failure.kind, 'refused');
    assert.match(failure.what, /^[A-Z].*\.$/s, 'a sentence');
    assert.match(failure.do, /^[A-Z].*\.$/s, 'a sentence');
    const { answer } = await call(d, 'quote', { picked });
    assert.ok(answer, 'the drawing that was open is still open');
    return failure;
  };
  const read = async (name) => (await import('node:fs')).readFileSync(join(drawings, name));
  const sizedSVG = (inside) => `<svg xmlns="http://www.w3.org/2000/svg" width="200" height="200">${inside}</svg>`;

  it('is refused when empty', async () => assert.match((await said('', 'empty.png')).what, /empty/));
  it('is refused when cut short', async () => {
    await said(await read('cut-short.png'), 'cut-short.png');
  });
  it('is refused without a size', async () => assert.match((await said(await read('no-size.png'), 'no-size.png')).what, /no pixels/));
  it('is refused above 100 megapixels, with the numbers', async () => assert.match((await said(await read('huge.png'), 'huge.png')).what, /\d+ x \d+ px.*100/));
  it('is refused when fully transparent', async () => assert.match((await said(sizedSVG(''), 'nothing.svg')).what, /transparent/));
  it('is refused when of one colour', async () => assert.match((await said(sizedSVG('<path fill="#246" d="M0 0h200v200H0z"/>'), 'one.svg')).what, /one colour/));
  it('is refused when an SVG says nothing of its size', async () => assert.match((await said('<svg xmlns="http://www.w3.org/2000/svg"><circle r="5"/></svg>', 'endless.svg')).what, /how large/));
  it('is refused when an SVG is broken', async () => assert.match((await said(`${sizedSVG('<g>').slice(0, -6)}`, 'broken.svg')).what, /SVG|damaged|cut short/));

  // What to export instead is said for each kind that artists try.
  for (const [starts, name, instead] of [
    ['%PDF-1.7', 'pin.pdf', /SVG|PNG/],
    ['8BPS\0\x01', 'pin.psd', /PNG/],
    ['II*\0\x08\0\0\0', 'pin.tif', /PNG/],
    ['\0\0\0\x18ftypheic\0\0\0\0', 'pin.heic', /JPEG/],
    ['just words', 'pin.txt', /PNG/],
  ]) {
    it(`says what to export instead of ${name}`, async () => assert.match((await said(Buffer.from(starts, 'latin1'), name)).do, instead));
  }
  it('is refused when the browser cannot decode it', async () => {
    const bytes = Buffer.from(await read('icon40.png'));
    // The checksum of the pixels no longer fits, and the pixels are noise.
    for (let i = 60; i < bytes.length - 12; i++) bytes[i] = (i * 197 + 91) & 255;
    await said(bytes, 'noise.png');
  });
});
