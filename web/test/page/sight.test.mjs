// Sight: sizes on one scale, what is read from where, the look, colours that
// meet with ideas that are made and undone, platings ranked.
import assert from 'node:assert/strict';
import { after, before, describe, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { bring } from './pin.mjs';
import { ready, section, sizeOf } from './sheet.mjs';

/** A shield: yellow in gold (one, by common practice; no published source), two
 * greys either side of a line, and two hairlines close together on blue. */
const SHIELD = Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 900 1000" width="900" height="1000">
<path d="M450 20C690 20 880 210 880 450S700 980 450 980 20 700 20 450 210 20 450 20Z" fill="#1d2030"/>
<path d="M450 44C676 44 856 224 856 450H44C44 224 224 44 450 44Z" fill="#e2b93c"/>
<path d="M44 466H440V954C220 950 44 690 44 466Z" fill="#8d9196"/><path d="M448 466H856C856 690 680 950 448 954Z" fill="#9da1a6"/>
<circle cx="450" cy="270" r="142" fill="#1d2030"/><circle cx="450" cy="270" r="124" fill="#2f6fa0"/>
<path d="M444 180V360M456 180V360" stroke="#1d2030" stroke-width="5"/></svg>`);

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address);
  await d.scheme('light');
  await d.viewport(1280, 900);
  await ready(d);
  await bring(d, SHIELD, 'Shield');
  await section(d, 'sight');
  await whole();
});
after(async () => {
  await d?.close();
  await server?.close();
});

/** Waits until everything in the section is of what is asked for. */
async function whole() {
  await ready(d);
  await d.waitFor(() => document.querySelector('#sight .unread-list') && document.querySelector('#sight .neighbours') && !document.querySelector('#sight .late-answer'));
}

const says = () => d.read('#sight .says');
const titles = () => d.evaluate(() => [...document.querySelectorAll('#sight .pairs .pair-head b')].map((e) => e.textContent));
const asOne = () => d.evaluate(() => document.querySelectorAll('#sight .meeting.fails').length);

describe('the answer at a glance', () => {
  it('says what is asked for, from where it is made and read; a mark is taken and undone', async () => {
    assert.match(await says(), /on the lapel.*; you asked for [\d.]+ mm\.$/);
    assert.match(await d.evaluate(() => document.querySelector('#sight .glance svg').getAttribute('aria-label')), /^Sizes from 10 to 80 mm: the pin .*Asked for: [\d.]+ mm · [\d.]+ in\.$/);
    await d.click('#sight .seen-row label', 'in the hand');
    await d.waitForText('in the hand from', '#sight .says');
    const was = await sizeOf(d);
    const mm = Number(/read in the hand from ([\d.]+) mm/.exec(await says())?.[1]);
    await d.click('#sight .glance-marks .read button');
    await whole();
    const now = await sizeOf(d);
    assert.ok(Math.abs(Math.max(now.w, now.h) - mm) < 0.06, `${now.w} × ${now.h}, ${mm}`);
    assert.match(await d.read('#sight .unread-list'), /Everything is told apart/);
    await d.click('button', 'Undo');
    await whole();
    assert.deepEqual(await sizeOf(d), was);
  });
});

describe('reading from a distance', () => {
  it('changes with the distance, and with the eye; what cannot be is refused in words', async () => {
    await d.click('#sight .seen-row label', 'across a table');
    await d.waitForText('across a table', '#sight .unread-list h3');
    await whole();
    const far = await d.count('#sight .unread-list li');
    await d.click('#sight .seen-row label', 'another distance');
    await d.type('#sight .seen-other input', '0.6 m');
    await d.waitForText('from 0.6 m', '#sight .unread-list h3');
    await whole();
    assert.ok(far > 0);
    await d.type('#sight .seen-other input', '900 m');
    await d.waitFor(() => document.querySelector('#sight .seen-other .complaint'));
    assert.match(await d.read('#sight .unread-list h3'), /from 0.6 m/);
    await d.press('Escape');

    await d.evaluate(() => document.querySelectorAll('#sight .why').forEach((w) => (w.open = true)));
    const before = await d.read('#sight .unread-list');
    for (const wrong of ['400', '0']) {
      await d.type('#sight .acuity input', wrong);
      await d.waitForText('acuity', '#sight .acuity .complaint');
      await d.press('Escape');
    }
    assert.equal(await d.read('#sight .unread-list'), before, 'nothing is changed by what is refused');
    await d.type('#sight .acuity input', '0.5');
    await d.waitFor(() => document.querySelector('#sight .seen-from > .hint')?.textContent.includes('an eye of 0.5'));
    await d.type('#sight .acuity input', '1');
    await d.waitFor(() => !document.querySelector('#sight .seen-from > .hint'));
    await d.click('#sight .seen-row label', 'on the lapel');
    await d.waitForText('on the lapel', '#sight .unread-list h3');
    await whole();
  });

  it('marks what is not read on the pin, and walks there', async () => {
    assert.equal(await d.count('.overlay .unread path'), 0);
    await d.click('#sight button', 'Show them on the pin');
    await d.waitFor(() => document.querySelectorAll('.overlay .unread .fails path').length > 1);
    const first = await d.read('#sight .unread-walk b');
    await d.click('#sight .unread-walk');
    await d.waitFor(() => document.querySelector('.popover .two-questions') && document.querySelector('.overlay .unread .crosshair'));
    assert.equal(await d.read('.popover h2, .popover h3'), first);
    assert.match(await d.read('.popover .two-questions'), /told apart\?.*noticed\?/);
    await d.click('.popover button', 'Next');
    await d.click('.popover button', 'To the list');
    assert.equal(await d.count('.popover'), 0);
    await d.click('#sight button', 'Hide them on the pin');
    await d.waitFor(() => !document.querySelector('.overlay .unread'));
  });
});

describe('the look', () => {
  it('is not what a lens sees, and lies on the cloth that is chosen', async () => {
    const shot = (n) => d.evaluate((k) => {
      const c = document.querySelector(`#sight .look-pair figure:nth-child(${k}) .look-large canvas`);
      const px = c.getContext('2d').getImageData(0, 0, c.width, c.height).data;
      return { w: c.width, corner: Array.from(px.slice(0, 3)), sum: px.reduce((a, v, i) => (a * 31 + v * (i % 97)) % 1000003, 7) };
    }, n);
    const drawn = () => d.waitFor(() => document.querySelectorAll('#sight .look-large canvas').length === 2 && !document.querySelector('#sight .look-work progress, #sight .late-answer'));
    await drawn();
    const [lens, eye] = [await shot(1), await shot(2)];
    assert.equal(lens.w, eye.w);
    assert.notEqual(lens.sum, eye.sum);
    assert.deepEqual(lens.corner, [62, 82, 112], 'denim');
    await d.click('#sight .cloths label', 'white shirt');
    await d.waitFor(() => {
      const c = document.querySelector('#sight .look-pair figure:nth-child(2) .look-large canvas');
      return c && c.getContext('2d').getImageData(0, 0, 1, 1).data[0] > 235;
    });
    await drawn();
    assert.ok((await shot(1)).corner[0] > 235);
    const wide = await d.evaluate(() => document.querySelector('#sight .look-true canvas').clientWidth);
    assert.ok(wide > 60 && wide < 300, `${wide} px at true size`);
  });
});

describe('colours that meet', () => {
  it('are told, the worst first; an idea is looked at, made and undone', async () => {
    const n = await asOne();
    assert.ok(n >= 2, `${n} pairs read as one`);
    const all = await titles();
    assert.ok(all.some((t) => /yellow and gold/i.test(t)), all.join('; '));
    assert.ok(all.some((t) => /grey|blue/i.test(t) && !/gold/.test(t)), all.join('; '));
    await d.click('#sight .pairs .pair-head');
    await d.waitFor(() => document.querySelector('.popover .judged'));
    await d.press('Escape');

    await d.click('#sight .ideas label');
    await d.waitFor(() => document.querySelectorAll('#sight .mend-pair canvas').length === 2);
    const [a, b] = await d.evaluate(() => [...document.querySelectorAll('#sight .mend-pair canvas')].map((c) => c.toDataURL()));
    assert.notEqual(a, b);
    assert.equal(await asOne(), n, 'nothing is changed by looking');
    await d.click('#sight .ideas button', 'Do it so');
    await d.waitFor((k) => document.querySelectorAll('#sight .meeting.fails').length < k && !document.querySelector('#sight .late-answer'), n);
    await d.click('button', 'Undo');
    await d.waitFor((k) => document.querySelectorAll('#sight .meeting.fails').length === k && !document.querySelector('#sight .late-answer'), n);
    await whole();
  });

  it('have the platings ranked, and the best is taken', async () => {
    assert.match(await d.read('#sight .ranked-row.now b'), /gold/i);
    const best = await d.read('#sight .ranked-row b');
    await d.click('#sight .ranked-row');
    await whole();
    await d.waitFor((name) => document.querySelector('#sight .ranked-row.now b')?.textContent === name, best);
    assert.match((await d.read('.title-block')).toLowerCase(), new RegExp(best.toLowerCase().split(' ')[0]));
    await d.click('button', 'Undo');
    await whole();
  });

  it('are judged by figures the person can change, within reason', async () => {
    const n = await asOne();
    const set = (text) => d.evaluate(() => [...document.querySelectorAll('#sight .thresholds .text-field')].find((f) => f.textContent.includes('two enamels')).querySelector('input').id).then((id) => d.type(`[id="${id}"]`, text));
    await set('5000');
    await d.waitForText('tells nothing apart', '#sight .thresholds .complaint');
    await d.press('Escape');
    await set('1');
    await d.waitFor((k) => document.querySelectorAll('#sight .meeting.fails').length < k && !document.querySelector('#sight .late-answer'), n);
    await d.click('#sight .thresholds button', 'usual figures');
    await d.waitFor((k) => document.querySelectorAll('#sight .meeting.fails').length === k, n);
  });
});

describe('what each colour buys', () => {
  it('says of a colour that nobody could see that it is one', async () => {
    await section(d, 'colours');
    await d.waitFor(() => [...document.querySelectorAll('#colours .buys td')].some((c) => c.textContent.includes('✕ no')));
    assert.ok(await d.count('#colours .buys .not-seen') > 0);
    assert.match(await d.read('#colours .buys .key.unseen-step'), /nobody could see/);
  });
});

describe('sight for everybody', () => {
  it('passes the accessibility checks in both themes and stays within a phone', async () => {
    for (const scheme of ['light', 'dark']) {
      await d.scheme(scheme);
      assert.deepEqual(await d.unfit(), [], scheme);
    }
    await d.viewport(390, 844);
    await whole();
    const wide = await d.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(wide <= 0, `${wide} px stick out`);
    assert.deepEqual(d.complaints(), []);
  });
});
