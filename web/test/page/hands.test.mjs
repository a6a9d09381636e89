// By hand, at the spot: an area filled, a gap shown and closed, a stretch of
// line drawn or erased; each one step, replayed at another count and size.
import assert from 'node:assert/strict';
import { after, before, beforeEach, describe, it } from 'node:test';
import { at, NARROWEST, servePage } from './house.mjs';
import { bring, isClear, isGold, isNear, settled, tap, touch, WHITE } from './pin.mjs';
import { counted, pick, ready, section } from './sheet.mjs';

const svg = (body) => Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 600" width="600" height="600"><rect width="600" height="600" fill="#fff"/><g fill="none" stroke="#111" stroke-width="14">${body}</g></svg>`);

/** A round window of four panes; a box of two rooms with a gap of 30 in the wall, and the same in colours; a ring with a gap of 24. */
const PANES = svg('<circle cx="300" cy="300" r="240"/><path d="M300 60V540M60 300H540"/>');
const ROOMS = svg('<rect x="60" y="60" width="480" height="480" rx="40"/><path d="M300 60V285M300 315V540"/>');
const COLOURED = svg('<rect x="60" y="60" width="480" height="480" rx="40" fill="#2f7f7b"/><path d="M300 60V285M300 315V540"/><circle cx="160" cy="160" r="50" fill="#c3362b"/>');
const RING = svg('<path d="M539 288A240 240 0 1 0 539 312"/>');

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
});

describe('an area touched', () => {
  it('is filled with one tap, as a colour more, and keeps it at other counts and sizes', async () => {
    await bring(d, PANES, 'Window');
    assert.equal(await counted(d), 1);
    await touch(d, 0.3, 0.3);
    assert.match(await d.read('.popover .this-area'), /This area: \d+ mm²/);
    const sea = await swatch('very light green');
    await d.click('.popover .starting-set button', 'very light green');
    await settled(d, 2);
    assert.equal(await d.count('.popover'), 0);
    await isNear(d, 0.3, 0.3, sea);
    await isNear(d, 0.7, 0.3, WHITE);

    await pick(d, 6);
    await d.click('.dim-label.h button');
    await d.type('.dim-label.h input', '48');
    await d.waitFor(() => /\b48\smm/.test(document.querySelector('.title-block')?.textContent ?? ''));
    await ready(d);
    await isNear(d, 0.3, 0.3, sea);
    await isNear(d, 0.7, 0.7, WHITE);
    await pick(d, 1);
    await settled(d, 1);
    await isNear(d, 0.3, 0.3, sea);

    for (let i = 0; i < 4; i++) await d.click('button', 'Undo');
    await settled(d, 1);
    await isNear(d, 0.3, 0.3, WHITE);
  });

  it('takes a colour of the drawing, a free one, or another role, alone', async () => {
    await bring(d, PANES, 'Window');
    await touch(d, 0.3, 0.3);
    await free('#2a6f97');
    await settled(d, 2);
    await isNear(d, 0.3, 0.3, [42, 111, 151]);
    await touch(d, 0.7, 0.3);
    await d.click('.popover .chip', 'blue');
    await d.waitFor(() => !document.querySelector('.popover'));
    await ready(d);
    await isNear(d, 0.7, 0.3, [42, 111, 151]);
    assert.equal(await counted(d), 2);
    await touch(d, 0.7, 0.7);
    await d.click('.popover .chip', 'cut-out');
    await ready(d);
    await d.waitFor(() => document.querySelector('#colours .swatch.cutout'));
    await isClear(d, 0.7, 0.7);
    await isNear(d, 0.3, 0.7, WHITE);
    await touch(d, 0.3, 0.7);
    await d.click('.popover .chip', 'blue');
    await settled(d, 1);
  });

  it('is told apart from its colour as a whole', async () => {
    await bring(d, PANES, 'Window');
    await touch(d, 0.3, 0.3);
    assert.match(await d.read('.popover .whole summary'), /All of white 4 areas/);
    assert.equal(await d.evaluate(() => document.querySelector('.popover .whole').open), false);
    await d.click('.popover .whole summary');
    await d.type('.popover .whole .card-body > .text-field input', 'sailcloth');
    await d.waitForText('sailcloth', '.callouts');
    await d.press('Escape');
    await d.click('.callouts button', 'sailcloth');
    await d.waitFor(() => document.querySelector('.popover .choice'));
    assert.equal(await d.count('.popover .this-area'), 0, 'from a callout there is no one area');
  });

  it('can be reached by the keyboard alone', async () => {
    await bring(d, PANES, 'Window');
    await d.evaluate(() => document.querySelector('.pin-touch').focus());
    for (let i = 0; i < 8; i++) await d.press('ArrowLeft');
    for (let i = 0; i < 8; i++) await d.press('ArrowUp');
    assert.equal(await d.evaluate(() => getComputedStyle(document.querySelector('.crosshair')).display), 'inline');
    await d.press('Enter');
    await d.waitFor(() => document.querySelector('.popover .this-area'));
    assert.match(await d.read('.popover h2'), /white/);
    await d.press('Escape');
    await d.waitFor(() => document.activeElement?.className === 'pin-touch');
  });
});

describe('a gap inside', () => {
  it('is drawn with its width in mm and inches, and a fill of this side closes it in the same step', async () => {
    await bring(d, ROOMS, 'Rooms');
    await touch(d, 0.3, 0.5);
    // The ends of the wall are flat: 30 of the 494 that are 32 mm.
    const [, mm, inches] = /gap ([\d.]+) mm · ([\d.]+) in/.exec(await d.read('.gap-words'));
    assert.ok(Math.abs(Number(mm) - (30 / 494) * 32) < 0.1, `${mm} mm`);
    assert.ok(Math.abs(Number(inches) - Number(mm) / 25.4) < 0.006, `${inches} in`);
    assert.ok((await d.read('.popover .gap-note')).includes(`This area runs on through a gap of ${mm} mm`));
    const sea = await swatch('very light green');
    await d.click('.popover .starting-set button', 'very light green');
    await settled(d, 2);
    await isNear(d, 0.3, 0.5, sea);
    await isNear(d, 0.7, 0.5, WHITE);
    assert.deepEqual(await lines(), ['Drawn line 1 thinnest']);
    assert.equal(await d.count('.gap-mark'), 0);
    await d.click('button', 'Undo');
    await settled(d, 1);
    await isNear(d, 0.3, 0.5, WHITE);
    assert.deepEqual(await lines(), []);
  });

  it('stays when both sides are wanted', async () => {
    await bring(d, ROOMS, 'Rooms');
    await touch(d, 0.3, 0.5);
    const sea = await swatch('very light green');
    await d.evaluate(() => document.querySelector('.popover .gap-note input[value=all]').click());
    await d.click('.popover .starting-set button', 'very light green');
    await ready(d);
    await isNear(d, 0.7, 0.5, sea);
    await isNear(d, 0.3, 0.5, sea);
    assert.equal(await counted(d), 1, 'the colour takes the place of white');
    assert.deepEqual(await lines(), []);
  });

  it('is taken for meant in a drawing that came with its colours', async () => {
    await bring(d, COLOURED, 'Coloured');
    await touch(d, 0.3, 0.5);
    assert.match(await d.read('.popover .gap-note'), /runs on through a gap/);
    await d.click('.popover .chip', 'red');
    await d.waitFor(() => !document.querySelector('.popover'));
    await ready(d);
    await isNear(d, 0.3, 0.5, [195, 54, 43]);
    await isNear(d, 0.7, 0.5, [195, 54, 43]);
    assert.deepEqual(await lines(), []);
  });

  it('is closed alone, and then each side is an area', async () => {
    await bring(d, ROOMS, 'Rooms');
    const whole = await areaAt(0.3, 0.5);
    await d.click('.popover button', 'Only close the gap');
    await d.waitFor(() => document.querySelector('#metal .hand-lines li'));
    await ready(d);
    const side = await areaAt(0.3, 0.5);
    assert.ok(side < 0.55 * whole, `${side} of ${whole} mm²`);
    assert.equal(await d.count('.gap-note'), 0);
    const sea = await swatch('very light green');
    await d.click('.popover .starting-set button', 'very light green');
    await settled(d, 2);
    await isNear(d, 0.3, 0.5, sea);
    await isNear(d, 0.7, 0.5, WHITE);
  });
});

describe('an outline that does not close', () => {
  it('is said; a fill closes it in the same step', async () => {
    await bring(d, RING, 'Ring');
    await touch(d, 0.5, 0.5);
    assert.equal(await d.read('.popover h2'), 'The line does not close here');
    assert.match(await d.read('.gap-words'), /gap [\d.]+ mm · [\d.]+ in/);
    const sea = await swatch('very light green');
    await d.click('.popover .starting-set button', 'very light green');
    await settled(d, 1);
    await isNear(d, 0.5, 0.5, sea);
    assert.deepEqual(await lines(), ['Drawn line 1 thinnest']);
    await touch(d, 0.5, 0.5);
    assert.match(await d.read('.popover .this-area'), /mm²/);
    assert.equal(await d.count('.gap-mark'), 0);
    await d.press('Escape');
    await d.click('button', 'Undo');
    await settled(d, 0);
    await isClear(d, 0.5, 0.5);
  });

  it('is nothing to somebody who touches the background', async () => {
    await bring(d, PANES, 'Window');
    await touch(d, 0.3, 0.3);
    await tap(d, 0.02, 0.02);
    await d.waitFor(() => !document.querySelector('.popover'));
    await tap(d, 0.98, 0.02);
    await ready(d);
    assert.equal(await d.count('.popover'), 0);
  });
});

describe('a line by hand', () => {
  it('is drawn by taps at a typed width, listed, resized and taken out', async () => {
    await bring(d, PANES, 'Window');
    await section(d, 'metal');
    await d.click('#metal .hand-lines button', 'Draw a line');
    await d.waitFor(() => document.querySelector('.line-touch') === document.activeElement);
    assert.equal(await d.evaluate(() => [...document.querySelectorAll('.line-bar .solid')].every((b) => b.disabled)), true);
    await tapLine(0.2, 0.3);
    await tapLine(0.8, 0.3);
    await type('.line-bar input[type=text]', '1.2 mm');
    await d.click('.line-bar button', 'Done'); // at once: the width is still being read
    await d.waitFor(() => document.querySelector('#metal .hand-lines li'));
    await ready(d);
    assert.deepEqual(await lines(), ['Drawn line 1 1.2 mm']);
    assert.equal(await d.count('.line-mode'), 0);
    await isGold(d, 0.4, 0.3);
    await d.type('#metal .hand-lines li input', 'a yard');
    await d.waitFor(() => document.querySelector('#metal .hand-lines .complaint'));
    await d.type('#metal .hand-lines li input', '1/32"');
    await d.waitFor(() => document.querySelector('#metal .hand-lines li input').value === '0.79 mm');
    await d.waitFor(() => document.querySelector('.stage .hand-line.draw-line')); // shown while it has the focus
    await d.click('#metal .hand-lines button', 'Remove');
    await d.waitFor(() => !document.querySelector('#metal .hand-lines li'));
    await ready(d);
    await isNear(d, 0.4, 0.3, WHITE);
    assert.equal(await d.count('.stage .hand-line'), 0);
    await d.click('button', 'Undo');
    await d.waitFor(() => document.querySelector('#metal .hand-lines li'));
  });

  it('parts an area: each side is filled alone', async () => {
    await bring(d, PANES, 'Window');
    await touch(d, 0.063, 0.45); // in the ring
    await d.click('.popover button', 'Draw a line from here');
    await d.waitFor(() => document.querySelector('.line-point'));
    await tapLine(0.5, 0.3);
    await tap(d, 0.5, 0.3); // the last one again
    await d.waitFor(() => document.querySelector('#metal .hand-lines li'));
    await ready(d);
    await touch(d, 0.3, 0.2);
    const sea = await swatch('very light green');
    await d.click('.popover .starting-set button', 'very light green');
    await settled(d, 2);
    await isNear(d, 0.3, 0.2, sea);
    await isNear(d, 0.4, 0.42, WHITE);
  });

  it('is drawn by the keyboard alone; Escape and the undo chord are the line’s', async () => {
    await bring(d, PANES, 'Window');
    await section(d, 'metal');
    const draw = () => d.evaluate(() => [...document.querySelectorAll('#metal .hand-lines button')].find((b) => b.textContent === 'Draw a line').focus());
    await draw();
    await d.press('Enter');
    await d.waitFor(() => document.activeElement?.className === 'line-touch');
    for (const key of ['ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowUp', 'Enter', 'ArrowRight', 'ArrowRight', 'Enter', 'ArrowDown', 'Enter']) await d.press(key);
    await d.waitFor(() => document.querySelectorAll('.line-point').length === 3);
    assert.match(await d.read('.line-mode [role=status]'), /mm from the left, [\d.]+ mm from the top; 3 points set/);
    await d.press('Control+z');
    await d.waitFor(() => document.querySelectorAll('.line-point').length === 2);
    assert.equal(await d.read('.title-block .name input'), 'Window', 'nothing of the project was undone');
    await d.press('Escape');
    await d.waitFor(() => !document.querySelector('.line-mode'));
    assert.deepEqual(await lines(), []);
    await draw();
    await d.press('Enter');
    await d.waitFor(() => document.activeElement?.className === 'line-touch');
    for (const key of ['ArrowUp', 'ArrowUp', 'Enter', 'ArrowRight', 'ArrowRight', 'Enter', 'Enter']) await d.press(key);
    await d.waitFor(() => document.querySelector('#metal .hand-lines li'));
    assert.deepEqual(await lines(), ['Drawn line 1 thinnest']);
  });

  it('erases metal as wide as the line it is put on, and stays erased', async () => {
    await bring(d, PANES, 'Window');
    const before = await areaAt(0.3, 0.3);
    await d.press('Escape');
    await touch(d, 0.25, 0.5);
    await d.click('.popover button', 'Erase line from here');
    const width = parseFloat(await d.read('.line-bar input[type=text]'));
    assert.ok(width > (14 / 494) * 32, `${width} mm is wider than the line`);
    await tapLine(0.35, 0.5);
    await d.click('.line-bar button', 'Done');
    await d.waitFor(() => document.querySelector('#metal .hand-lines li'));
    await ready(d);
    assert.match((await lines())[0], /^Erased stretch 1 [\d.]+ mm$/);
    await isNear(d, 0.3, 0.5, WHITE);
    assert.ok((await areaAt(0.3, 0.3)) > 1.9 * before, 'two panes are one');
    const sea = await swatch('very light green');
    await d.evaluate(() => document.querySelector('.popover .gap-note input[value=all]').click());
    await d.click('.popover .starting-set button', 'very light green');
    await settled(d, 2);
    for (const y of [0.3, 0.5, 0.7]) await isNear(d, 0.3, y, sea); // and are filled as one
    await isNear(d, 0.7, 0.3, WHITE);
  });
});

describe('everybody', () => {
  for (const { name, w, h, scheme } of NARROWEST) {
    it(`can use the cards and the line on a ${name}, ${scheme}`, async () => {
      await d.scheme(scheme);
      await d.viewport(w, h);
      await bring(d, ROOMS, 'Rooms');
      await touch(d, 0.3, 0.5);
      await d.evaluate(() => { for (const el of document.querySelectorAll('.popover details')) el.open = true; });
      assert.deepEqual(await d.unfit(), [], 'with the card of an area');
      await d.click('.popover button', 'Draw a line from here');
      await d.waitFor(() => document.querySelector('.line-bar'));
      assert.deepEqual(await d.unfit(), [], 'with a line begun');
      assert.ok((await d.evaluate(() => document.documentElement.scrollWidth - innerWidth)) <= 0);
      await tapLine(0.4, 0.4);
      await d.click('.line-bar button', 'Done');
      await section(d, 'metal');
      await d.waitFor(() => document.querySelector('#metal .hand-lines li'));
      await ready(d);
      await d.waitFor(() => document.getAnimations().every((a) => a.playState !== 'running'));
      assert.deepEqual(await d.unfit(), [], 'with a line listed');
      await bring(d, RING, 'Ring');
      await touch(d, 0.5, 0.5);
      assert.deepEqual(await d.unfit(), [], 'with the card of an open line');
    });
  }
});

/** A tap while a line is drawn; waits until it counts. */
async function tapLine(x, y) {
  const n = await d.count('.line-point');
  await tap(d, x, y);
  await d.waitFor((k) => document.querySelectorAll('.line-point').length > k, n);
}

async function areaAt(x, y) {
  await touch(d, x, y);
  return Number(/([\d.]+) mm²/.exec(await d.read('.popover .this-area'))[1]);
}

/** Types without Enter. */
async function type(selector, text) {
  await d.waitFor((s) => { const el = document.querySelector(s); el?.focus(); el?.select(); return el === document.activeElement; }, selector);
  await d.raw.keys(text);
}

const free = (hex) => d.evaluate((value) => {
  const field = document.querySelector('.popover .chip.free input');
  field.value = value;
  field.dispatchEvent(new Event('change', { bubbles: true }));
}, hex);

/** The colour of a swatch of the starting set, by its name. */
async function swatch(name) {
  const css = await d.evaluate((n) => [...document.querySelectorAll('.popover .starting-set button')].find((b) => b.ariaLabel.includes(n)).firstElementChild.style.backgroundColor, name);
  return css.match(/\d+/g).map(Number);
}

const lines = async () => {
  await section(d, 'metal');
  return d.evaluate(() => [...document.querySelectorAll('#metal .hand-lines li')].map((li) => `${li.querySelector('.line-name').textContent} ${li.querySelector('input').value}`));
};
