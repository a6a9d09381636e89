// A capital marked by hand, foot and head, is told how it holds at this size.
import assert from 'node:assert/strict';
import { after, before, beforeEach, describe, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { bring, tap } from './pin.mjs';
import { findings, ready, section } from './sheet.mjs';

/** A red disc in a ring, with the stem of a letter in its middle. */
const STEM = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 600" width="600" height="600"><rect width="600" height="600" fill="#fff"/><g stroke="#111" stroke-width="14"><circle cx="300" cy="300" r="240" fill="#c3362b"/><path d="M300 200V400"/></g></svg>');

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
  await d.scheme('light');
  await d.viewport(1280, 900);
  await d.open(server.address);
  await bring(d, STEM, 'Stem');
  await section(d, 'metal');
});

const marking = async () => {
  await d.click('#metal .lettering button', 'Mark lettering');
  await d.waitFor(() => document.activeElement?.className === 'line-touch');
};

/** Foot and head at shares of the pin's picture. */
async function mark(x, foot, head) {
  await marking();
  await tap(d, x, foot);
  await d.waitFor(() => document.querySelector('.line-point'));
  await tap(d, x, head);
  await d.waitFor(() => !document.querySelector('.line-mode'));
  await told();
}

/** The answers, once there is one to each. */
async function told() {
  await ready(d);
  await d.waitFor(() => !document.querySelector('#metal .lettering ul')?.textContent.includes('measuring'));
  return d.evaluate(() => [...document.querySelectorAll('#metal .lettering li')].map((li) => `${li.className}: ${li.querySelector('b').parentElement.innerText.replace(/\s+/g, ' ')}`));
}

const heights = (all) => all.map((s) => Number(/ ([\d.]+) mm high/.exec(s)[1]));

describe('a capital that is marked', () => {
  it('is told with its height and what it is made of; what is too low is a trouble spot', async () => {
    const before = await findings(d);
    await mark(0.5, 0.58, 0.48);
    await mark(0.5, 0.53, 0.5);
    await mark(0.3, 0.53, 0.48);
    const all = await told();
    assert.match(all[0], /^holds: Capital 1 [\d.]+ mm high, raised: holds; the least is [\d.]+ mm$/);
    assert.match(all[1], /^fails: Capital 2 [\d.]+ mm high, raised: too low; the least is [\d.]+ mm. It holds on a pin of [\d.]+ mm$/);
    assert.match(all[2], /^fails: Capital 3 [\d.]+ mm high, sunk: too low; the least is 2 mm/);
    const [a, b, c] = heights(all);
    // The ring is 494 of the picture's 600 or fewer, and 32 mm.
    assert.ok(a > 3.1 && a < 4, `${a} mm`);
    assert.ok(Math.abs(b / a - 0.3) < 0.06 && Math.abs(c / a - 0.5) < 0.06, `${a}, ${b}, ${c} mm`);
    assert.equal(await findings(d), before + 2);
    assert.match(await d.read('#metal .findings'), /Lettering too small\s*1 letter [\d.]+ mm high/);

    await d.click('#metal .lettering li button', 'Remove capital 2');
    await d.waitFor(() => document.querySelectorAll('#metal .lettering li').length === 2);
    await told();
    assert.equal(await findings(d), before + 1);
    await d.click('button', 'Undo');
    await d.waitFor(() => document.querySelectorAll('#metal .lettering li').length === 3);
    assert.deepEqual(await told(), all);
    for (let i = 0; i < 3; i++) await d.click('button', 'Undo');
    await d.waitFor(() => document.querySelectorAll('#metal .lettering li').length === 0);
    await ready(d);
    assert.equal(await findings(d), before);
  });

  it('holds at a larger size', async () => {
    await mark(0.5, 0.53, 0.5);
    assert.match((await told())[0], /^fails/);
    await d.click('.dim-label.h button');
    await d.type('.dim-label.h input', '60');
    await d.waitFor(() => /\b60\smm/.test(document.querySelector('.title-block')?.textContent ?? ''));
    const [all] = await told();
    assert.match(all, /^holds/);
  });

  it('can be marked by the keyboard alone, and is shown while it has the focus', async () => {
    await d.evaluate(() => [...document.querySelectorAll('#metal .lettering button')].find((b) => b.textContent === 'Mark lettering').focus());
    await d.press('Enter');
    await d.waitFor(() => document.activeElement?.className === 'line-touch');
    assert.equal(await d.count('.line-bar input'), 0, 'a capital has no width');
    for (const key of ['ArrowDown', 'ArrowUp', 'Enter', 'Enter']) await d.press(key);
    assert.equal(await d.count('.line-point'), 1, 'its own foot is no head');
    for (const key of ['ArrowUp', 'ArrowUp', 'Enter']) await d.press(key);
    await d.waitFor(() => !document.querySelector('.line-mode'));
    const [one] = await told();
    // Two steps of half a millimetre.
    assert.ok(Math.abs(heights([one])[0] - 1) < 0.03, one);
    assert.match(one, /too low; the least is/);
    await d.evaluate(() => document.querySelector('#metal .lettering li button').focus());
    await d.waitFor(() => document.querySelector('.stage .letter-span'));
    await d.press('Enter');
    await d.waitFor(() => !document.querySelector('#metal .lettering li') && !document.querySelector('.letter-span'));
    await marking();
    await d.press('Escape');
    await d.waitFor(() => !document.querySelector('.line-mode'));
    assert.deepEqual(await told(), []);
  });

  it('can be marked with a finger, though it is low', async () => {
    await marking();
    const lift = (dy) => d.evaluate((by) => {
      const el = document.querySelector('.line-touch');
      const pin = document.querySelector('.pin-touch').getBoundingClientRect();
      el.dispatchEvent(new PointerEvent('pointerup', { bubbles: true, pointerType: 'touch', isPrimary: true, button: 0, clientX: pin.x + pin.width / 2, clientY: pin.y + pin.height / 2 + by }));
    }, dy);
    await lift(5);
    await d.waitFor(() => document.querySelector('.line-point'));
    await lift(-5);
    await d.waitFor(() => !document.querySelector('.line-mode'));
    assert.match((await told())[0], /^fails: .*raised/);
  });
});

describe('everybody', () => {
  for (const [scheme, w, h] of [['dark', 390, 844], ['light', 1440, 900]]) {
    it(`can mark and read the answers, ${scheme}, ${w} px wide`, async () => {
      await d.scheme(scheme);
      await d.viewport(w, h);
      await marking();
      assert.deepEqual(await d.unfit(), [], 'while marking');
      assert.ok((await d.evaluate(() => document.documentElement.scrollWidth - innerWidth)) <= 0);
      await d.press('Escape');
      await mark(0.5, 0.55, 0.45);
      await d.waitFor(() => document.getAnimations().every((a) => a.playState !== 'running'));
      assert.deepEqual(await d.unfit(), [], 'with a mark listed');
    });
  }
});
