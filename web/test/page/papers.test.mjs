// The papers: what stands in the way is said, the message is in the person's own
// units, lists and cards and pictures are handed over as files, and a card is laid
// out by hand.
import assert from 'node:assert/strict';
import { after, before, it } from 'node:test';
import { at, NARROWEST, servePage } from './house.mjs';
import { catchFiles } from './saved.mjs';
import { ready, section } from './sheet.mjs';

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address);
  await ready(d);
  await catchFiles(d);
  await section(d, 'papers');
  await d.waitFor(() => document.querySelectorAll('#paper-message .paper-thumb rect').length > 10);
});
after(async () => {
  await d?.close();
  await server?.close();
});

/** The next file of an ending, as text of one letter a byte. */
const file = (ending) => d.waitFor(async (end) => {
  const at = globalThis.saved.findIndex((f) => f.name.endsWith(end));
  if (at < 0) return undefined;
  const [{ name, blob }] = globalThis.saved.splice(at, 1);
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (let i = 0; i < bytes.length; i++) text += String.fromCharCode(bytes[i]);
  return { name, text, type: blob.type };
}, ending);

const unfold = (paper) => d.evaluate((id) => { document.querySelector(`#${id} details.paper-more`).open = true; }, paper);
const warnings = () => d.evaluate(() => [...document.querySelectorAll('#paper-card .card-faults li')].map((e) => e.textContent));

it('the section opens with what is ready', async () => {
  assert.match(await d.read('#papers .says'), /ready|Ready/);
});

it('the message leaves two gaps and speaks in the units that are chosen', async () => {
  await unfold('paper-message');
  const message = () => d.read('#paper-message .message');
  assert.match(await message(), /mm wide.*posts?/s);
  assert.equal(await d.count('#paper-message .message mark'), 2);
  await d.click('#paper-message .choice-row label', 'inches');
  await d.waitFor(() => / in wide/.test(document.querySelector('#paper-message .message').textContent));
  assert.doesNotMatch(await message(), / mm/);
  await d.click('#paper-message .choice-row label', 'millimetres');
  await d.waitFor(() => / mm wide/.test(document.querySelector('#paper-message .message').textContent));
});

it('lists are CSV with a head', async () => {
  await d.click('#paper-lists button', 'Colours');
  const colours = await file('-colours.csv');
  assert.equal(colours.type, 'text/csv');
  assert.ok(colours.text.startsWith('\u00ef\u00bb\u00bfdesign,version,no,colour'), 'marked as UTF-8 (RFC 3629, section 6)');
  assert.ok(colours.text.split('\r\n').length > 4);
  await d.click('#paper-lists button', 'Quote');
  assert.match((await file('-quote.csv')).text, /in all,\d+,,\d+\.\d\d,EUR/);
});

it('the card says what would spoil, and its pin is moved by hand and undone', async () => {
  await unfold('paper-card');
  await d.waitFor(() => document.querySelectorAll('#paper-card .card-room .card-holes circle').length > 0);
  assert.deepEqual(await warnings(), [], 'as it begins, nothing spoils');
  const to = await d.evaluate(() => {
    const el = document.querySelector('#paper-card .card-room .pin-reach');
    el.scrollIntoView({ block: 'center' });
    const r = el.getBoundingClientRect();
    return { x: r.x + r.width / 2, y: r.y + r.height / 2, far: r.height };
  });
  await d.drag(to.x, to.y, to.x, to.y + to.far * 0.9);
  await d.waitFor(() => [...document.querySelectorAll('#paper-card .card-faults li')].some((e) => /lies under the pin/.test(e.textContent)));
  await d.click('#paper-card button', 'Put the pin where there is most room');
  await d.waitFor(() => !document.querySelector('#paper-card .card-faults'));
  await d.evaluate(() => document.querySelector('#paper-card .card-room .taken[aria-label^="The pin"]').focus());
  const before = await d.evaluate(() => document.activeElement.getAttribute('aria-label'));
  await d.press('ArrowRight');
  await d.waitFor((was) => document.querySelector('#paper-card .card-room .taken[aria-label^="The pin"]').getAttribute('aria-label') !== was, before);
});

it('the card is saved as PDF and as SVG at true size', async () => {
  await d.click('#paper-card .card-room button', 'Save as SVG');
  const svg = await file('-card.svg');
  assert.match(svg.text, /width="[\d.]+mm"/);
  await d.click('#paper-card .card-room button', 'Save the card (PDF)');
  const pdf = await file('-card.pdf');
  assert.ok(pdf.text.startsWith('%PDF-'));
  // A business card upright is 55 by 85 mm, its trim box in points of 1/72 inch.
  const [, x0, y0, x1, y1] = /\/TrimBox \[([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+)\]/.exec(pdf.text).map(Number);
  assert.ok(Math.abs((x1 - x0) / 72 * 25.4 - 55) < 0.02 && Math.abs((y1 - y0) / 72 * 25.4 - 85) < 0.02);
});

it('a picture is saved at the pixels that were chosen, on its ground and cut out', async () => {
  await unfold('paper-pictures');
  const label = await d.evaluate(() => [...document.querySelectorAll('#paper-pictures label')].find((l) => l.textContent === 'long side').htmlFor);
  await d.type(`#${label.replace(/[^\w-]/g, '\\$&')}`, '600');
  const size = (png) => [16, 20].map((i) => [0, 1, 2, 3].reduce((v, k) => v * 256 + png.charCodeAt(i + k), 0));
  await d.click('#paper-pictures button', 'On a ground');
  const shop = await file('.png');
  assert.match(shop.name, /shop/);
  assert.ok(size(shop.text).every((v) => Math.abs(v - 600) <= 4), String(size(shop.text)));
  await d.click('#paper-pictures button', 'Cut out');
  assert.equal(Math.max(...size((await file('.png')).text)), 600);
});

it('nothing sticks out, and nothing was complained of', async () => {
  for (const s of NARROWEST) {
    await d.viewport(s.w, s.h);
    await d.scheme(s.scheme);
    assert.deepEqual(await d.unfit(), [], s.name);
  }
  assert.deepEqual(await d.complaints(), []);
});
