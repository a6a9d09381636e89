// A pin drawn in two parts: the page asks what they are; hung, its eyes are
// dragged and moved by the keyboard, and the chain is changed; or it is one piece.
import assert from 'node:assert/strict';
import { after, before, describe, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { bring } from './pin.mjs';
import { ready, section } from './sheet.mjs';

/** A buoy with a bell below it that nothing holds. */
const BUOY = Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 900" width="600" height="900"><g stroke="#1d2030" stroke-width="16" stroke-linejoin="round">
<path d="M240 60H360L400 360H200Z" fill="#c3362b"/><path d="M150 360H450Q470 470 300 490Q130 470 150 360Z" fill="#2f7f7b"/>
<path d="M300 620Q390 630 390 740L410 790H190L210 740Q210 630 300 620Z" fill="#e8b23a"/></g></svg>`);

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address);
  await d.viewport(1280, 900);
  await d.open(server.address);
  await ready(d);
  await bring(d, BUOY, 'Buoy');
  await section(d, 'metal');
});
after(async () => {
  await d?.close();
  await server?.close();
});

const kinds = () => d.evaluate(() => [...document.querySelectorAll('#metal .findings b')].map((b) => b.textContent));
const chosen = () => d.evaluate(() => document.querySelector('#metal .parts input:checked')?.closest('label').textContent ?? '');
const settled = () => d.waitFor(() => !document.querySelector('.title-block.behind') && !document.querySelector('.eye-marks .loop'));

/** The places of the eyes, from the left and the top, mm. */
const eyes = () => d.evaluate(() => [...document.querySelectorAll('#metal .joins dd')].map((e) => (e.textContent.match(/[\d.]+(?= mm)/g) ?? []).slice(0, 2).map(Number)));
const handle = (i) => d.evaluate((n) => {
  const r = document.querySelectorAll('.eye-handle')[n].getBoundingClientRect();
  return { x: r.x + r.width / 2, y: r.y + r.height / 2 };
}, i);

/** A pixel of the struck pin under a place of the window, RGBA. */
const under = (x, y) => d.evaluate((px, py) => {
  const c = document.querySelector('.flipper .front canvas');
  const r = c.getBoundingClientRect();
  return [...c.getContext('2d').getImageData(Math.floor(((px - r.x) / r.width) * c.width), Math.floor(((py - r.y) / r.height) * c.height), 1, 1).data];
}, x, y);

describe('a part that stands alone', () => {
  it('is asked about at the spot, and hung by ring and chain', async () => {
    assert.ok((await kinds()).includes('A part stands alone'));
    assert.match(await d.read('#metal .parts'), /2 parts as drawn\. Should they hang from each other, or be one piece\?/);
    assert.equal(await chosen(), '');
    await d.click('.flags button[aria-label*="stands alone"]');
    await d.waitForText('A dangle, or one piece?', '.popover');
    await d.waitForText('A bridge of metal', '.popover .mends');
    await d.click('.popover button', 'Hang it by ring and chain');
    await d.waitForText('hanging by one chain', '#metal .parts');
    await ready(d);
    assert.match(await chosen(), /a dangle/);
    assert.ok(!(await kinds()).includes('A part stands alone'));
    assert.equal(await d.count('.popover'), 0);
    assert.equal(await d.count('.eye-handle'), 2);
    const [a, b] = [await handle(0), await handle(1)];
    assert.ok(a.y < b.y, 'the upper eye first');
    assert.ok((await under(a.x, a.y))[3] < 200, 'a hole, through which the ground is seen');
    await d.click('button', 'Undo');
    await d.waitFor(() => document.querySelectorAll('.eye-handle').length === 0);
    await ready(d);
    assert.equal(await chosen(), '');
    await d.click('button', 'Redo');
    await d.waitFor(() => document.querySelectorAll('.eye-handle').length === 2);
    await ready(d);
  });
});

describe('an eye', () => {
  it('dragged goes there, the chain with it, and one undo puts it back', async () => {
    const was = await eyes();
    const from = await handle(1);
    await d.drag(from.x, from.y, from.x + 24, from.y + 8);
    await settled();
    await d.waitFor((x) => Number(/[\d.]+(?= mm)/.exec(document.querySelectorAll('#metal .joins dd')[1].textContent)[0]) > x + 0.5, was[1][0]);
    await ready(d);
    const now = await eyes();
    assert.deepEqual(now[0], was[0], 'the other stays');
    assert.ok(now[1][1] > was[1][1], `${was[1]} to ${now[1]}`);
    const to = await handle(1);
    assert.ok(Math.hypot(to.x - from.x - 24, to.y - from.y - 8) < 2, 'it stays where it was let go');
    assert.ok((await under(to.x, to.y))[3] < 200, 'the hole is there now');
    await d.click('button', 'Undo');
    await d.waitFor((x) => document.querySelectorAll('#metal .joins dd')[1].textContent.includes(`${x} mm from the left`), was[1][0]);
    await ready(d);
    assert.deepEqual(await eyes(), was);
  });

  it('moved by the arrow keys goes half a millimetre a step, a tenth with Shift, and is told what it finds', async () => {
    const was = await eyes();
    await d.evaluate(() => document.querySelectorAll('.eye-handle')[1].focus());
    for (let i = 0; i < 2; i++) await d.press('ArrowRight');
    await d.press('Shift+ArrowRight');
    await d.waitFor((x) => Math.abs(Number(/[\d.]+(?= mm)/.exec(document.querySelectorAll('#metal .joins dd')[1].textContent)[0]) - x - 1.1) < 0.06, was[1][0]);
    await settled();
    await ready(d);
    for (let i = 0; i < 16; i++) await d.press('ArrowRight');
    await d.waitForText('It stands on no part', '#metal .joins');
    await settled();
    await d.waitForText('one hangs from nothing', '#metal .parts');
    await ready(d);
    assert.ok((await kinds()).includes('A part stands alone'), 'a part that nothing hangs from is said');
    await d.click('#metal .parts button', 'Put the eyes where the tool would');
    await d.waitForText('hanging by one chain', '#metal .parts');
    await ready(d);
    assert.deepEqual(await eyes(), was);
  });
});

describe('the chain', () => {
  it('has the ring and the links that are typed, and says how far it hangs', async () => {
    const hangs = async () => Number(/hangs ([\d.]+) mm/.exec(await d.read('#metal .joins .hangs'))[1]);
    const was = await hangs();
    await d.type('#metal .joins .text-field:nth-of-type(2) input', '4');
    await d.waitForText('lower than drawn', '#metal .joins .hangs');
    await ready(d);
    assert.ok((await hangs()) > was + 8);
    await d.type('#metal .joins .text-field:nth-of-type(1) input', '3');
    await d.waitForText('Take larger ones', '#metal .joins');
    await d.click('button', 'Undo');
    await d.click('button', 'Undo');
    await d.waitFor((w) => Number(/hangs ([\d.]+) mm/.exec(document.querySelector('#metal .joins .hangs').textContent)[1]) === w, was);
    await ready(d);
  });
});

describe('one piece', () => {
  it('is joined by a bridge, which goes when the parts are to hang again', async () => {
    await d.click('#metal .parts label', 'one piece');
    await d.waitForText('joined to one piece', '#metal .parts');
    await ready(d);
    assert.equal(await d.count('.eye-handle'), 0);
    assert.deepEqual((await kinds()).filter((k) => k.includes('alone')), []);
    assert.match(await d.read('#metal .repairs'), /Bridge built 1/);
    await d.click('#metal .parts label', 'a dangle');
    await d.waitForText('hanging by one chain', '#metal .parts');
    await ready(d);
    assert.equal(await d.count('#metal .repairs'), 0);
  });
});

describe('parts for everybody', () => {
  it('pass the accessibility checks, and nothing sticks out on a phone', async () => {
    assert.deepEqual(await d.unfit(), []);
    await d.viewport(390, 844);
    await ready(d);
    assert.ok((await d.evaluate(() => document.documentElement.scrollWidth - innerWidth)) <= 0);
    assert.equal(await d.count('.eye-handle'), 2);
  });
});
