// A new version of the drawing is laid on the old one: what was set carries over.
import assert from 'node:assert/strict';
import { after, before, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { pick, ready, section } from './sheet.mjs';

const buoy = (mark, lamp) => Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 600" width="600" height="600">
<circle cx="300" cy="300" r="250" fill="#2f5d7c" stroke="#16181d" stroke-width="18"/>
<circle cx="${mark}" cy="330" r="90" fill="#c8402f" stroke="#16181d" stroke-width="18"/>
${lamp ? '<circle cx="400" cy="160" r="40" fill="#f4d35e" stroke="#16181d" stroke-width="18"/>' : ''}</svg>`);

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

it('a new version keeps names and roles, and says what changed and what does not fit', async () => {
  await d.dropBytes(buoy(260, true), 'buoy.svg');
  await d.waitFor(() => document.querySelector('.title-block .name input')?.value === 'Buoy');
  await ready(d);
  await pick(d, 3);
  await ready(d);
  await rename('red', 'hull');
  await rename('yellow', 'lamp');

  await section(d, 'drawing');
  await d.evaluate((base64) => {
    const input = document.querySelector('input[aria-label="File of the new version"]');
    const data = new DataTransfer();
    data.items.add(new File([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))], 'buoy-2.svg', { type: 'image/svg+xml' }));
    input.files = data.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  }, buoy(290, false).toString('base64'));
  await d.waitForText('Version 2 is on the sheet', '.note');
  assert.match(await d.read('.note'), /places? changed, [\d.]+ % of what is drawn; one thing you had set does not fit\..*The name of lamp: the new drawing has no such colour/);
  await ready(d);
  const colours = await d.read('#colours .flat-list');
  assert.match(colours, /hull/);
  assert.doesNotMatch(colours, /lamp/);
  assert.match(await d.read('#drawing .versions'), /version 1: buoy\.svg.*Put back.*version 2: buoy-2\.svg.*on the sheet/);
  assert.match(await d.read('#drawing .differs'), /since version 1.*does not fit:.*The name of lamp/);
});

it('what changed is marked on the pin until it is put away, and can be marked again', async () => {
  const marks = () => d.evaluate((w) => {
    const c = document.querySelector('.flipper .front .lost canvas');
    if (!c) return undefined;
    const at = (x, y) => c.getContext('2d').getImageData(Math.floor(c.width * x), Math.floor(c.height * y), w, w).data.some((v, i) => i % 4 === 3 && v > 0);
    return { lamp: at(0.66, 0.26), still: at(0.3, 0.8) };
  }, 24);
  await d.waitFor(() => document.querySelector('.flipper .front .lost canvas')?.width > 100);
  assert.deepEqual(await marks(), { lamp: true, still: false });
  assert.match(await d.read('.head-note'), /since version 1: hatched on the pin/);
  await d.click('.head-note button', 'Put the marks away');
  await d.waitFor(() => !document.querySelector('.head-note') && !document.querySelector('.flipper .front .lost'));
  await d.click('#drawing button', 'Show where');
  await d.waitFor(() => document.querySelector('.flipper .front .lost canvas')?.width > 100);
  assert.deepEqual(await marks(), { lamp: true, still: false });
});

it('what changed fits everybody, by day and by night', async () => {
  for (const [scheme, w, h] of [['light', 390, 844], ['dark', 1440, 900]]) {
    await d.scheme(scheme);
    await d.viewport(w, h);
    assert.deepEqual(await d.unfit(), [], scheme);
  }
});

it('one goes back to the older version as it was left, and forth again', async () => {
  await rename('blue', 'sea');
  await d.click('#drawing .versions button', 'Put back');
  await d.waitForText('Version 1 is back on the sheet as you left it', '.note');
  await ready(d);
  const first = await d.read('#colours .flat-list');
  assert.match(first, /lamp/);
  assert.doesNotMatch(first, /sea/, 'that was set on the second');
  await d.click('#drawing .versions button', 'Put back');
  await d.waitForText('sea', '#colours .flat-list');
  assert.match(await d.read('#drawing .versions'), /version 1: buoy\.svg.*Put back.*version 2: buoy-2\.svg.*on the sheet/);
  for (let i = 0; i < 4; i++) await d.click('button', 'Undo'); // forth, back, the name, the new version
  await d.waitForText('lamp', '#colours .flat-list');
  assert.equal(await d.count('#drawing .versions'), 0);
  assert.equal(await d.count('.head-note'), 0, 'with one version nothing is compared');
});

/** Renames the colour whose plain name holds a word. */
async function rename(word, name) {
  await d.click('#colours .flat-list button', word);
  await d.waitFor(() => {
    const field = [...document.querySelectorAll('.popover input')].find((i) => [...(i.labels ?? [])].some((l) => l.textContent.trim().startsWith('name')));
    field?.setAttribute('data-name', '');
    return field;
  });
  await d.type('.popover input[data-name]', name);
  await d.press('Escape');
  await d.waitForText(name, '#colours .flat-list');
  await ready(d);
}
