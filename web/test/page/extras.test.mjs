// What few orders have, in the bill: fills set apart and colours printed on top.
import assert from 'node:assert/strict';
import { after, before, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { ready, section } from './sheet.mjs';

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address);
  await ready(d);
});
after(async () => {
  await d?.close();
  await server?.close();
});

/** Makes the flat of a name something else on its card. */
async function make(flat, choice) {
  await d.click('#colours .flat-list button', flat);
  await d.click('.popover label', choice);
  await d.press('Escape');
}

it('a fancy fill and a printed colour are listed and paid for, and their rates can be changed', async () => {
  await section(d, 'colours');
  await section(d, 'order');
  assert.doesNotMatch(await d.read('#order .quote'), /print|fancy/i, 'a plain pin has no such lines');
  await make('blue', 'glitter');
  await d.waitForText('Fancy fill: glitter', '#order .quote');
  assert.match(await d.read('#order .quote'), /Fancy fill: glitter\s*100\s×\sEUR\s0\.06\s*EUR\s6\.00/);
  await make('white', 'printed');
  await d.waitForText('1 colour printed on top', '#order .quote');
  assert.match(await d.read('#order .quote'), /Print set-up, once\s*EUR\s18\.00\s*1 colour printed on top\s*100\s×\sEUR\s0\.08\s*EUR\s8\.00/);

  await d.evaluate(() => {
    document.querySelectorAll('#order details.more').forEach((e) => { e.open = true; });
    const field = [...document.querySelectorAll('#order .text-field input')].find((i) => i.labels?.[0]?.textContent.includes('Fancy fill, every other'));
    field.setAttribute('data-fancy', '');
  });
  await d.type('#order input[data-fancy]', '0.10');
  await d.waitForText('10.00', '#order .quote');
  await d.click('button', 'Undo');
  await d.waitForText('6.00', '#order .quote');
});
