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

it('a new version keeps names and roles, says what changed, and undo brings the old one back', async () => {
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
  await d.waitForText('Revision 2 is on the sheet', '[role=alert]');
  assert.match(await d.read('[role=alert]'), /% of what is drawn changed.*one thing you had set no longer fits.*the name of lamp/);
  await ready(d);
  const colours = await d.read('#colours .flat-list');
  assert.match(colours, /hull/);
  assert.doesNotMatch(colours, /lamp/);
  assert.match(await d.read('#drawing'), /version 1: buoy\.svg, kept.*version 2: buoy-2\.svg, on the sheet/);

  await d.press('Control+z');
  await d.waitForText('lamp', '#colours .flat-list');
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
