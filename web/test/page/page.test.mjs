// The page as a person meets it: first screen, opening, counts, sizes, trouble
// spots, undo, the back; and that nothing leaves the device.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, beforeEach, describe, it } from 'node:test';
import { at, drawings, servePage } from './house.mjs';
import { counted, findings, pick, ready, section, sizeOf } from './sheet.mjs';

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

describe('the first screen', () => {
  it('shows the demo struck, with its twin, its callouts and what it costs', async () => {
    assert.match(await d.read('.title-block'), /Skerry Light|each/i);
    assert.match(await d.read('.title-block'), /about EUR [\d.]+/);
    assert.match(await d.read('.title-block'), /invented prices/);
    const [w, h] = await d.evaluate(() => {
      const c = document.querySelector('.flipper .front canvas');
      return [c.width, c.height];
    });
    assert.ok(w > 200 && h > 200, `the pin is drawn at ${w} x ${h}`);
    assert.ok((await d.evaluate(inkOf, '.flipper .front canvas')) > 0.2, 'the pin is drawn');
    assert.ok((await d.evaluate(inkOf, '.twin canvas')) > 0.1, 'the twin is drawn');
    assert.ok((await d.count('.flags li')) > 0 || /hold/.test(await d.read('.title-block .verdict')));
    assert.match(await d.read('body'), /Stays on this device/);
    for (const door of ['Choose drawing', 'Paste', 'Photograph']) assert.ok((await d.read('.doors')).includes(door));
  });

  it('asks nothing of anybody but its own origin', async () => {
    const origin = new URL(server.address).origin;
    const foreign = d.requests().filter((r) => !r.startsWith(origin) && !r.startsWith(`blob:${origin}`) && !r.startsWith('data:'));
    assert.deepEqual(foreign, []);
    assert.deepEqual(d.complaints(), []);
  });
});

describe('opening a drawing', () => {
  it('by dropping it shows that drawing', async () => {
    await d.drop(join(drawings, 'buoy.png'));
    await d.waitFor(() => /buoy/i.test(document.querySelector('.title-block .name input')?.value ?? ''));
    await ready(d);
    assert.match(await d.read('#drawing'), /buoy\.png/);
  });

  it('that cannot be opened says so and leaves what was open', async () => {
    const name = await d.read('.title-block .name input');
    await d.dropBytes(Buffer.from('%PDF-1.7 no picture'), 'pin.pdf');
    await d.waitForText('PDF', '.note');
    assert.match(await d.read('.note'), /SVG|PNG/);
    assert.equal(await d.read('.title-block .name input'), name);
    assert.ok((await d.evaluate(inkOf, '.flipper .front canvas')) > 0.2, 'the pin is still there');
  });

  it('again by undo gives the drawing before', async () => {
    const before = await d.read('.title-block .name input');
    await d.drop(join(drawings, 'buoy.png'));
    await d.waitFor((b) => document.querySelector('.title-block .name input')?.value !== b, before);
    await ready(d);
    await d.click('button', 'Undo');
    await d.waitFor((b) => document.querySelector('.title-block .name input')?.value === b, before);
  });
});

describe('the count of colours', () => {
  it('gives that many enamels, and undo gives back the count before', async () => {
    const before = await counted(d);
    await pick(d, 3);
    await d.waitFor(() => document.querySelector('.title-block')?.textContent.includes('3 enamels'));
    await ready(d);
    assert.equal(await counted(d), 3);
    await d.press('Control+z');
    await d.waitFor((n) => document.querySelector('.title-block')?.textContent.includes(`${n} enamels`), before);
  });

  it('never moves the picture: the pin keeps its place and size', async () => {
    const box = () => d.evaluate(() => {
      const r = document.querySelector('.flipper .front .pin').getBoundingClientRect();
      return [r.x, r.y, r.width, r.height].map(Math.round);
    });
    const before = await box();
    await pick(d, 2);
    await d.waitFor(() => document.querySelector('.title-block')?.textContent.includes('2 enamels'));
    await ready(d);
    assert.deepEqual(await box(), before);
  });

  it('says what each colour buys', async () => {
    await section(d, 'colours');
    await d.waitForText('What each colour buys', '#colours');
    const rows = await d.evaluate(() => [...document.querySelectorAll('#colours table tbody tr')].map((r) => [...r.cells].map((c) => c.textContent.trim())));
    assert.ok(rows.length >= 6, `${rows.length} rows`);
    const mean = rows.map((r) => Number(r[2]));
    assert.ok(mean.every((v, i) => i === 0 || v <= mean[i - 1] + 1e-9), `loss falls: ${mean}`);
    const all = rows.map((r) => Number(r[5].replace(/[^\d.]/g, '')));
    assert.ok(all.every((v, i) => i === 0 || v >= all[i - 1]), `price rises: ${all}`);
  });
});

describe('the size', () => {
  it('typed in the dimension line becomes the size, in mm and inches', async () => {
    await ready(d);
    await d.click('.dim-label.h button');
    await d.type('.dim-label.h input', '48');
    await d.waitFor(() => /\b48\smm/.test(document.querySelector('.title-block')?.textContent ?? ''));
    await ready(d);
    const { h } = await sizeOf(d);
    assert.ok(Math.abs(h - 48) < 0.051, `${h} mm high`);
    assert.match(await d.read('.title-block'), /1\.89\sin/);
  });

  it('typed in inches is taken as inches', async () => {
    await d.click('.dim-label.w button');
    await d.type('.dim-label.w input', '1.5 in');
    await d.waitFor(() => /38\.1\s×/.test(document.querySelector('.title-block')?.textContent ?? ''));
  });

  it('dragged by an arrowhead becomes another, and one undo takes it back', async () => {
    const before = await sizeOf(d);
    const grip = await d.evaluate(() => {
      const r = document.querySelectorAll('.grip.w')[1].getBoundingClientRect();
      return { x: r.x + r.width / 2, y: r.y + r.height / 2 };
    });
    await d.drag(grip.x, grip.y, grip.x + 60, grip.y);
    await d.waitFor((w) => Math.abs(Number(/([\d.]+)\s×/.exec(document.querySelector('.title-block').textContent)?.[1]) - w) > 1, before.w);
    await ready(d);
    assert.ok((await sizeOf(d)).w > before.w + 1);
    await d.click('button', 'Undo');
    await d.waitFor((w) => Math.abs(Number(/([\d.]+)\s×/.exec(document.querySelector('.title-block').textContent)?.[1]) - w) < 0.06, before.w);
  });

  it('changes the trouble spots: fewer on a larger pin', async () => {
    await d.click('.dim-label.h button');
    await d.type('.dim-label.h input', '18');
    await d.waitFor(() => /\b18\smm/.test(document.querySelector('.title-block')?.textContent ?? ''));
    await ready(d);
    const small = await findings(d);
    await d.click('.dim-label.h button');
    await d.type('.dim-label.h input', '90');
    await d.waitFor(() => /\b90\smm/.test(document.querySelector('.title-block')?.textContent ?? ''));
    await ready(d);
    const large = await findings(d);
    assert.ok(small > large, `${small} at 18 mm, ${large} at 90 mm`);
  });
});

describe('true size', () => {
  for (const scale of [1, 2, 1.25]) {
    it(`of the twin is right at ${scale} device pixels to the pixel`, async () => {
      // A checked screen: 5 device px to the mm, kept under its size in device px.
      await d.viewport(1280, 900, scale);
      await d.open(server.address);
      await ready(d);
      await d.evaluate(() => {
        const key = `${Math.round(screen.width * devicePixelRatio)}x${Math.round(screen.height * devicePixelRatio)}`;
        localStorage.setItem('badgewright.true-size', JSON.stringify({ [key]: 5 }));
      });
      await d.open(server.address);
      await ready(d);
      const { rule, sure } = await d.evaluate(() => {
        const path = document.querySelector('.twin .rule path').getBoundingClientRect();
        return { rule: path.width * devicePixelRatio, sure: document.querySelector('.twin figcaption').textContent };
      });
      assert.match(sure, /checked/);
      assert.ok(Math.abs(rule - 50) < 1.5, `10 mm are ${rule} device px; 50 at 5 to the mm`);
      await d.evaluate(() => localStorage.clear());
    });
  }

  it('on a phone takes the place of the large pin when asked for, as true as elsewhere', async () => {
    await d.viewport(390, 844, 2);
    await d.open(server.address);
    await d.waitFor(() => document.querySelector('.twin .fold'));
    await ready(d);
    const seen = () => d.evaluate(() => document.querySelector('.twin .rule')?.checkVisibility() ?? false);
    const large = await d.evaluate(() => document.querySelector('.flipper .front canvas').getBoundingClientRect().width);
    assert.ok(large > 240, `the large pin has the sheet to itself: ${large} px`);
    assert.equal(await seen(), false);
    await d.click('.twin .fold', 'At true size');
    await d.waitFor(() => document.querySelector('.twin.open'));
    const { rule, pin, w } = await d.evaluate(() => ({
      rule: document.querySelector('.twin .rule path').getBoundingClientRect().width,
      pin: document.querySelector('.twin canvas').getBoundingClientRect().width,
      w: Number(/([\d.]+)\s×/.exec(document.querySelector('.title-block').textContent)[1]),
    }));
    const mm = (pin / rule) * 10;
    assert.ok(mm > w && mm < 1.2 * w, `the picture of ${mm} mm holds a pin of ${w} mm and its shadow`);
    assert.match(await d.read('.twin figcaption'), /guess/);
    await d.click('.twin .fold', 'Back to the large one');
    await d.waitFor(() => !document.querySelector('.twin.open'));
    assert.equal(await seen(), false);
  });

  it('is called a guess before any check', async () => {
    await d.evaluate(() => localStorage.clear());
    await d.open(server.address);
    await ready(d);
    assert.match(await d.read('.twin figcaption'), /guess/);
  });
});

describe('trouble spots', () => {
  it('are walked from flag to card to the next', async () => {
    await d.click('.dim-label.h button');
    await d.type('.dim-label.h input', '16');
    await d.waitFor(() => /\b16\smm/.test(document.querySelector('.title-block')?.textContent ?? ''));
    await ready(d);
    assert.ok((await d.count('.flags li')) >= 2);
    await d.evaluate(() => document.querySelector('.flags li button').click());
    await d.waitFor(() => document.querySelector('[role=dialog] .verdict-line'));
    const first = await d.evaluate(() => document.querySelector('[role=dialog]').getAttribute('aria-label') + document.querySelector('.popover').textContent);
    assert.match(first, /mm/);
    await d.click('.popover button', 'Next');
    await d.waitFor((t) => document.querySelector('.popover') && document.querySelector('[role=dialog]').getAttribute('aria-label') + document.querySelector('.popover').textContent !== t, first);
    await d.press('Escape');
    await d.waitFor(() => !document.querySelector('[role=dialog]'));
  });

  it('go when the limits are eased, and come back by undo', async () => {
    await d.click('.dim-label.h button');
    await d.type('.dim-label.h input', '20');
    await d.waitFor(() => /\b20\smm/.test(document.querySelector('.title-block')?.textContent ?? ''));
    await ready(d);
    const many = await findings(d);
    await section(d, 'metal');
    await d.evaluate(() => document.querySelector('#metal details.more').setAttribute('open', ''));
    for (const nth of [1, 2, 3, 4]) {
      await d.type(`#metal .limit-grid > :nth-child(${nth}) input`, '0.05');
      await ready(d);
    }
    await d.waitFor((n) => document.querySelectorAll('.flags li').length < n, many);
  });
});

describe('the pin', () => {
  it('turned over shows its posts, mirrored, and turns back', async () => {
    await d.click('button.tool', 'Turn over');
    await d.waitFor(() => document.querySelector('.flipper.turned .rear canvas')?.width > 100 && document.querySelectorAll('.post-labels li').length >= 1);
    assert.match(await d.read('.post-labels'), /mm from left/);
    await d.click('button.tool', 'Front');
    await d.waitFor(() => !document.querySelector('.flipper.turned'));
  });

  it('held shows the drawing as brought', async () => {
    await d.evaluate(() => document.querySelector('.pin-touch').focus());
    await d.page.keyboard.down(' ');
    await d.waitFor(() => document.querySelector('.brought.seen canvas'));
    await d.page.keyboard.up(' ');
    await d.waitFor(() => !document.querySelector('.brought.seen'));
  });

  it('touched opens what can be done with that colour; a role set there holds', async () => {
    const at = await d.evaluate(() => {
      const r = document.querySelector('.pin-touch').getBoundingClientRect();
      return { x: r.x + r.width * 0.5, y: r.y + r.height * 0.62 };
    });
    await d.raw.clickAt(at.x, at.y);
    await d.waitFor(() => document.querySelector('.popover .choice'));
    const before = await d.evaluate(() => document.querySelectorAll('#colours .swatch.cutout').length);
    await d.evaluate(() => document.querySelector('.popover .choice input[value=cutout]').click());
    await d.waitFor((n) => document.querySelectorAll('#colours .swatch.cutout').length > n, before);
    await d.press('Control+z');
    await d.waitFor((n) => document.querySelectorAll('#colours .swatch.cutout').length === n, before);
  });
});

describe('a crash of the engine', () => {
  it('loses nothing: the next wish is answered', async () => {
    await d.page.workers()[0].evaluate(() => globalThis.badgewrightCall('hello')).catch(() => {});
    const name = await d.read('.title-block .name input');
    await d.click('.dim-label.h button');
    await d.type('.dim-label.h input', '44');
    await d.waitFor(() => /\b44\smm/.test(document.querySelector('.title-block')?.textContent ?? ''));
    assert.equal(await d.read('.title-block .name input'), name);
  });
});

/** Share of a canvas that is not clear, looked at on a coarse grid. */
function inkOf(selector) {
  const c = document.querySelector(selector);
  const { data } = c.getContext('2d').getImageData(0, 0, c.width, c.height);
  let n = 0;
  let all = 0;
  for (let i = 3; i < data.length; i += 4 * 97) {
    all++;
    if (data[i] > 40) n++;
  }
  return n / all;
}

describe('the colour that goes next', () => {
  it('is said, marked on the pin, and held apart when told', async () => {
    await section(d, 'colours');
    await d.waitForText('One enamel fewer', '#colours .goes');
    const said = await d.read('#colours .goes p');
    await d.click('#colours .goes button', 'Show where');
    await d.waitFor(() => document.querySelector('.pin.lost canvas')?.width > 100);
    assert.ok((await d.evaluate(inkOf, '.pin.lost canvas')) > 0.003, 'something is marked');
    await d.click('#colours .goes button', 'Hide where');
    await d.waitFor(() => !document.querySelector('.pin.lost'));
    await d.click('#colours .goes button', 'Keep these two apart');
    await d.waitFor((was) => { const now = document.querySelector('#colours .goes p')?.textContent.trim(); return now && now !== was; }, said);
    await d.press('Control+z');
    await d.waitForText(said.slice(-40), '#colours .goes');
  });
});
