// The clean curves: drawn back by the browser's own renderer they give the flat
// drawing again, and the page hands them over as a file.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, describe, it } from 'node:test';
import { at, base64, drawings, serveHarness, servePage } from './house.mjs';
import { catchFiles } from './saved.mjs';
import { ready, section } from './sheet.mjs';

/** At most this share of pixels may get another flat. */
const MOST_OTHER = 0.003;

/** Traces a drawing, draws each face alone as an SVG picture at the working
 * raster, and counts pixels whose flat is another than the flat drawing's. */
async function drawnBack(file, name) {
  const { engine, handing, projectOf } = globalThis.harness;
  const picked = await projectOf(file, name);
  const design = picked.project.order.designs[0];
  design.recipes = [];
  const { answer: shapes } = await engine.call('shapes', { of: await handing(picked) });
  const { answer: check } = await engine.call('check', { picked });
  const flats = await engine.call('flats', { drawing: design.drawings.at(-1).id, options: { count: design.colours, edits: design.edits } });
  const { w, h } = flats.answer;
  const [x0, y0] = check.outline.map((v) => v / check.scale);
  const view = `${-x0} ${-y0} ${w / check.scale} ${h / check.scale}`;

  const cover = async (d) => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="${view}" preserveAspectRatio="none"><path fill-rule="evenodd" d="${d}"/></svg>`;
    const img = new Image();
    img.src = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    await img.decode();
    const c = new OffscreenCanvas(w, h).getContext('2d');
    c.drawImage(img, 0, 0);
    URL.revokeObjectURL(img.src);
    return c.getImageData(0, 0, w, h).data;
  };
  // The flat with the greatest cover; what no face covers is background.
  const most = new Uint8Array(w * h);
  const rest = new Int16Array(w * h).fill(255);
  const who = new Int32Array(w * h).fill(-2);
  const METAL = -1;
  for (const face of [{ ...shapes.metal, flat: METAL }, ...shapes.enamel]) {
    const pixels = await cover(face.d);
    for (let i = 0; i < who.length; i++) {
      const a = pixels[4 * i + 3];
      rest[i] -= a;
      if (a > most[i]) [most[i], who[i]] = [a, face.flat];
    }
  }
  const of = flats.answer.flats.map((f) => (f.role === 'metal' ? METAL : f.role === 'cutout' ? -2 : f.id));
  let other = 0;
  for (let i = 0; i < who.length; i++) {
    const is = rest[i] > most[i] ? -2 : who[i];
    if (is !== (of[flats.bytes[i]] ?? -2)) other++;
  }
  return { share: other / who.length, within: shapes.within, tolerance: shapes.tolerance, corners: shapes.corners, perPx: 1 / check.scale };
}

describe('the clean curves', () => {
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

  for (const name of ['lighthouse.png', 'buoy.png', 'white-on-white.png', 'lines-photo.jpg']) {
    it(`give ${name} again`, async () => {
      const got = await d.evaluate(drawnBack, base64(join(drawings, name)), name);
      assert.ok(got.share <= MOST_OTHER, `${got.share} of the pixels differ`);
      assert.ok(got.within <= Math.max(got.tolerance, got.perPx), `within ${got.within} mm, a pixel is ${got.perPx} mm`);
      assert.ok(got.corners > 3, 'corners are kept');
    });
  }
});

/** Reads the file that was saved as the browser reads any drawing. */
async function savedLayers() {
  const file = globalThis.saved.find((f) => f.name.endsWith('.svg'));
  if (!file) return undefined;
  const svg = new DOMParser().parseFromString(await file.blob.text(), 'image/svg+xml').documentElement;
  const layers = [...svg.querySelectorAll('g')].map((g) => ({ id: g.id, fill: g.getAttribute('fill'), paths: g.querySelectorAll('path').length }));
  return { name: file.name, type: file.blob.type, root: svg.localName, width: svg.getAttribute('width'), height: svg.getAttribute('height'), layers };
}

describe('the page', () => {
  it('hands the curves over as a drawing in mm, a layer for each colour', async () => {
    const server = await servePage();
    const d = await at(server.address);
    try {
      await d.viewport(1280, 900);
      await ready(d);
      await section(d, 'metal');
      await catchFiles(d);
      await d.click('#metal button', 'Save clean curves');
      const got = await d.waitFor(savedLayers);
      assert.match(got.name, /^skerry-light.*\d+mm\.svg$/);
      assert.deepEqual([got.type, got.root], ['image/svg+xml', 'svg']);
      const shown = await d.evaluate(() => /([\d.]+)\s×\s([\d.]+)\smm/.exec(document.querySelector('.title-block').textContent)?.slice(1));
      assert.ok(Math.abs(parseFloat(got.width) - shown[0]) < 0.06 && Math.abs(parseFloat(got.height) - shown[1]) < 0.06, `${got.width} by ${got.height}`);
      assert.deepEqual(got.layers.slice(0, 2).map((l) => l.id), ['outline', 'metal']);
      const enamels = await d.evaluate(() => Number(/(\d+) enamel/.exec(document.querySelector('.title-block').textContent)?.[1]));
      assert.equal(got.layers.length, 2 + enamels);
      assert.ok(got.layers.every((l) => l.paths > 0 && /^#[0-9a-f]{6}$/.test(l.fill)));
    } finally {
      await d.close();
      await server.close();
    }
  });
});
