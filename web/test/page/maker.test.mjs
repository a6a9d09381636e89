// A maker's colour list on the page: brought, refused, held against the
// colours, taken with or without its colour, and undone.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, beforeEach, describe, it } from 'node:test';
import { at, root, servePage } from './house.mjs';
import { ready, section } from './sheet.mjs';

const lists = join(root, 'testdata/colourlists');
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
  await section(d, 'colours');
  await d.evaluate(() => (document.querySelector('.maker-list').open = true));
});

describe('a maker’s colour list', () => {
  it('chosen as a file gives each enamel its nearest code, and asks nothing outside', async () => {
    await choose('skerry.csv');
    await rows();
    const enamels = await d.count('#colours .flat-list .swatch.enamel');
    assert.equal(await d.count('.code-row'), enamels);
    assert.match(await d.read('.maker-list summary'), /Skerry Light enamels/);
    assert.match(await d.read('.code-row .tag-code'), /^SL-\d\d$/);
    assert.match(await d.read('.code-row .code-far'), /same|hard to tell|close|clearly different|another colour/);
    const origin = new URL(server.address).origin;
    assert.deepEqual(d.requests().filter((r) => !r.startsWith(origin) && !r.startsWith(`blob:${origin}`) && !r.startsWith('data:')), []);
  });

  it('dropped anywhere on the page is taken for a list, not for a drawing', async () => {
    const name = await d.read('.title-block .name input');
    await d.drop(join(lists, 'skerry-lab.csv'));
    await rows();
    assert.match(await d.read('.list-news'), /24 colours read/);
    assert.equal(await d.read('.title-block .name input'), name);
  });

  it('with mistakes names each by line and keeps the good lines', async () => {
    await choose('nasty.csv');
    await d.waitForText('11 colours read, 11 lines left out', '.list-news');
    await d.evaluate(() => (document.querySelector('.list-news details').open = true));
    const faults = await d.evaluate(() => [...document.querySelectorAll('.line-faults li')].map((l) => l.textContent));
    assert.equal(faults.length, 13);
    assert.match(faults[0], /^line 5, hex.*#c4332.*Write #/);
    assert.match(faults[3], /line 10, code.*SL-01.*line 3/);
  });

  it('that cannot be read leaves the one in use', async () => {
    await choose('skerry.csv');
    await rows();
    await choose('no-colours.csv');
    await d.waitForText('stays in use', '.list-news');
    assert.match(await d.read('.list-news'), /code,name,hex/);
    assert.match(await d.read('.maker-list summary'), /Skerry Light enamels/);
    assert.ok((await d.count('.code-row')) > 2);
  });

  it('asks for the white where a list does not say', async () => {
    await choose('no-white.csv');
    await d.click('.list-news button', 'D50');
    await rows();
    assert.match(await d.read('.list-news'), /3 colours read/);
  });

  it('pasted is read as well, and keys in its field undo nothing on the sheet', async () => {
    await d.click('.maker-list button', 'Paste rows');
    await d.evaluate(() => document.querySelector('.paste-rows textarea').focus());
    await d.raw.keys('code;name;hex\nSL-1;Sea;#2a6a9a');
    await d.press('Control+z');
    await d.evaluate((text) => {
      const field = document.querySelector('.paste-rows textarea');
      field.value = text;
      field.dispatchEvent(new Event('input', { bubbles: true }));
    }, 'code\thex\nSL-1\t#2a6a9a\nSL-2\t#f2c040');
    await d.click('.paste-rows button', 'Read');
    await d.waitForText('2 colours read', '.list-news');
    await d.waitFor(() => document.querySelector('.one-code'));
    assert.match(await d.read('.one-code'), /fall on SL-\d: made so, they are one and the same enamel/);
    assert.match(await d.read('.one-code'), /too few/);
  });
});

describe('the list in use', () => {
  for (const [scheme, w, h] of [['light', 390, 844], ['dark', 1440, 900]]) {
    it(`fits everybody, ${scheme}, ${w} px wide`, async () => {
      await d.scheme(scheme);
      await d.viewport(w, h);
      await choose('nasty.csv');
      await rows();
      await take(1, 'Code and colour');
      await d.evaluate(() => {
        for (const el of document.querySelectorAll('.maker-list details')) el.open = true;
      });
      assert.deepEqual(await d.unfit(), []);
      const over = await d.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(over <= 0, `${over} px stick out sideways`);
    });
  }
});

describe('a code', () => {
  beforeEach(async () => {
    await choose('skerry.csv');
    await rows();
  });

  it('written alone stands in the callouts and leaves the colour; undo takes it off', async () => {
    const colour = await swatch();
    const code = await take(0, 'Code only');
    await d.waitFor((c) => [...document.querySelectorAll('.callouts .flat-code')].some((e) => e.textContent === c), code);
    assert.equal(await swatch(), colour);
    await d.press('Control+z');
    await d.waitFor(() => !document.querySelector('.callouts .flat-code') && !document.querySelector('.code-row.taken'));
  });

  it('with its colour recolours the pin; a colour given by hand wins it back and the code stays', async () => {
    const colour = await swatch();
    await take(0, 'Code and colour');
    await d.waitFor((c) => document.querySelector('#colours .flat-list .swatch').style.backgroundColor !== c, colour);
    assert.match(await d.read('.code-row .code-far'), /in its colour/);
    await d.click('#colours .flat-list button');
    await d.waitFor(() => document.querySelector('.popover input[type=color]'));
    assert.match(await d.read('.popover'), /Ordered as SL-\d\d/);
    await d.evaluate(() => {
      const field = document.querySelector('.popover input[type=color]');
      field.value = '#123456';
      field.dispatchEvent(new Event('change', { bubbles: true }));
    });
    await d.waitFor(() => document.querySelector('#colours .flat-list .swatch').style.backgroundColor === 'rgb(18, 52, 86)');
    assert.ok(await d.count('#colours .flat-list .flat-code'));
  });

  it('typed is found in the list, and one that is not there is said', async () => {
    await d.evaluate(() => (document.querySelector('.code-row').open = true));
    await d.type('.code-row .other-code input', 'nowhere');
    await d.waitForText('This list has no nowhere', '.code-row .other-code');
    await d.type('.code-row .other-code input', 'sl-32');
    await d.waitFor(() => document.querySelector('.code-row.taken .tag-code')?.textContent === 'SL-32');
  });

  it('a flat that is renamed shows its name in callouts and beside its code', async () => {
    await d.click('#colours .flat-list button');
    await d.type('.popover .card-body > .text-field input', 'tower red');
    await d.waitFor(() => [...document.querySelectorAll('.callouts .flat-name')].some((e) => e.textContent.startsWith('tower red')));
    await d.waitFor(() => [...document.querySelectorAll('.code-row .flat-name')].some((e) => e.textContent === 'tower red'));
  });
});

const rows = () => d.waitFor(() => document.querySelectorAll('.code-row').length > 1);

const swatch = () => d.evaluate(() => document.querySelector('#colours .flat-list .swatch').style.backgroundColor);

/** Takes the nearest code of the nth colour, and returns it. */
async function take(nth, how) {
  await d.evaluate((n, h) => {
    const row = document.querySelectorAll('.code-row')[n];
    row.open = true;
    [...row.querySelectorAll('.candidate button')].find((b) => b.textContent.startsWith(h)).click();
  }, nth, how);
  await d.waitFor((n) => document.querySelectorAll('.code-row')[n].classList.contains('taken'), nth);
  await ready(d);
  return d.evaluate((n) => document.querySelectorAll('.code-row')[n].querySelector('.tag-code').textContent, nth);
}

function choose(name) {
  return d.evaluate((base64, n) => {
    const data = new DataTransfer();
    data.items.add(new File([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))], n, { type: 'text/csv' }));
    const input = document.querySelector('.maker-list input[type=file]');
    input.files = data.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  }, readFileSync(join(lists, name)).toString('base64'), name);
}
