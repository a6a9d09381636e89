// Fills and metals set apart on the card of a colour.
import { after, before, describe, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { ready, section } from './sheet.mjs';

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address);
  await d.viewport(1280, 900);
  await d.open(server.address);
  await ready(d);
});
after(async () => {
  await d?.close();
  await server?.close();
});

describe('a finish', () => {
  /** Waits until the pin has so many hard steps from pixel to pixel, as flakes make, and returns how many. */
  const flakes = (least, most) => d.waitFor((lo, hi) => {
    const c = document.querySelector('.flipper .front canvas');
    const { data } = c.getContext('2d').getImageData(0, 0, c.width, c.height);
    let n = 0;
    for (let i = 4; i < data.length; i += 4) if (data[i + 3] === 255 && Math.abs(data[i] - data[i - 4]) > 24) n++;
    return n >= lo && n <= hi ? n : 0;
  }, least, most);

  it('is given on the card of a colour, drawn on the pin, and taken back', async () => {
    const plain = await flakes(1, Number.MAX_SAFE_INTEGER);
    await section(d, 'colours');
    await d.click('#colours .flat-list button', 'blue');
    await d.click('.popover label', 'glitter');
    await d.waitForText('Flakes in the fill', '.popover');
    await flakes(1.2 * plain, Number.MAX_SAFE_INTEGER);
    await d.press('Escape');
    await d.press('Control+z');
    await flakes(1, 1.1 * plain);
  });
});
