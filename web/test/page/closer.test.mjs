// A small drawing on a large canvas is looked at closer, with what its file has to show.
import assert from 'node:assert/strict';
import { after, before, describe, it } from 'node:test';
import { at, call, serveHarness } from './house.mjs';

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

/** A buoy of 500 px on a canvas of 4000 x 3000: a ring of dark line 20 px wide, and one bar of 3 px. */
const painted = (drv, type) => drv.evaluate(async (kind) => {
  const canvas = new OffscreenCanvas(4000, 3000);
  const pen = canvas.getContext('2d');
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, 4000, 3000);
  const ring = (r, width, fill) => {
    pen.beginPath();
    pen.arc(3000, 900, r, 0, 7);
    pen.fillStyle = fill;
    pen.fill();
    pen.lineWidth = width;
    pen.strokeStyle = '#16161a';
    pen.stroke();
  };
  ring(250, 20, '#d23b2f');
  pen.fillStyle = '#16161a';
  pen.fillRect(2780, 898.5, 440, 3);
  const file = await canvas.convertToBlob({ type: kind, quality: 0.9 });
  return globalThis.harness.openBlob(file, 'buoy');
}, type);

/** The check of an opened drawing at a size. */
async function checked(opened, mm) {
  const picked = await d.evaluate((design) => globalThis.harness.pickedOf(design), { ...opened.design, size: { mm, by: 'longest' } });
  const { answer, failure } = await call(d, 'check', { picked });
  assert.equal(failure, undefined);
  return answer;
}

describe('a small drawing on a large canvas', () => {
  for (const type of ['image/png', 'image/jpeg']) {
    it(`is looked at closer: ${type}`, async () => {
      const { opened, failure } = await painted(d, type);
      assert.equal(failure, undefined);
      // 520 px of drawing, and an eighth of that round it, at the file's own pixels.
      assert.ok(Math.abs(opened.w - 645) < 12 && Math.abs(opened.h - 645) < 12, `${opened.w} x ${opened.h}`);
      assert.ok(opened.notes.some((n) => /part of its canvas/.test(n)), opened.notes.join(' '));
      // At 52 mm a pixel of the file is 0.1 mm: the bar is 0.3 mm, which the raster of the whole file (0.25 mm a pixel) could not tell.
      const { findings } = await checked(opened, 52);
      assert.ok(!findings.some((f) => f.kind === 'thin-line' && f.verdict === 'fails'), 'the bar of 0.3 mm holds');
      const small = await checked(opened, 26);
      const bar = small.findings.find((f) => f.kind === 'thin-line');
      assert.ok(bar && Math.abs(bar.thinnest - 0.15) < 0.03, `the bar is 0.15 mm at 26 mm, measured ${bar?.thinnest}`);
    });
  }

  it('of vectors is drawn as fine as any other', async () => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1000 1000"><circle cx="200" cy="200" r="60" fill="#2f6d9c" stroke="#16161a" stroke-width="6"/></svg>';
    const { opened } = await d.evaluate((text) => globalThis.harness.openBlob(new Blob([text], { type: 'image/svg+xml' }), 'dot.svg'), svg);
    assert.ok(Math.max(opened.w, opened.h) >= 1500, `${opened.w} x ${opened.h}`);
    const { answer: check } = await call(d, 'check', { picked: await d.evaluate((design) => globalThis.harness.pickedOf(design), opened.design) });
    const [x0, , x1] = check.outline;
    assert.ok(Math.abs((x1 - x0) / opened.w - 126 / (126 * 1.24)) < 0.02, 'the disc fills its part but for the room round it');
  });
});
