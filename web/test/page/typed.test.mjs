// What is typed goes to the engine and comes back as it was meant; what it says
// of choices, of the drawing as brought and of the screen is shown.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, beforeEach, describe, it } from 'node:test';
import { chromium } from '../driver/chromium.mjs';
import { at, drawings, servePage } from './house.mjs';
import { pick, ready, section, sizeOf } from './sheet.mjs';

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

/** Amounts of money in a text, as numbers. */
const amounts = (text) => [...text.replace(/(\d)\s(?=\d{3})/g, '$1').matchAll(/EUR\s([\d.]+)/g)].map((m) => Number(m[1]));

const total = async () => amounts(await d.read('#order .quote tfoot'))[0];

describe('a length', () => {
  it('typed as a fraction of an inch is that size', async () => {
    await section(d, 'sight');
    await d.type('#sight .text-field input', '1 1/4 in');
    await d.waitFor(() => document.querySelector('#sight .text-field input').value === '31.75');
    await ready(d);
    const { w, h } = await sizeOf(d);
    assert.equal(Math.max(w, h), 31.8);
    assert.match(await d.read('.title-block'), /1\.25 in/);
  });

  it('typed in a dimension line sets that side, whatever the size is measured by', async () => {
    await d.click('.dim-label.w button');
    await d.type('.dim-label.w input', '1 1/4 in');
    await d.waitFor(() => !document.querySelector('.dim-label input'));
    await ready(d);
    assert.equal((await sizeOf(d)).w, 31.8);
  });

  it('that cannot be read is said at its field and kept there', async () => {
    const before = await d.read('.title-block');
    for (const [text, says] of [['big', '"big"'], ['1 mile', '"mile"'], ['900 mm', 'too large']]) {
      if (!(await d.count('.dim-label.h input'))) await d.click('.dim-label.h button');
      await d.type('.dim-label.h input', text);
      await d.waitForText(says, '.dim-label.h .complaint');
      assert.equal(await d.read('.dim-label.h input'), text);
    }
    await d.press('Escape');
    await d.waitFor(() => !document.querySelector('.dim-label input'));
    assert.equal(await d.read('.title-block'), before);
  });

  it('typed while the engine is busy is neither lost nor given to another field', async () => {
    await section(d, 'sight');
    await section(d, 'order');
    await pick(d, 2);
    await d.type('#sight .text-field input', '2 in');
    await d.type('#order .text-field input', '1 000');
    await pick(d, 3);
    await d.waitFor(() => document.querySelector('#sight .text-field input').value === '50.8' && document.querySelector('#order .text-field input').value === '1000');
    await ready(d);
    const block = await d.read('.title-block');
    assert.match(block, /3 enamels/);
    assert.match(block, /50\.8 mm/);
    assert.match(block, /1000 pins/);
    // Each was a step of its own, and was taken once.
    const step = () => d.evaluate(() => document.querySelector('button[aria-label^="Undo"]').getAttribute('aria-label'));
    const steps = [];
    for (let i = 0; i < 4; i++) {
      steps.push((await step()).replace('Undo: ', ''));
      await d.click('button', 'Undo');
      await d.waitFor((t) => !document.querySelector('button[aria-label^="Undo"]').getAttribute('aria-label').endsWith(t), steps[i]);
    }
    assert.deepEqual([...steps].sort(), ['1000 pins', '2 enamels', '3 enamels', 'Size 50.8 mm (2.00 in)']);
    assert.equal(await step(), 'Undo');
  });
});

describe('a price', () => {
  beforeEach(async () => {
    await section(d, 'order');
    await d.evaluate(() => document.querySelectorAll('#order details.more').forEach((e) => { e.open = true; }));
  });

  it('is read exactly, with its currency or without, and the rest is still called invented', async () => {
    const before = await total();
    await d.type('#order .limit-grid .text-field input', 'EUR 70,5');
    await d.waitFor(() => document.querySelector('#order .limit-grid .text-field input').value === '70.5');
    await ready(d);
    assert.ok(Math.abs((await total()) - before - 2.5) < 1e-9);
    assert.match(await d.read('#order .invented'), /Some of these figures are still invented/);
  });

  it('that can mean two things is asked about', async () => {
    await d.type('#order .limit-grid .text-field input', '1,250');
    await d.waitForText('two things', '#order .complaint');
  });
});

describe('the choices near at hand', () => {
  const rows = () => d.evaluate(() => [...document.querySelectorAll('#order .choices tbody tr')].map((r) => [...r.cells].map((c) => c.textContent.trim())));
  const change = (text) => (text === 'the same' ? 0 : amounts(text)[0] * (text.endsWith('less') ? -1 : 1));

  it('stand in a table, every number with its unit', async () => {
    await section(d, 'order');
    await d.waitFor(() => document.querySelectorAll('#order .choices tbody tr').length >= 7);
    assert.equal(await d.evaluate(() => document.querySelector('#order .choices').open), false, 'closed until it is wanted');
    await d.evaluate(() => document.querySelector('#order .choices summary').click());
    for (const [what, piece, all] of await rows()) {
      assert.match(what, /colour|mm (larger|smaller)|enamel|post|pieces|card/);
      for (const t of [piece, all]) assert.match(t, /^(the same|EUR\s[\d.\s]+ (more|less))$/, `${what}: ${t}`);
    }
  });

  it('cost what they said once they are made', async () => {
    await section(d, 'order');
    await d.waitFor(() => document.querySelectorAll('#order .choices tbody tr').length >= 7);
    const before = await total();
    const said = await rows();
    await pick(d, 5);
    await d.waitFor((t) => !document.querySelector('#order .quote tfoot').textContent.includes(t), before.toFixed(2));
    await ready(d);
    const fewer = said.find(([what]) => what === 'one colour fewer');
    assert.ok(Math.abs((await total()) - before - change(fewer[2])) < 1e-9, `${before} and ${fewer[2]} are not ${await total()}`);
  });
});

describe('the drawing as brought', () => {
  const seen = () => d.evaluate(() => {
    const c = document.querySelector('#drawing summary canvas');
    if (!c || c.width < 2) return undefined;
    const { data } = c.getContext('2d').getImageData(0, 0, c.width, c.height);
    return { w: c.width, h: c.height, says: c.getAttribute('aria-label'), chequered: Boolean(c.closest('.clear')), corner: data[3], middle: data[4 * (c.width * (c.height >> 1) + (c.width >> 1)) + 3] };
  });

  it('stands small beside its sentence, and what is clear is seen to be clear', async () => {
    await d.waitFor(() => document.querySelector('#drawing summary canvas')?.width > 2);
    const t = await seen();
    assert.equal(Math.max(t.w, t.h), 160);
    assert.match(t.says, /as brought, on a transparent background/);
    assert.deepEqual([t.chequered, t.corner, t.middle], [true, 0, 255]);
  });

  it('is that of the drawing on the sheet', async () => {
    await d.drop(join(drawings, 'lighthouse-white.jpg'));
    await d.waitFor(() => document.querySelector('#drawing summary canvas')?.getAttribute('aria-label')?.includes('paper') && document.querySelector('#drawing summary canvas').width > 2);
    const t = await seen();
    assert.deepEqual([t.chequered, t.corner], [false, 255]);
    await d.click('button', 'Undo');
    await d.waitFor(() => document.querySelector('#drawing summary canvas')?.getAttribute('aria-label')?.includes('transparent'));
  });
});

describe('the check against a card', () => {
  it('makes the twin as large as the card says, and is kept for this screen', async () => {
    await d.evaluate(() => localStorage.clear());
    await section(d, 'sight');
    await d.click('#sight button', 'bank card');
    await d.evaluate(() => {
      const range = document.querySelector('.card-check input[type=range]');
      range.value = '428'; // 5 CSS px to the mm on a card of 85.60 mm (ISO/IEC 7810 ID-1)
      range.dispatchEvent(new Event('input', { bubbles: true }));
    });
    await d.click('.card-check button', 'They match');
    await d.waitForText('checked here', '.twin figcaption');
    const rule = () => d.evaluate(() => document.querySelector('.twin .rule path').getBoundingClientRect().width);
    assert.ok(Math.abs((await rule()) - 50) < 1.5, `10 mm are ${await rule()} px`);
    await d.open(server.address);
    await ready(d);
    await d.waitForText('checked here', '.twin figcaption');
    assert.ok(Math.abs((await rule()) - 50) < 1.5);
    await d.evaluate(() => localStorage.clear());
  });

  // Page zoom changes what Chromium reports of the page, but not of the screen.
  for (const zoom of [1, 1.5, 0.5]) {
    it(`holds at a page zoom of ${100 * zoom} %`, async () => {
      const z = await at(server.address, () => chromium({ zoom }));
      try {
        await ready(z);
        await z.evaluate((k) => {
          const base = devicePixelRatio / k;
          localStorage.setItem('badgewright.true-size', JSON.stringify({ [`${screen.width * base}x${screen.height * base}@${base}`]: 5 }));
        }, zoom);
        await z.open(server.address);
        await ready(z);
        await z.waitForText('checked here', '.twin figcaption');
        const { rule, ratio } = await z.evaluate(() => ({ rule: document.querySelector('.twin .rule path').getBoundingClientRect().width, ratio: devicePixelRatio }));
        assert.ok(Math.abs(ratio - zoom) < 0.01, `the page is zoomed: ${ratio}`);
        assert.ok(Math.abs(rule * ratio - 50) < 1.5, `10 mm are ${rule * ratio} device px; 50 at 5 to the mm`);
      } finally {
        await z.close();
      }
    });
  }
});
