// Lines for a drawing that has none: proposed, shown, and kept or left out.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, beforeEach, it } from 'node:test';
import { at, drawings, servePage } from './house.mjs';
import { findings, ready, section } from './sheet.mjs';

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
  assert.equal(await d.count('.head-note'), 0, 'a lined drawing has none of it');
  await d.drop(join(drawings, 'demo/harbour.svg'));
  await d.waitFor(() => document.querySelector('.head-note.proposal'));
  await ready(d);
  await section(d, 'metal');
});

const dashes = () => d.evaluate(() => (document.querySelector('.proposed-lines')?.getAttribute('d').match(/M/g) ?? []).length);
const waits = () => d.count('#metal .waits');

it('are dashed on the pin with their length and width, and kept by a word', async () => {
  assert.match(await d.read('.head-note'), /No lines were in this drawing.*\d+ mm round the outside, 0\.3 mm wide; \d+ mm between colours, 0\.2 mm wide/);
  assert.ok((await dashes()) > 20, 'every stretch');
  assert.equal(await waits(), 2);
  await d.click('.head-note button', 'Keep these lines');
  await d.waitFor(() => !document.querySelector('.head-note') && !document.querySelector('.proposed-lines'));
  await ready(d);
  assert.equal(await waits(), 0);
  assert.equal(await d.count('#metal .recipes input[type=checkbox]:checked'), 2, 'the metal stays');
  await d.click('button', 'Undo');
  await d.waitFor(() => document.querySelector('.head-note.proposal') && document.querySelector('.proposed-lines'));
});

it('follow a typed width and the size, and stay proposed', async () => {
  const long = async () => Number(/(\d+) mm between/.exec(await d.read('.head-note'))[1]);
  const before = await long();
  await d.type('.head-note input', '0.35');
  await d.waitForText('0.35', '.head-note p');
  await d.evaluate(() => document.querySelector('.dim-label button').click());
  await d.waitFor(() => document.querySelector('.dim-typing input'));
  await d.type('.dim-typing input', '53');
  await d.waitFor((n) => Number(/(\d+) mm between/.exec(document.querySelector('.head-note')?.textContent ?? '')?.[1]) > 1.8 * n, before);
  assert.ok(Math.abs((await long()) / before - 2) < 0.03, 'twice as large, twice as long');
  assert.equal(await waits(), 2);
});

it('are left out by a word', async () => {
  await d.click('.head-note button', 'Without them');
  await d.waitFor(() => !document.querySelector('.head-note'));
  await ready(d);
  assert.equal(await d.count('#metal .recipes input[type=checkbox]:checked'), 0);
  assert.ok((await findings(d)) > 0, 'and the pin says what it lacks');
});

for (const [scheme, w, h] of [['light', 390, 844], ['dark', 1440, 900]]) {
  it(`fit everybody, ${scheme}, ${w} px wide`, async () => {
    await d.scheme(scheme);
    await d.viewport(w, h);
    assert.deepEqual(await d.unfit(), []);
    const over = await d.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(over <= 0, `${over} px stick out sideways`);
  });
}
