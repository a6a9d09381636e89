// The sizes that hold, what if a limit were another, and the marks as a picture.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, beforeEach, describe, it } from 'node:test';
import { at, drawings, servePage } from './house.mjs';
import { catchFiles, savedFile } from './saved.mjs';
import { findings, ready, section, sizeOf } from './sheet.mjs';

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
  await d.viewport(1280, 900);
  await d.open(server.address);
  await ready(d);
});

async function openSizes() {
  await section(d, 'sizes');
  await d.waitFor(() => document.querySelector('#sizes .sizes-table'));
}

/** Rows of the table: what is made, its smallest size in mm, and what fails now. */
const rows = () => d.evaluate(() => [...document.querySelectorAll('#sizes tbody tr')].map((r) => ({
  name: r.cells[0].textContent, from: parseFloat(r.cells[1].querySelector('button')?.textContent), now: r.cells[2].textContent, chosen: r.classList.contains('now'),
})));

const think = (mm) => d.evaluate((v) => {
  const range = document.querySelector('#sizes input[type=range]');
  range.value = String(v);
  range.dispatchEvent(new Event('input', { bubbles: true }));
}, mm);

const limit = async () => {
  await section(d, 'metal');
  return d.evaluate(() => {
    const label = [...document.querySelectorAll('#metal .limit-grid label')].find((l) => l.textContent.includes('thinnest metal line'));
    return document.getElementById(label.htmlFor).value;
  });
};

describe('the sizes that hold', () => {
  it('are named for each making, finer ones first, as the sheet says it', async () => {
    await openSizes();
    const all = await rows();
    assert.deepEqual(all.map((r) => r.name.replace(' (chosen)', '')), ['struck, soft enamel', 'struck, hard enamel', 'cast']);
    assert.deepEqual(all.map((r) => r.chosen), [true, false, false]);
    assert.ok(all[0].from < all[1].from && all[1].from < all[2].from, JSON.stringify(all));
    assert.match(await d.read('.title-block'), new RegExp(`hold from ${all[0].from} mm`));
    for (const r of all) assert.match(r.now, /^(holds|[\d.]+\s% of lines.*|[\d.]+\s% of areas|under 0\.1\s%.*)$/);
  });

  it('make the pin so large when one is taken', async () => {
    await openSizes();
    const [soft] = await rows();
    await d.click('#sizes tbody tr:first-child button');
    await ready(d);
    const { w, h } = await sizeOf(d);
    assert.ok(Math.abs(Math.max(w, h) - soft.from) < 0.06);
    await d.waitFor(() => document.querySelector('#sizes tbody tr:first-child td:last-child').textContent === 'holds');
    assert.equal(await d.evaluate(() => document.querySelectorAll('#metal .findings .fails').length), 0);
  });

  it('are asked about by moving a limit, which changes nothing until it is used', async () => {
    await openSizes();
    const [soft] = await rows();
    const project = await d.read('.title-block');
    await think(0.3);
    await d.waitForText('The thinnest line at 0.3', '#sizes .what-if-says');
    const then = Number(/from ([\d.]+)/.exec(await d.read('#sizes .what-if-says'))[1]);
    assert.ok(then >= soft.from);
    assert.equal(await d.count('#sizes .lane.thought'), 1);
    assert.equal(await limit(), '0.2', 'nothing is changed');
    assert.equal(await d.read('.title-block'), project);
    await think(0.1);
    await d.waitForText('The thinnest line at 0.1', '#sizes .what-if-says');
    await d.click('#sizes button', 'never mind');
    await d.waitFor(() => !document.querySelector('#sizes .lane.thought'));
    await think(0.3);
    await d.waitForText('The thinnest line at 0.3', '#sizes .what-if-says');
    await d.click('#sizes button', 'Use this limit');
    await d.waitFor(() => document.querySelectorAll('#sizes tbody tr').length === 4);
    assert.equal(await limit(), '0.3');
    const own = (await rows())[0];
    assert.deepEqual([own.name, own.from], ['by your own limits (chosen)', then]);
    await d.press('Control+z');
    await d.waitFor(() => document.querySelectorAll('#sizes tbody tr').length === 3);
    assert.equal(await limit(), '0.2');
  });

  it('are moved by the keyboard', async () => {
    await openSizes();
    await d.evaluate(() => document.querySelector('#sizes input[type=range]').focus());
    for (let i = 0; i < 3; i++) await d.press('ArrowRight');
    await d.waitForText('0.23', '#sizes .what-if-says');
    assert.equal(await d.evaluate(() => document.querySelector('#sizes input[type=range]').getAttribute('aria-valuetext')), '0.23 mm');
  });

  it('are dragged on the picture', async () => {
    await openSizes();
    const box = await d.evaluate(() => {
      const svg = document.querySelector('.sizes-chart svg');
      svg.scrollIntoView({ block: 'center' });
      const { x, y, width, height } = svg.getBoundingClientRect();
      return { x, y, width, height };
    });
    const px = (mm) => box.x + (box.width / 420) * (8 + ((mm - 10) / 70) * 404);
    await d.drag(px(30), box.y + box.height / 2, px(60), box.y + box.height / 2);
    await ready(d);
    const { w, h } = await sizeOf(d);
    assert.ok(Math.abs(Math.max(w, h) - 60) <= 0.5, `${w} x ${h}`);
    await d.press('Control+z');
    await ready(d);
    assert.ok(Math.max(...Object.values(await sizeOf(d))) < 50, 'one step back is the size before');
  });
});

describe('the marks', () => {
  it('come as a picture of the file’s own pixels, clear but for the marks', async () => {
    await d.drop(join(drawings, 'lighthouse-white.jpg'));
    await d.waitForText('Lighthouse white', '.note');
    await ready(d);
    await section(d, 'sight');
    await d.type('#sight .text-field input', '20');
    await d.waitFor(() => document.querySelectorAll('#metal .findings > li').length > 3);
    await ready(d);
    await section(d, 'metal');
    await catchFiles(d);
    await d.click('#metal button', 'Save the marks');
    const marks = await savedFile(d, 'marks');
    assert.equal(marks.name, 'lighthouse-white-marks.png');
    assert.deepEqual([marks.w, marks.h], [1108, 1200]);
    assert.ok(marks.clear > 0.7 && marks.clear < 0.999, `${marks.clear} of it is clear`);
    assert.ok((await findings(d)) > 3);
  });
});
