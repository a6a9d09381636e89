// Repairs: looked at first, made one by one or all at once, undone and taken out
// again; and the smallest size that holds as repaired.
import assert from 'node:assert/strict';
import { after, before, beforeEach, describe, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { bring } from './pin.mjs';
import { findings, ready, section } from './sheet.mjs';

/** A plate of two colours: the bar between them and a hair in one of them are too thin. */
const PLATE = Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 400" width="600" height="400">
<rect x="20" y="20" width="560" height="360" rx="30" fill="#1d2030"/><path d="M40 40H260V360H40Z" fill="#c3362b"/><path d="M262 40H560V360H262Z" fill="#2f7f7b"/>
<rect x="380" y="120" width="2" height="140" fill="#1d2030"/></svg>`);

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
  await d.scheme('light');
  await d.viewport(1280, 900);
  await d.open(server.address);
  await ready(d);
  await bring(d, PLATE, 'Plate');
  await sized(30);
  await section(d, 'metal');
});

async function sized(mm) {
  await d.click('.dim-label.w button');
  await d.type('.dim-label.w input', String(mm));
  await d.waitFor((n) => new RegExp(`(?:^|\\D)${n}\\s×`).test(document.querySelector('.title-block')?.textContent ?? ''), mm);
  await ready(d);
}

const failing = () => d.evaluate(() => document.querySelectorAll('#metal .findings button.fails').length);
const names = () => d.evaluate(() => [...document.querySelectorAll('.repairs .line-name')].map((e) => e.textContent));
const fewer = (n) => d.waitFor((k) => document.querySelectorAll('#metal .findings button.fails').length === k && !document.querySelector('.title-block.behind'), n);

/** How many pixels of two canvases are not the same. */
const differing = (a, b) => d.evaluate((p, q) => {
  const [x, y] = [p, q].map((s) => {
    const c = document.querySelector(s);
    return c.getContext('2d').getImageData(0, 0, c.width, c.height).data;
  });
  let n = x.length === y.length ? 0 : -1;
  for (let i = 0; n >= 0 && i < x.length; i += 4) if (x[i] !== y[i] || x[i + 1] !== y[i + 1] || x[i + 2] !== y[i + 2]) n++;
  return n;
}, a, b);

describe('the repair of one place', () => {
  it('is shown before and after, made, listed, and taken out again', async () => {
    const n = await failing();
    assert.ok(n >= 2, `${n} places fail`);
    await d.click('#metal .findings button');
    await d.waitFor(() => document.querySelector('.popover .mends .solid'));
    assert.ok(await differing('.mend-pair figure:first-child canvas', '.mend-pair figure:last-child canvas') > 50, 'the pictures differ');
    assert.match(await d.read('.mends .facts'), /Changes [\d.]+ mm², .*% of the pin/);
    assert.equal(await failing(), n, 'nothing is changed by looking');
    assert.deepEqual(await names(), []);

    await d.click('.popover .mends .solid');
    await fewer(n - 1);
    assert.equal(await d.count('.popover'), 0);
    assert.equal((await names()).length, 1);
    await d.click('button', 'Undo');
    await fewer(n);
    assert.deepEqual(await names(), []);
    await d.click('button', 'Redo');
    await fewer(n - 1);
    await d.click('.repairs button', 'Remove');
    await fewer(n);
  });

  it('can be chosen with the keyboard', async () => {
    // The second is the hair, which can be thickened or go.
    await d.evaluate(() => document.querySelector('#metal .findings li:nth-child(2) button').focus());
    await d.raw.press('Enter');
    await d.waitFor(() => document.querySelectorAll('.popover .mends input[type=radio]').length > 1);
    const said = () => d.read('.mends .facts');
    const first = await said();
    await d.evaluate(() => document.querySelector('.mends input[type=radio]').focus());
    await d.raw.press('ArrowDown');
    await d.waitFor((was) => document.querySelector('.mends .facts').textContent.replace(/\s+/g, ' ').trim() !== was, first);
    assert.notEqual(await said(), first);
  });
});

describe('all repaired at once', () => {
  it('is looked at, left, looked at again, made and undone', async () => {
    const n = await failing();
    await d.click('.repair-all button', 'Repair');
    await d.waitForText('Repaired, none does', '.outcome');
    assert.match(await d.read('.outcome'), /It changes [\d.]+ mm²/);
    assert.ok(await d.count('.compare svg circle') >= 2, 'every repair is ringed');
    const after = await d.evaluate(() => document.querySelector('.compare canvas').toDataURL());
    await d.click('.outcome .choice label', 'as it is');
    await d.waitFor((was) => document.querySelector('.compare canvas').toDataURL() !== was, after);
    assert.equal(await failing(), n, 'nothing is changed by looking');

    await d.click('.outcome button', 'Leave it as it is');
    assert.equal(await d.count('.outcome'), 0);
    await d.click('.repair-all button', 'Repair');
    await d.waitFor(() => document.querySelector('.compare canvas')?.width > 1);
    await d.click('.outcome button', 'Make these repairs');
    await fewer(0);
    assert.ok((await names()).length >= 2);
    await d.click('button', 'Undo');
    await fewer(n);
    assert.deepEqual(await names(), []);
  });

  it('finds the smallest size that holds as repaired', async () => {
    await d.click('.repair-all button', 'Find the smallest size');
    await d.waitFor(() => document.querySelector('.seeking progress') || document.querySelector('.repair-all')?.textContent?.includes('As repaired'));
    await d.waitForText('As repaired, everything holds from', '.repair-all');
    const mm = Number(/holds from ([\d.]+) mm/.exec(await d.read('.repair-all'))?.[1]);
    assert.ok(mm > 5 && mm < 30, `${mm}`);
    await d.click('.repair-all button', 'Make the pin');
    await d.waitFor((n) => new RegExp(`(?:^|\\D)${n}\\s×`).test(document.querySelector('.title-block')?.textContent ?? ''), mm);
    await ready(d);
    await d.click('.repair-all button', 'Repair');
    await d.waitForText('Repaired, none does', '.outcome');
  });
});

describe('repairs for everybody', () => {
  it('pass the accessibility checks in both themes, on a phone too', async () => {
    await d.click('.repair-all button', 'Repair');
    await d.waitFor(() => document.querySelector('.outcome'));
    for (const scheme of ['light', 'dark']) {
      await d.scheme(scheme);
      assert.deepEqual(await d.unfit(), [], scheme);
    }
    await d.click('.outcome button', 'Make');
    await d.waitFor(() => document.querySelector('.repairs'));
    assert.deepEqual(await d.unfit(), []);
    await d.click('button', 'Undo');
    await d.viewport(390, 844);
    await d.click('#metal .findings button');
    await d.waitFor(() => document.querySelector('.popover .mends .solid'));
    assert.deepEqual(await d.unfit(), []);
    const wide = await d.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(wide <= 0, 'nothing sticks out on a phone');
    assert.ok(await findings(d) > 0);
  });
});
