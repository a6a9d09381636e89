// What is made is kept: through killed tabs, in two tabs, in a file, and where the
// browser keeps nothing.
import assert from 'node:assert/strict';
import { after, before, it } from 'node:test';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { tab } from '../driver/puppet.mjs';
import { chromium } from '../driver/chromium.mjs';
import { at, drawings, root, SCREENS, servePage } from './house.mjs';
import { bring } from './pin.mjs';
import { catchFiles } from './saved.mjs';
import { pick, ready, section } from './sheet.mjs';

/** How often a tab is killed; fifty times in the long tests. */
const KILLS = Number(process.env.BADGEWRIGHT_KILLS ?? 5);
/** What was made this long before a tab dies must be there again, ms. */
const LOST_AT_MOST = 1000;

const SEED = Number(process.env.SEED ?? Date.now() % 1e6);
let state = SEED;
/** Numerical Recipes' linear congruential generator (chapter 7.1): plenty for moments. */
const random = () => (state = (state * 1664525 + 1013904223) % 2 ** 32) / 2 ** 32;

const buoy = Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 600" width="600" height="600">
<circle cx="300" cy="300" r="250" fill="#2f5d7c" stroke="#16181d" stroke-width="18"/>
<circle cx="300" cy="330" r="90" fill="#c8402f" stroke="#16181d" stroke-width="18"/></svg>`);

const NAME = '.title-block .name input';
let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address, () => chromium({ keeps: true }));
  await ready(d);
});
after(async () => {
  await d?.browser.close();
  await server?.close();
});

/** Opens the page in another tab of the same browser. */
async function another() {
  const t = await tab(d.browser, { keeps: true });
  await t.open(server.address);
  return t;
}

async function kill(t) {
  const session = await t.page.createCDPSession();
  session.send('Page.crash').catch(() => {});
  await new Promise((done) => t.page.once('error', done));
  await t.page.close().catch(() => {});
}

const wait = (ms) => new Promise((done) => setTimeout(done, ms));
const kept = (t) => t.waitFor(() => document.querySelector('.keep-open'));

it('the example alone is not kept', async () => {
  await kept(d);
  await wait(600);
  assert.equal(await d.evaluate(() => localStorage.getItem('badgewright.kept')), null);
});

it(`a tab killed at any moment loses at most the last second (${KILLS} times, seed ${SEED})`, async () => {
  await bring(d, buoy, 'Buoy');
  await pick(d, 2);
  await ready(d);
  let n = 0;
  for (let i = 0; i < KILLS; i++) {
    const made = [];
    const until = Date.now() + 300 + 1500 * random();
    while (Date.now() < until || made.length === 0) {
      await d.type(NAME, `Pin ${++n}`);
      made.push({ n, at: Date.now() });
      await wait(200 * random());
    }
    const died = Date.now();
    await kill(d);
    d = await another();
    await d.waitFor((s) => /^(Pin|Buoy)/.test(document.querySelector(s)?.value), NAME);
    const got = Number((await d.read(NAME)).slice(4)) || 0; // 0 for Buoy, and for the example where nothing was to be kept yet
    const safe = made.findLast((m) => m.at <= died - LOST_AT_MOST)?.n ?? 0;
    assert.ok(got >= safe && got <= n, `seed ${SEED}, kill ${i}: ${got} is there, ${safe} had been made a second before, ${n} in all`);
    if (got > 0) assert.ok(await d.count(`.tools button[aria-label="Undo: Named Pin ${got}"]`), 'with its undo history');
    n = got;
  }
  await ready(d);
  assert.match(await d.read('.title-block'), /2 enamels/);
  // Typing leaves the field focused, where Control+Z is its own.
  const back = Math.min(n, 3);
  for (let i = 0; i < back; i++) await d.click('.tools button', 'Undo: Named');
  await d.waitFor((s, want) => document.querySelector(s)?.value === want, NAME, n > back ? `Pin ${n - back}` : 'Buoy');
  await d.type(NAME, 'Anchor');
  await wait(LOST_AT_MOST);
});

it('two tabs do not write over each other', async () => {
  const b = await another();
  await b.waitForText('open in another tab', '.keep-note');
  await ready(b);
  await b.type(NAME, 'Second tab');
  await wait(500);
  await b.click('.keep-note button', 'Go on here');
  await b.waitFor((s) => !document.querySelector('.keep-note') && document.querySelector(s)?.value === 'Anchor', NAME);
  await d.page.bringToFront();
  await d.waitForText('open in another tab', '.keep-note');
  await b.type(NAME, 'From b');
  await d.type(NAME, 'From a');
  await d.click('.keep-note button', 'Open a copy');
  await d.waitFor(() => !document.querySelector('.keep-note'));
  await d.click('.keep-open');
  await d.waitFor(() => document.querySelectorAll('.projects li').length === 3);
  const names = await d.evaluate(() => [...document.querySelectorAll('.projects input')].map((i) => i.value).sort());
  // The second tab's own change was not thrown away when it went on with what was kept.
  assert.deepEqual(names, ['From a, copy', 'From b', 'Second tab, copy']);
  await b.page.close();
  await d.page.bringToFront();
});

it('the list of projects fits everybody, and what is put away comes back', async () => {
  for (const { w, h, scheme } of SCREENS) {
    await d.viewport(w, h);
    await d.scheme(scheme);
    assert.deepEqual(await d.unfit(), [], `${w} ${scheme}`);
  }
  await d.viewport(1280, 900);
  await d.click('.projects button', 'Copy From b');
  await d.waitFor(() => document.querySelector('.projects button[aria-label="Put From b, copy away"]'));
  await d.click('.projects button', 'Put From b, copy away');
  await d.waitForText('is put away', '.keeping');
  assert.equal(await d.count('.projects li'), 3);
  await d.click('.keeping button', 'put it back');
  await d.waitFor(() => document.querySelectorAll('.projects li').length === 4);
  await d.waitFor(() => document.querySelectorAll('.project-thumb img').length === 4);
  // By name and not by place: the list still moves while its pictures come.
  await d.evaluate(() => [...document.querySelectorAll('.projects button')].find((b) => (b.getAttribute('aria-label') ?? b.textContent).includes('Open From b, copy')).click());
  await d.waitFor((s) => document.querySelector(s)?.value === 'From b', NAME);
});

const file = (t, name) => t.waitFor(async (want) => {
  const got = globalThis.saved.find((f) => f.name === want);
  if (!got) return undefined;
  globalThis.saved = [];
  return [...new Uint8Array(await got.blob.arrayBuffer())];
}, name);

async function saved(t, name) {
  await t.click('.keep-open');
  await t.click('.keeping button', 'Save to a file');
  const bytes = Buffer.from(await file(t, name));
  await t.press('Escape');
  return bytes;
}

/** Counts a flawed piece and photographs it. */
async function photograph(t) {
  await section(t, 'parcel');
  await t.click('#parcel button', 'A parcel has come');
  await t.click('#parcel .target.second');
  await t.click('#parcel .flaw', 'scratches');
  await t.choose('#parcel .photo-door input', readFileSync(join(drawings, 'lighthouse-white.jpg')), 'scratch.jpg');
  await t.waitForText('Photograph the flawed one (1)', '#parcel .photo-door');
  await t.click('#parcel .count-acts button', 'That was all');
}

/** The width of the picture that the letter to the maker shows, px. */
async function photographed(t) {
  await section(t, 'parcel');
  await t.click('#parcel button', 'Write to the maker');
  return t.waitFor(() => document.querySelector('#parcel .claim-photos img')?.naturalWidth);
}

async function openAgain(t) {
  await wait(LOST_AT_MOST);
  await t.open(server.address);
  await ready(t);
}

it('a project goes through a file and back, pictures too, and a broken file changes nothing', async () => {
  await ready(d);
  await photograph(d);
  const wide = await photographed(d);
  await openAgain(d);
  assert.equal(await photographed(d), wide, 'the picture is there when the page is opened again');
  await catchFiles(d);
  const first = await saved(d, 'From b.badgewright');
  assert.ok(first.includes('pictures/picture-1.jpg'));
  await d.click('.keep-open');
  await d.click('.keeping button', 'New project');
  await d.waitFor((s) => document.querySelector(s)?.value === 'Skerry Light', NAME);
  await d.dropBytes(first.subarray(0, first.length - 100), 'From b.badgewright');
  await d.waitForText('cut short', '.note');
  assert.equal(await d.read(NAME), 'Skerry Light');
  await d.dropBytes(first, 'From b.badgewright');
  await d.waitFor((s) => document.querySelector(s)?.value === 'From b', NAME);
  await ready(d);
  await openAgain(d);
  assert.equal(await photographed(d), wide, 'and when it came with the file');
  await catchFiles(d);
  const second = await saved(d, 'From b.badgewright');
  assert.ok(first.equals(second), `${first.length} and ${second.length} bytes`);
  await d.dropBytes(readFileSync(join(root, 'testdata/saves/version-1.badgewright')), 'old.badgewright');
  await d.waitForText('saved by an earlier badgewright', '.note');
  await ready(d);
  assert.match(await d.read('#drawing'), /version 1: lighthouse\.svg.*version 2: tower-lines\.png/);
});

it('where the browser keeps nothing, the page says so and offers the file', async () => {
  const t = await tab(d.browser, { keeps: true });
  await t.page.evaluateOnNewDocument(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
    localStorage.removeItem('badgewright.kept');
  });
  await t.open(server.address);
  await ready(t);
  await kept(t);
  await t.type(NAME, 'Unkept');
  await t.waitForText('no room left for what you make', '.keep-note');
  await catchFiles(t);
  await t.click('.keep-note button', 'Save to a file');
  assert.equal(Buffer.from(await file(t, 'Unkept.badgewright')).subarray(0, 2).toString(), 'PK');
  await t.page.close();
});
