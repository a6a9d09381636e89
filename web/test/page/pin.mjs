// Touching the pin, and looking at how it is struck.
import assert from 'node:assert/strict';
import { ready } from './sheet.mjs';

export const WHITE = [255, 255, 255];

export async function bring(d, bytes, name) {
  await d.dropBytes(bytes, `${name.toLowerCase()}.svg`);
  await d.waitFor((n) => document.querySelector('.title-block .name input')?.value === n, name);
  await ready(d);
}

/** Waits until the sheet shows so many enamels. */
export async function settled(d, n) {
  await d.waitFor((k) => new RegExp(`(?:^|\\D)${k} enamel`).test(document.querySelector('.title-block')?.textContent ?? '') && !document.querySelector('.title-block.behind'), n);
  await ready(d);
}

export async function tap(d, x, y) {
  const at = await d.evaluate((sx, sy) => {
    const el = document.querySelector('.pin-touch');
    el.scrollIntoView({ block: 'center' });
    const r = el.getBoundingClientRect();
    return { x: r.x + r.width * sx, y: r.y + r.height * sy };
  }, x, y);
  await d.raw.clickAt(at.x, at.y);
}

/** Touches the pin at shares of its picture, and waits for the card. */
export async function touch(d, x, y) {
  await tap(d, x, y);
  await d.waitFor(() => document.querySelector('.popover'));
}

/** The pixel of the struck pin at shares of its picture, RGBA. */
export const pixel = (d, x, y) => d.evaluate((sx, sy) => {
  const c = document.querySelector('.flipper .front canvas');
  return [...c.getContext('2d').getImageData(Math.floor(c.width * sx), Math.floor(c.height * sy), 1, 1).data];
}, x, y);

/** Enamel is drawn with light on it, so near is enough: no two colours here are nearer than this. */
const NEAR = 60;

/** Waits until the picture has such a pixel there: it follows the answers it is drawn from. */
async function becomes(d, x, y, like, want) {
  const until = Date.now() + 20_000;
  let got = await pixel(d, x, y);
  while (!like(got) && Date.now() < until) {
    await new Promise((go) => setTimeout(go, 50));
    got = await pixel(d, x, y);
  }
  assert.ok(like(got), `${got} at ${x}, ${y} is not ${want}`);
}

export const isNear = (d, x, y, rgb) => becomes(d, x, y, (got) => got[3] === 255 && rgb.every((v, i) => Math.abs(v - got[i]) < NEAR), `near ${rgb}`);

export const isGold = (d, x, y) => becomes(d, x, y, ([r, g, b]) => r > b + 40 && g > b + 20, 'gold');

export const isClear = (d, x, y) => becomes(d, x, y, (got) => got[3] < 128, 'clear');
