// A parcel on a narrow phone and on a desk: counted by thumb and by keys, taken
// back, photographed, judged, claimed; a look at some; what is left of it.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, it } from 'node:test';
import { at, drawings, servePage } from './house.mjs';
import { ready, section } from './sheet.mjs';

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address);
  await d.viewport(360, 740);
  await ready(d);
  await section(d, 'parcel');
});
after(async () => {
  await d?.close();
  await server?.close();
});

const until = (text, selector) => d.waitForText(text, `#parcel ${selector}`);

it('a thumb counts, names a fault and takes a slip back, and nothing moves under it', async () => {
  await d.click('#parcel button', 'A parcel has come');
  await d.waitFor(() => document.querySelector('#parcel .target.first') && document.activeElement?.matches('.counting'));
  const place = () => d.evaluate(() => {
    const [box, act] = ['.counting', '.count-acts button'].map((s) => document.querySelector(`#parcel ${s}`).getBoundingClientRect());
    return Math.round(act.top - box.top);
  });
  const still = await place();
  assert.ok((await d.evaluate(() => document.querySelector('#parcel .target.first').getBoundingClientRect().width)) > 250, 'the target for sound ones spans the hand');
  for (let i = 0; i < 4; i++) await d.click('#parcel .target.first');
  await until('4 of 100 counted: 4 sound, 0 seconds, 0 rejects', '.count-now');
  await d.click('#parcel .target.second');
  assert.equal(await place(), still);
  await d.click('#parcel .flaw', 'dust');
  await d.click('#parcel .target.reject');
  await d.click('#parcel .flaw', 'sharp edge');
  await until('6 of 100 counted: 4 sound, 1 second, 1 reject', '.count-now');
  await until('A sharp edge cuts', '.counting');
  await until('Not to tell yet: 2 of 6 flawed so far', '.counting');
  await d.click('#parcel .target.second');
  await d.click('#parcel .count-acts button', 'Take back');
  await until('6 of 100 counted: 4 sound, 1 second, 1 reject', '.count-now');
  assert.equal(await place(), still);
  assert.equal(await d.evaluate(() => document.documentElement.scrollWidth > innerWidth), false, 'nothing is wider than the phone');
});

it('the stage gives way while one counts', async () => {
  await d.click('#parcel .target.first');
  const stage = () => d.evaluate(() => getComputedStyle(document.querySelector('.stage')).position);
  assert.equal(await stage(), 'relative');
});

it('a flawed piece is photographed; the claim has the counts and the picture', async () => {
  await d.click('#parcel .target.second');
  await d.click('#parcel .flaw', 'scratches');
  const file = d.fileIn(join(drawings, 'lighthouse-white.jpg'), 'scratch.jpg');
  await d.evaluate(({ base64, name, type }) => {
    const data = new DataTransfer();
    data.items.add(new File([Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))], name, { type }));
    const input = document.querySelector('#parcel .photo-door input');
    input.files = data.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  }, file);
  await until('Photograph the flawed one (1)', '.photo-door');
  await d.click('#parcel .count-acts button', 'That was all');
  await until('8 of 100 ordered (92 short), 5 firsts, 2 seconds, 1 reject', '.tally-rows');
  await until('3 more than agreed: 3 of 8 flawed; 10 percent of 8 admits 0', '.counting');
  await d.click('#parcel button', 'Write to the maker');
  await until('make good the 3 pieces past the share agreed and the 92 pieces missing', '.claim-text');
  await until('1. Skerry Light: scratches (second)', '.claim-photos');
  await d.waitFor(() => document.querySelector('#parcel .claim-photos img')?.naturalWidth > 100);
});

it('on a desk the keys count; what they counted is one step of the project', async () => {
  await d.viewport(1440, 900);
  await d.click('#parcel .count-now');
  await d.evaluate(() => document.querySelector('#parcel .counting').focus());
  for (const key of ['1', '1', '2', 'a', '3', 'Escape', 'Backspace']) await d.press(key);
  await until('11 of 100 counted: 7 sound, 3 seconds, 1 reject', '.count-now');
  await d.waitFor(() => document.querySelector('.tool[title="Undo: Counted 3 pieces"]'));
  await d.click('.tool[title="Undo: Counted 3 pieces"]');
  await until('8 of 100 counted: 5 sound, 2 seconds, 1 reject', '.count-now');
});

it('a look at some is answered exactly, and the tables follow their arrows', async () => {
  await until('At most 11 of the 60 can still be bad, all of them among the 48 not looked at', '.look-some');
  await d.type('#parcel .look-some .sentence .in-line:nth-of-type(2) input', '60');
  await until('All were looked at: 0 are bad.', '.look-some');
  await d.evaluate(() => document.querySelectorAll('#parcel .look-some details').forEach((e) => { e.open = true; }));
  await d.type('#parcel .look-some .order-fields input', '50');
  await until('Look at 5 of the 50 pieces, picked blindly.', '.look-some');
  await until('Letter D; an arrow in the table leads to letter C', '.look-some');
});

const entered = () => d.evaluate(() => document.querySelector('#parcel .stock tbody tr')?.textContent);

it('the book says what is left, refuses what is not there, and says when to order again', async () => {
  await until('5 firsts left; none went to buyers lately', '.ledger > .answer');
  await d.type('#parcel .enter-move input', '6');
  await until('5 firsts of Skerry Light are left, so 6 cannot be sold.', '.enter-move .complaint');
  assert.equal(await entered(), 'Skerry Light5500000', 'the book is as it was');
  await d.type('#parcel .enter-move input', '2');
  await until('3 firsts left; it is too early for a pace', '.ledger > .answer');
  // It came four weeks ago.
  await d.evaluate(() => {
    const came = [...document.querySelectorAll('#parcel input[type=date]')].find((i) => i.labels[0].textContent.includes('Came on'));
    const day = new Date(Date.now() - 27 * 24 * 3600 * 1000);
    came.value = [day.getFullYear(), day.getMonth() + 1, day.getDate()].map((n) => String(n).padStart(2, '0')).join('-');
    came.dispatchEvent(new Event('change', { bubbles: true }));
  });
  await until('3 firsts left; at 0.5 a week, order again now', '.ledger > .answer');
  assert.equal(await entered(), 'Skerry Light3520000');
  await d.click('#parcel .ledger button', 'again on its die');
  await d.waitFor(() => document.querySelector('.tool[title="Undo: Skerry Light ordered again"]'));
  await until('62 percent firsts of 8 looked at', '.ledger .notes');
  assert.deepEqual(await d.unfit(), []);
  assert.deepEqual(d.complaints(), []);
});
