// Lines and colours brought as two pictures are one drawing, its metal known.
import assert from 'node:assert/strict';
import { after, before, beforeEach, describe, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { ready, section } from './sheet.mjs';

/** A buoy: its lines are yellow, which nobody would guess to be metal. */
const svg = (body, h = 600) => Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 ${h}" width="600" height="${h}">${body}</svg>`);
const LINES = '<g fill="none" stroke="#e8c547" stroke-width="16"><circle cx="300" cy="300" r="240"/><path d="M62 300H538"/></g>';
const COLOURS = '<path d="M60 300a240 240 0 0 1 480 0z" fill="#c3362b"/><path d="M60 300a240 240 0 0 0 480 0z" fill="#f7f3e8"/>';

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address);
});
after(async () => {
  await d?.close();
  await server?.close();
});
beforeEach(async () => {
  await d.open(server.address);
  await ready(d);
});

describe('lines and colours as two pictures', () => {
  for (const swapped of [false, true]) {
    it(`are one drawing, ${swapped ? 'colours' : 'lines'} first`, async () => {
      const two = [[svg(LINES), 'sea-buoy-lines.svg'], [svg(COLOURS), 'sea-buoy-colours.svg']];
      await d.dropTogether(...(swapped ? two.reverse() : two));
      await d.waitFor(() => document.querySelector('.title-block .name input')?.value === 'Sea buoy');
      await ready(d);
      assert.match(await d.read('.title-block'), /2 enamels/);
      await section(d, 'drawing');
      assert.match(await d.read('#drawing'), /sea-buoy-lines\.svg and sea-buoy-colours\.svg|sea-buoy-colours\.svg and sea-buoy-lines\.svg/);
      assert.match(await d.read('#drawing'), /picture of their own, so what is metal is known/);
    });
  }

  it('of two sizes are refused, and what was open stays', async () => {
    const name = await d.read('.title-block .name input');
    await d.dropTogether([svg(LINES), 'lines.svg'], [svg(COLOURS, 300), 'colours.svg']);
    await d.waitForText('of one size', '.note');
    assert.equal(await d.read('.title-block .name input'), name);
  });
});
