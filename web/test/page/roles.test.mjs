// What becomes of a colour all over: no other colour gives way to it or takes its place.
import assert from 'node:assert/strict';
import { after, before, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { bring, settled } from './pin.mjs';
import { counted, pick, ready, section } from './sheet.mjs';

/** Four colours and dark lines. */
const FOUR = Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 600" width="600" height="600"><g stroke="#16181d" stroke-width="16">
<circle cx="300" cy="300" r="260" fill="#2f5d7c"/><circle cx="200" cy="240" r="70" fill="#3a6a8a"/><circle cx="390" cy="240" r="70" fill="#c8402f"/><circle cx="300" cy="410" r="80" fill="#f4d35e"/></g></svg>`);

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

const listed = () => d.evaluate(() => [...document.querySelectorAll('#colours .flat-list .flat-name')].map((e) => e.textContent.replace(/, $/, '')));

async function make(flat, role) {
  await d.click('#colours .flat-list button', flat);
  await d.click('.popover label', role);
  await d.press('Escape');
}

it('lines that become enamel are one colour more', async () => {
  await bring(d, FOUR, 'Four');
  await section(d, 'colours');
  await settled(d, 4);
  const before = await listed();
  await make('gold', 'enamel');
  await settled(d, 5);
  assert.equal((await listed()).length, before.length, 'the two blues are still two');
  await d.click('button', 'Undo');
  await settled(d, 4);
  assert.deepEqual(await listed(), before);
});

it('two that are joined are one fewer, and none comes back in their place', async () => {
  await pick(d, 3); // the two blues are one
  await settled(d, 3);
  await d.click('#colours .flat-list button', 'yellow');
  await d.click('.popover button', 'Join with');
  await d.click('.popover .join button', 'red');
  await settled(d, 2);
  assert.equal(await counted(d), 2);
  await d.click('button', 'Undo');
  await settled(d, 3);
});
