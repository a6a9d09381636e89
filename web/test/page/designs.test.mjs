// Several designs and versions in one order: laid on the sheet, changed, copied,
// taken out and put back; priced together, by hand below.
import assert from 'node:assert/strict';
import { after, before, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { ready, section, sizeOf } from './sheet.mjs';

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address);
  await ready(d);
  await d.waitFor(() => document.querySelector('.strip-chip.now canvas'));
});
after(async () => {
  await d?.close();
  await server?.close();
});

const name = () => d.evaluate(() => document.querySelector('.title-block .name input').value);
const named = (n) => d.waitFor((x) => document.querySelector('.title-block .name input')?.value === x && !document.querySelector('.title-block.behind') && !document.querySelector('.progress'), n);
const chips = () => d.evaluate(() => [...document.querySelectorAll('.strip-chip .strip-name')].map((e) => [e.firstChild.textContent, e.querySelector('small').textContent].join(': ')));
const designs = () => d.evaluate(() => [...document.querySelectorAll('.strip-design .strip-name')].map((e) => e.firstChild.textContent));
const groups = () => d.evaluate(() => [...document.querySelector('#order .quote').tBodies].map((b) => [...b.rows].map((r) => [...r.cells].map((c) => c.textContent.replace(/\s/g, ' ').trim()))));
const front = () => d.evaluate(() => {
  const c = document.querySelector('.flipper .front canvas');
  return [...c.getContext('2d').getImageData(c.width >> 1, c.height >> 1, 1, 1).data].join();
});

/** Types into the field of a label on the open card. */
async function field(label, text) {
  await d.waitFor((l) => {
    const el = [...document.querySelectorAll('.strip-card input')].find((i) => i.labels?.[0]?.textContent === l);
    el?.setAttribute('data-mark', l);
    return Boolean(el);
  }, label);
  await d.type(`.strip-card input[data-mark="${label}"]`, text);
}

it('a version is added, with a plating, a quantity and a colour of its own', async () => {
  await d.click('.strip button', '+ version');
  await d.waitFor(() => document.querySelectorAll('.strip-chip').length === 2 && document.querySelector('.strip-card'));
  await field('name', 'Night');
  await d.waitFor(() => /Night/.test(document.querySelector('.strip-chip.now').textContent));
  await d.evaluate(() => {
    const pick = document.querySelector('.strip-card select');
    pick.value = 'silver';
    pick.dispatchEvent(new Event('change', { bubbles: true }));
  });
  await field('quantity', '60');
  await d.waitFor(() => /silver.* · 60/.test(document.querySelector('.strip-chip.now').textContent));
  await d.press('Escape');
  await ready(d);
  assert.deepEqual(await chips(), ['First: gold · 100', 'Night: silver (nickel) · 60']);
  const silver = await front();
  await d.click('.strip-chip', 'First');
  await d.waitFor(() => /100 pins/.test(document.querySelector('.title-block').textContent) && !document.querySelector('.title-block.behind'));
  assert.match(await d.read('.title-block'), /gold/);
  assert.equal(await d.count('.strip-chip canvas'), 2, 'each is shown as struck');
  assert.notEqual(await d.evaluate(() => [...document.querySelectorAll('.strip-chip canvas')].map((c) => c.getContext('2d').getImageData(0, 0, c.width, c.height).data.join()).filter((v, i, all) => all.indexOf(v) === i).length), 1);
  await d.click('.strip-chip', 'Night');
  await ready(d);
  assert.equal(await front(), silver);
});

it('a colour changed on the sheet is changed in the version that lies there, and nowhere else', async () => {
  const swatch = () => d.evaluate(() => [...document.querySelectorAll('#colours .flat-list li, #colours li')].map((e) => e.textContent).join('|'));
  const before = await swatch();
  await d.evaluate(() => [...document.querySelectorAll('#colours button')].find((b) => /^blue, enamel|^blue\s*enamel/.test(b.textContent)).click());
  await d.waitFor(() => document.querySelector('.popover input[type=color]'));
  await d.evaluate(() => {
    const c = document.querySelector('.popover input[type=color]');
    c.value = '#101030';
    c.dispatchEvent(new Event('input', { bubbles: true }));
    c.dispatchEvent(new Event('change', { bubbles: true }));
  });
  await d.press('Escape');
  await ready(d);
  const night = await swatch();
  assert.notEqual(night, before);
  await d.click('.strip-chip', 'First');
  await ready(d);
  assert.equal(await swatch(), before.replace('silver (nickel), metal', 'gold, metal'));
});

it('what is typed for one version does not land on the next', async () => {
  await section(d, 'order');
  await d.waitFor(() => document.querySelector('#order .text-field input'));
  await d.evaluate(() => {
    const el = document.querySelector('#order .text-field input');
    el.focus();
    el.value = '120';
    el.dispatchEvent(new Event('input', { bubbles: true }));
    el.blur();
    [...document.querySelectorAll('.strip-chip')].find((b) => /Night/.test(b.textContent)).click();
  });
  await d.waitFor(() => /First.*120/.test(document.querySelector('.strip-chip').textContent));
  assert.deepEqual(await chips(), ['First: gold · 120', 'Night: silver (nickel) · 60']);
  await d.click('button', 'Undo');
  await d.waitFor(() => /First.*100/.test(document.querySelector('.strip-chip.now')?.textContent ?? ''));
  await ready(d);
});

it('a further design joins the order; a step is undone where it was made', async () => {
  await d.click('.strip button', '+ design');
  await d.click('.strip-card button', 'harbour');
  await named('Skerry Harbour');
  assert.deepEqual(await designs(), ['Skerry Light', 'Skerry Harbour']);
  const harbour = await sizeOf(d);
  await d.click('.strip-design:not(.now)');
  await named('Skerry Light');
  await d.click('button', 'Undo');
  await d.waitFor(() => document.querySelectorAll('.strip-design').length === 1);
  assert.equal(await name(), 'Skerry Light');
  await d.click('button', 'Redo');
  await named('Skerry Harbour');
  assert.deepEqual(await sizeOf(d), harbour);
});

// By the example list (invented): die 68.00 for each design; up to 38 mm from 50
// pieces 2.90, from 100 1.72 a piece; the pieces of each version count for
// themselves, so Night, 60, pays the dearer price; parcel once.
it('one bill holds three versions of two designs, each line under the version it is for', async () => {
  await d.click('.strip-chip.now');
  await field('quantity', '100');
  await d.press('Escape');
  await d.waitFor(() => document.querySelectorAll('#order .quote .bill-of').length === 4);
  await ready(d);
  assert.deepEqual((await groups()).map((g) => g.map((r) => r.filter(Boolean).join(': '))), [
    ['Skerry Light, First', 'Die, once: EUR 68.00', 'Pieces up to 38 mm, price from 100 pieces: 100 × EUR 1.72: EUR 172.00', '2 further colours: 100 × EUR 0.22: EUR 22.00', 'Second post: 100 × EUR 0.09: EUR 9.00'],
    ['Skerry Light, Night', 'Pieces up to 38 mm, price from 50 pieces: 60 × EUR 2.90: EUR 174.00', '2 further colours: 60 × EUR 0.22: EUR 13.20', 'Second post: 60 × EUR 0.09: EUR 5.40'],
    ['Skerry Harbour, First', 'Die, once: EUR 68.00', 'Pieces up to 38 mm, price from 100 pieces: 100 × EUR 1.72: EUR 172.00', '4 further colours: 100 × EUR 0.44: EUR 44.00'],
    ['the whole order', 'Shipping: EUR 32.00'],
  ]);
  // 68 + 172 + 22 + 9 + 174 + 13.20 + 5.40 + 68 + 172 + 44 + 32 = 779.60, by 260 pieces 2.998.
  assert.match(await d.read('#order .quote tfoot'), /EUR\s779\.60.*about EUR\s2\.998/s);
  assert.match(await d.read('.title-block'), /about EUR\s2\.998\s*over all 260, invented prices/);
});

it('what a choice costs is of the whole order, and so is a break that all pieces reach together', async () => {
  // 200 of the harbour instead of 100: 200 × (1.52 + 0.44) − 100 × (1.72 + 0.44) = 176.
  const row = () => d.evaluate(() => [...document.querySelectorAll('#order .choices tbody tr')].map((r) => r.textContent).find((t) => t.startsWith('200 pieces instead of 100'))?.replace(/\s/g, ' ') ?? '');
  await d.waitFor(() => [...document.querySelectorAll('#order .choices tbody tr')].some((r) => /^200 pieces instead of 100.*EUR\s176\.00 more/.test(r.textContent)) && !document.querySelector('#order .choices .behind'));
  assert.match(await row(), /EUR 176\.00 more/);
  assert.match(await d.evaluate(() => document.querySelector('#order .choices').textContent), /to Skerry Harbour, First/);
  await d.evaluate(() => {
    const pick = [...document.querySelectorAll('#order select')].find((e) => [...e.options].some((o) => o.value === 'order'));
    pick.value = 'order';
    pick.dispatchEvent(new Event('change', { bubbles: true }));
  });
  // 260 pieces count together, so all pay the price from 200, 1.52:
  // 260 × 1.52 + 22 + 9 + 13.20 + 5.40 + 44 + 2 × 68 + 32 = 656.80.
  await d.waitForText('EUR\u00a0656.80', '#order .quote tfoot');
});

it('four designs, one more than the engine keeps open, each lie on the sheet when asked', async () => {
  for (const [demo, called] of [['buoy', 'Anchor Buoy'], ['lighthouse', 'Skerry Light 2']]) {
    await d.click('.strip button', '+ design');
    await d.click('.strip-card button', demo);
    await named(called);
  }
  for (const called of ['Skerry Harbour', 'Skerry Light', 'Anchor Buoy']) {
    await d.evaluate((n) => [...document.querySelectorAll('.strip-design')].find((b) => b.querySelector('.strip-name').firstChild.textContent === n).click(), called);
    await named(called);
  }
  await d.waitFor(() => document.querySelectorAll('#order .quote .bill-of').length === 6);
  assert.equal(await d.count('.note'), 0, 'nothing went wrong unseen');
});

it('a design is taken out and put back', async () => {
  await d.click('.strip-design.now');
  await d.click('.strip-card button', 'Take it out');
  await named('Skerry Harbour');
  assert.deepEqual(await designs(), ['Skerry Light', 'Skerry Harbour', 'Skerry Light 2']);
  await d.click('.strip-back button');
  await named('Anchor Buoy');
  assert.deepEqual(await designs(), ['Skerry Light', 'Skerry Harbour', 'Anchor Buoy', 'Skerry Light 2']);
  await d.click('.strip-chip.now');
  assert.deepEqual(await d.unfit(), []);
});
