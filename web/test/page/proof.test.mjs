// A maker's proof held against the pin: found on its sheet, compared, decided,
// asked to be changed; the next round from a PDF; what is no proof.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, it } from 'node:test';
import { chromium } from '../driver/chromium.mjs';
import { at, drawings, servePage } from './house.mjs';
import { pdfOf, sheetOf } from './proofs.mjs';
import { catchFiles, savedFile } from './saved.mjs';
import { ready, section } from './sheet.mjs';

const lighthouse = join(drawings, 'lighthouse.png');
/** Blue of the drawing, and the lighter one that the maker took. */
const [BLUE, LIGHTER] = [[43, 95, 152], [57, 160, 208]];
const FIELD = '#proof .proof-bring input';

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address, () => chromium({ keeps: true }));
  await d.viewport(390, 844);
  await ready(d);
  await section(d, 'proof');
});
after(async () => {
  await d?.close();
  await server?.close();
});

const until = (text, selector = '') => d.waitForText(text, `#proof ${selector}`);
const compared = () => d.waitFor(() => document.querySelector('#proof .proof-over canvas')?.width > 100 && !document.querySelector('#proof .proof-work'));

it('what is no picture is refused in words, and nothing is kept', async () => {
  await d.choose(FIELD, Buffer.from('%PDF-1.7 and no more'), 'cut.pdf');
  await until('could not be read as a PDF', '.warn');
  await d.choose(FIELD, Buffer.from('no picture at all'), 'proof.png');
  await d.waitFor(() => /proof\.png|picture/.test(document.querySelector('#proof .warn')?.textContent ?? '') && !/PDF/.test(document.querySelector('#proof .warn').textContent));
  assert.equal(await d.count('#proof .proof-rounds li'), 0);
});

it('a turned sheet with words on it is found, and its one other colour told', async () => {
  await d.choose(FIELD, await sheetOf(lighthouse, BLUE, LIGHTER, { turn: 6 }), 'first.jpg');
  await until('one thing differs, to be changed', 'summary');
  await compared();
  await until('The pin lies well on this picture');
  assert.equal(await d.count('#proof .proof-list > li'), 1);
  await until('Other colour', '.proof-list');
  await until('brilliant blue', '.proof-list');
});

it('one is seen while the other is held; a flag walks to its place', async () => {
  const which = () => d.read('#proof .proof-which');
  assert.equal(await which(), 'the proof');
  await d.evaluate(() => document.querySelector('#proof .proof-over figcaption button').dispatchEvent(new PointerEvent('pointerdown', { bubbles: true })));
  await until('as you asked', '.proof-which');
  await d.evaluate(() => document.querySelector('#proof .proof-over figcaption button').dispatchEvent(new PointerEvent('pointerup', { bubbles: true })));
  await until('the proof', '.proof-which');
  await d.click('#proof .flags button', '1');
  await d.waitFor(() => document.querySelector('#proof .proof-zoom').style.transform.includes('scale'));
  await d.click('#proof button', 'Show all of it');
  await d.waitFor(() => document.querySelector('#proof .proof-zoom').style.transform === '');
});

it('what it states is held against what was asked; the request says both, with a marked picture', async () => {
  await d.type('#proof .proof-said .text-field:nth-of-type(2) input', '30');
  await until('2 things differ, all to be changed', 'summary');
  await until('Size as stated', '.proof-list');
  await compared();
  await d.click('#proof button', 'Write the request');
  await until('Please change these 2 things', '.claim-text');
  await until('30.0 mm', '.claim-text');
  await catchFiles(d);
  await d.click('#proof button', 'Save the marked picture');
  const file = await savedFile(d, 'proof-marked');
  assert.equal(file.type, 'image/png');
  assert.deepEqual([file.w, file.h], [1400, 1200]);
});

it('an accepted difference is not asked for, and can be undone', async () => {
  await d.click('#proof .proof-list > li:nth-child(1) label', 'accept it');
  await until('2 things differ, 1 to be changed', 'summary');
  await until('You decided otherwise since this was written', '.proof-letter');
  await d.press('Control+z');
  await until('2 things differ, all to be changed', 'summary');
});

it('the pin can be set on the sheet by hand, and is found by its edges from there', async () => {
  await d.click('#proof .choice label', 'the maker’s sheet');
  await d.waitFor(() => document.querySelectorAll('#proof .proof-handle').length === 3);
  await d.evaluate(() => document.querySelector('#proof .proof-handle').focus());
  await d.press('ArrowRight');
  await d.click('#proof button', 'Lay it by these points');
  await d.waitFor(() => !document.querySelector('#proof .proof-work') && [...document.querySelectorAll('#proof button')].some((b) => b.textContent === 'Let it be found again'));
  await until('2 things differ', 'summary');
  await d.click('#proof button', 'Let it be found again');
  await d.waitFor(() => !document.querySelector('#proof .proof-work') && ![...document.querySelectorAll('#proof button')].some((b) => b.textContent === 'Let it be found again'));
  await d.click('#proof .choice label', 'over each other');
  await compared();
});

it('fits a phone and passes the accessibility checks', async () => {
  await d.scheme('dark');
  assert.deepEqual(await d.unfit(), []);
  assert.equal(await d.evaluate(() => document.documentElement.scrollWidth > innerWidth), false);
});

it('a photograph of a finished pin is laid and compared apart from the proofs, and can be put away', async () => {
  await d.choose('#proof input[aria-label^="Photograph"]', await sheetOf(lighthouse, BLUE, LIGHTER, { turn: -4 }), 'finished.jpg');
  await until('Finished pin 1', 'summary');
  await d.waitFor(() => !document.querySelector('#proof .proof-work'));
  await d.click('#proof .choice label', 'the photograph');
  await d.click('#proof .choice label', 'white paper');
  await d.click('#proof .proof-frame', '');
  await d.waitFor(() => document.querySelector('#proof circle.white') && !document.querySelector('#proof .proof-work'));
  await d.click('#proof .proof-rounds button', 'Put away Finished pin 1');
  await until('Round 1', 'summary');
});

it('the next round, a page of a PDF, shows it as asked; the two rounds are held against each other', async () => {
  const sheet = await sheetOf(lighthouse, [1, 2, 3], [1, 2, 3]);
  await d.choose(FIELD, pdfOf(sheet, 1400, 1200, 66), 'second.pdf');
  await until('Round 2', 'summary');
  await until('shows what you asked for', 'summary');
  assert.equal(await d.read('#proof .section-body > label select'), '2', 'the first page is empty');
  await compared();
  await d.evaluate(() => {
    const beside = document.querySelector('#proof .proof-beside select');
    beside.value = beside.options[1].value;
    beside.dispatchEvent(new Event('change', { bubbles: true }));
  });
  await until('done', '.proof-pairs');
  assert.deepEqual(await d.complaints(), []);
});

it('opened again the page has the proofs as they were', async () => {
  await d.waitFor(() => localStorage.getItem('badgewright.kept'));
  await new Promise((done) => setTimeout(done, 1000));
  await d.open(d.page.url());
  await ready(d);
  await section(d, 'proof');
  await until('Round 2', 'summary');
  await compared();
  assert.equal(await d.count('#proof .warn'), 0, 'no picture is missed');
});
