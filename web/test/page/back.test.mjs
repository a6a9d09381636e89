// The back: posts moved by hand, how the pin hangs, what holds it, and what must be heeded.
import assert from 'node:assert/strict';
import { after, before, describe, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { ready, section } from './sheet.mjs';

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address);
  await d.viewport(1280, 900);
  await d.open(server.address);
  await ready(d);
  await section(d, 'back');
  await d.click('button.tool', 'Turn over');
  await d.waitFor(() => document.querySelectorAll('.post-handle').length === 2);
});
after(async () => {
  await d?.close();
  await server?.close();
});

/** The places of the posts as they are called out, from the left and the top, mm. */
const places = () => d.evaluate(() => [...document.querySelectorAll('#back .places tbody tr')].map((r) => [1, 2].map((i) => Number.parseFloat(r.children[i].textContent))));
const handle = (i) => d.evaluate((n) => {
  const r = document.querySelector(`.post-handle[aria-label^='post ${n}']`).getBoundingClientRect();
  return { x: r.x + r.width / 2, y: r.y + r.height / 2 };
}, i);

describe('a post', () => {
  it('dragged down moves there, is said to be worse, and one undo puts it back', async () => {
    const [was] = await places();
    const from = await handle(1);
    await d.drag(from.x, from.y, from.x, from.y + 60);
    await d.waitForText('Placed by hand, worse', '#back');
    await d.waitForText('placed by hand', '#back > summary');
    await ready(d);
    const [now] = await places();
    assert.ok(now[1] > was[1] + 2, `${was} to ${now}`);
    assert.ok(Math.abs(now[0] - was[0]) < 1);
    assert.match(await d.read('#back'), /not level/);
    await d.click('button', 'Undo');
    await d.waitFor(() => !document.querySelector('#back .by-hand'));
    await ready(d);
    assert.deepEqual((await places())[0], was);
  });

  it('moved by the arrow keys goes half a millimetre a step', async () => {
    const [was] = await places();
    await d.evaluate(() => document.querySelector('.post-handle[aria-label^="post 1"]').focus());
    for (let i = 0; i < 4; i++) await d.press('ArrowLeft');
    await d.waitFor((x) => Math.abs(Number.parseFloat(document.querySelector('#back .places tbody td').textContent) - (x - 2)) < 0.3, was[0]);
    await ready(d);
    await d.click('#back button', 'Take the tool’s own places');
    await d.waitFor((x) => Math.abs(Number.parseFloat(document.querySelector('#back .places tbody td').textContent) - x) < 0.01, was[0]);
  });
});

describe('the back', () => {
  it('says how the pin hangs, as ranges, and follows what is known of the cloth', async () => {
    const says = await d.read('#back');
    assert.match(says, /leans forward by (up to |\d+ to )\d+°/);
    await d.evaluate(() => [...document.querySelectorAll('#back .why')].find((w) => /constants/.test(w.textContent)).setAttribute('open', ''));
    await d.type('#back .range-grid .range-field:nth-child(3) input', '0.05');
    await d.waitForText('it can go either way', '#back');
    await d.click('#back .why button', 'Back to the usual figures');
    await d.waitFor(() => !/it can go either way/.test(document.querySelector('#back').textContent));
  });

  it('can be held by something else, with its own room', async () => {
    await d.click('#back label', 'pin bar');
    await d.waitForText('cannot turn, and nothing comes off', '#back');
    await d.waitFor(() => document.querySelector('.fastened rect'));
    await d.click('#back label', 'magnet');
    await d.waitForText('dangerous when swallowed', '#back .cautions');
    await d.click('#back label', 'post and clutch');
    await d.waitFor(() => document.querySelectorAll('.post-handle').length === 2);
  });

  it('takes lettering where it is clear of edges and pads', async () => {
    await ready(d);
    const bare = await d.evaluate(() => document.querySelector('.flipper .rear canvas').toDataURL().length);
    await d.type('#back .back-lettering input', 'SKERRY LIGHT');
    await d.waitForText('clear of the edge and of the pads', '#back');
    await d.waitFor((x) => document.querySelector('.flipper .rear canvas').toDataURL().length !== x, bare);
    await d.waitForText('Stamp on the back, once', '#order');
    await d.type('#back .stamp-sizes input', '1 mm');
    await d.waitForText('too low to be read', '#back');
    await d.waitFor(() => document.querySelector('.unheld'));
    for (let i = 0; i < 2; i++) await d.click('button', 'Undo');
    await d.waitFor(() => !document.querySelector('#back .stamp-sizes, .unheld'));
  });

  it('takes the artist’s own mark from a picture, tells what of it is too narrow, and lets it go', async () => {
    await ready(d);
    const look = () => d.evaluate(() => document.querySelector('.flipper .rear canvas').toDataURL());
    const bring = (svg) => d.evaluate((text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], 'mark.svg', { type: 'image/svg+xml' }));
      document.querySelector('.back-mark').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    }, svg);
    const bare = await look();
    await bring('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 40"><rect width="40" height="40" fill="#fff"/></svg>');
    await d.waitForText('Nothing stands out', '.back-mark [role=alert]');
    await bring('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 40"><path d="M4 36V4h10v22h22v10z"/><path d="M25 4v16" stroke="#000" stroke-width="2"/></svg>');
    await d.waitForText('A mark 6 mm high, cut in, clear of the edge and of the pads', '#back');
    await d.waitFor((x) => document.querySelector('.flipper .rear canvas').toDataURL() !== x, bare);
    await d.waitForText('Stamp on the back, once', '#order');
    await d.type('#back .mark-sizes input', '2 mm');
    await d.waitForText('narrower than 0.2 mm and may fill in or be lost', '#back');
    await d.waitFor(() => document.querySelector('.unheld'));
    await d.click('#back .back-mark button', 'Take your mark away');
    await d.waitFor(() => !document.querySelector('#back .back-mark canvas, .unheld'));
    await d.click('button', 'Undo');
    await d.waitFor(() => document.querySelector('#back .back-mark canvas'));
    for (let i = 0; i < 2; i++) await d.click('button', 'Undo');
    await d.waitFor(() => !document.querySelector('#back .back-mark canvas'));
  });

  it('cautions by those it is meant for, and leaves the last word to the law', async () => {
    await d.waitForText('The loose clutch always fits the small-parts cylinder', '#back .cautions');
    await d.click('#back label', 'under 3 too');
    await d.waitForText('Do not offer it for children under three', '#back .cautions');
    assert.match(await d.read('#back .cautions'), /law of the place of sale/);
    await d.click('#back label', 'grown-ups');
  });

  it('fits every axe of accessibility', async () => {
    assert.deepEqual(await d.unfit(), []);
  });
});
