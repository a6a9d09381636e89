// Everybody can use it: axe-core finds nothing on the first screen and with
// every section open, light and dark, at the widths of a phone, a tablet and a
// desk; and nothing sticks out sideways.
import assert from 'node:assert/strict';
import { after, before, describe, it } from 'node:test';
import { at, SCREENS, servePage } from './house.mjs';
import { ready } from './sheet.mjs';

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

describe('the first screen', () => {
  for (const { name, w, h, scheme } of SCREENS) {
    it(`fits everybody on a ${name}, ${scheme}`, async () => {
      await d.scheme(scheme);
      await d.viewport(w, h);
      await d.open(server.address);
      await ready(d);
      assert.deepEqual(await d.unfit(), []);
      const over = await d.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(over <= 0, `${over} px stick out sideways`);
      await d.evaluate(() => {
        for (const el of document.querySelectorAll('details:not([open])')) el.open = true;
      });
      assert.deepEqual(await d.unfit(), [], 'with every section open');
    });
  }
});

describe('the keyboard', () => {
  it('reaches every button and field of the first screen', async () => {
    await d.viewport(1440, 900);
    await d.open(server.address);
    await ready(d);
    const wanted = await d.evaluate(() => {
      const can = [...document.querySelectorAll('button, input, select, summary, [tabindex="0"]')].filter((e) => !e.disabled && e.tabIndex >= 0 && e.checkVisibility() && !e.closest('details:not([open]) > :not(summary)') && (e.type !== 'radio' || e.checked));
      for (const e of can) e.dataset.wanted = '1';
      return can.length;
    });
    // Groups of radio buttons take one stop each; lists that scroll take one more.
    for (let i = 0; i < 2 * wanted; i++) {
      await d.press('Tab');
      await d.evaluate(() => delete document.activeElement?.dataset.wanted);
    }
    const left = await d.evaluate(() => [...document.querySelectorAll('[data-wanted]')].map((e) => e.outerHTML.slice(0, 90)));
    assert.deepEqual(left, []);
  });
});
