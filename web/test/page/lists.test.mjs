// Price lists of several makers: the bill asks for what a list leaves open;
// lists come, go, are chosen, compared, pasted and refused.
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
  await section(d, 'order');
});
after(async () => {
  await d?.close();
  await server?.close();
});

const unfold = () => d.evaluate(() => document.querySelectorAll('#order details.more').forEach((e) => { e.open = true; }));
const makers = () => d.evaluate(() => [...document.querySelectorAll('#order .maker-rows .text-field input')].map((i) => i.value));
const says = () => d.read('#order .says');

/** Marks the field of a label so that it can be typed into. */
async function mark(label, name) {
  await d.waitFor((l, n) => {
    const el = [...document.querySelectorAll('#order input')].find((i) => i.labels?.[0]?.textContent.includes(l));
    el?.setAttribute('data-mark', n);
    return Boolean(el);
  }, label, name);
  return `#order input[data-mark="${name}"]`;
}

/** Takes out what stands in a field, and leaves it. */
const empty = (selector) => d.evaluate((s) => {
  const el = document.querySelector(s);
  el.focus();
  el.value = '';
  el.dispatchEvent(new Event('input', { bubbles: true }));
  el.blur();
}, selector);

it('a maker is copied, and a price that is taken out is asked for under the bill', async () => {
  await d.click('#order .maker-acts button', 'copy');
  await d.waitFor(() => document.querySelectorAll('#order .maker-rows li').length === 2);
  assert.deepEqual(await makers(), ['Example maker (invented prices)', 'Example maker (invented prices), copy']);
  await unfold();
  await empty(await mark('each further enamel', 'further'));
  await d.waitForText('further colour', '#order .asked');
  assert.match(await says(), /so far; one price is not known yet/);
  await d.type('#order .asked input', '0,40');
  await d.waitFor(() => !document.querySelector('#order .asked') && /in all/.test(document.querySelector('#order .says').textContent));
  assert.equal(await d.read('#order input[data-mark="further"]'), '0.4', 'it stands in the list');
});

it('makers are compared over quantity, and where they cross is said', async () => {
  await d.type(await mark('die, once', 'die'), '190');
  await d.type(await mark('each further enamel', 'further'), '0');
  await d.waitFor(() => [...document.querySelectorAll('#order .maker-now')].every((e) => /EUR.*in all/.test(e.textContent)) && document.querySelectorAll('#order .maker-now').length === 2);
  await d.waitFor(() => /From \d+ pieces: Example maker \(invented prices\), copy is cheapest/.test(document.querySelector('#order .makers-over > p')?.textContent ?? ''));
  assert.equal(await d.count('#order .makers-chart .maker-line'), 2);
  assert.ok((await d.count('#order .beyond tbody tr')) >= 10);
  assert.deepEqual(await d.unfit(), []);
});

it('a maker is put away and back', async () => {
  await d.click('#order .maker-rows li.now .maker-acts button', 'Put');
  await d.waitFor(() => document.querySelectorAll('#order .maker-rows li').length === 1);
  await d.click('#order .makers button', 'put it back');
  await d.waitFor(() => document.querySelectorAll('#order .maker-rows li').length === 2 && document.querySelectorAll('#order .maker-rows li.now input[type=radio]:checked').length === 1);
});

it('pasted rows with a slip leave the list as it is, and say where; corrected they are taken', async () => {
  await unfold();
  await d.click('#order .ways button', 'paste rows');
  await d.type('#order .paste-rows textarea', 'pieces;up to 40 mm;up to 60 mm\n50;3,10;4,20\n100;-2;3,00\n');
  await d.click('#order .paste-rows button', 'Read these rows');
  await d.waitFor(() => document.querySelector('#order .problems tbody tr'));
  assert.match(await d.read('#order .problems tbody tr'), /^3\s*2\s*-2/);
  const kept = await d.count('#order .breaks tbody tr');
  assert.equal(kept, 7, 'the old rows stay');
  assert.match(await d.evaluate(() => document.querySelector('#order .paste-rows textarea').value), /100;-2;3,00/, 'nothing typed is lost');
  await d.type('#order .paste-rows textarea', 'pieces;up to 40 mm;up to 60 mm\n50;3,10;4,20\n100;2,00;3,00\n');
  await d.click('#order .paste-rows button', 'Read these rows');
  await d.click('#order .list-news button', 'Put into');
  await d.waitFor(() => document.querySelectorAll('#order .breaks tbody tr').length === 2);
  await d.waitForText('EUR\u00a02.00', '#order .quote');
});

it('a price that cannot be is told at its cell and changes no total', async () => {
  const total = await d.read('#order .quote tfoot');
  await d.type('#order .breaks tbody td .text-field input', '-5');
  await d.waitFor(() => document.querySelector('#order .breaks .complaint'));
  assert.equal(await d.read('#order .breaks tbody td .text-field input'), '-5', 'what was typed stays');
  assert.equal(await d.read('#order .quote tfoot'), total);
});
