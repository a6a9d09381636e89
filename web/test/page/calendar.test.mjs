// The calendar of the order on the page: days drawn and in words, holidays,
// closures, faults at their fields, delivery choices, today's day, the file.
import assert from 'node:assert/strict';
import { after, before, it } from 'node:test';
import { at, servePage } from './house.mjs';
import { catchFiles } from './saved.mjs';
import { ready, section } from './sheet.mjs';

let server;
let d;

before(async () => {
  server = await servePage();
  d = await at(server.address);
  await ready(d);
  await day(2027, 3, 1);
  await section(d, 'order');
  await section(d, 'calendar');
  await d.waitFor(() => document.querySelector('#calendar')?.scrollIntoView() ?? document.querySelector('#calendar'));
});
after(async () => {
  await d?.close();
  await server?.close();
});

/** From now on it is half past midnight of a day where the person is; the page sees it when it is looked at again. */
const day = (...ymd) => d.evaluate((y, m, n) => {
  globalThis.RealDate ??= Date;
  const now = [y, m - 1, n, 0, 30];
  globalThis.Date = class extends globalThis.RealDate {
    constructor(...a) {
      if (a.length === 0) super(...now);
      else super(...a);
    }
    static now() {
      return new globalThis.RealDate(...now).getTime();
    }
  };
  document.dispatchEvent(new Event('visibilitychange'));
}, ...ymd);

const says = (words) => d.waitForText(words, '#calendar .says');
const settled = () => d.waitFor(() => document.querySelector('#calendar') && !document.querySelector('#calendar .behind'));

/** Puts a value into the n-th field that a label finds within the calendar. */
const put = (label, value, n = 0) => d.waitFor((l, v, i) => {
  const el = [...document.querySelectorAll('#calendar input, #calendar select')].filter((e) => e.labels?.[0]?.querySelector('.field-label')?.textContent === l || e.labels?.[0]?.textContent === l)[i];
  if (!el) return false;
  el.scrollIntoView({ block: 'center' });
  el.focus();
  el.value = v;
  el.dispatchEvent(new Event(el.matches('select') ? 'change' : 'input', { bubbles: true }));
  el.blur();
  return true;
}, label, value, n);

const unfold = () => d.evaluate(() => document.querySelectorAll('#calendar details').forEach((e) => { e.open = true; }));
const rows = () => d.evaluate(() => Object.fromEntries([...document.querySelectorAll('#calendar .days-table tbody tr')].map((r) => [r.cells[0].textContent.replace(/,.*/, ''), [...r.cells].slice(1).map((c) => c.textContent)])));

// By a paper calendar: 1 March 2027 is a Monday; five days here, then six and
// fifteen of a maker who rests on Sundays, then six, three and one here.
it('without a launch day counts forward from today', async () => {
  await says('All is ready on Wed 14 Apr 2027; with 5 working days kept free, launch from Wed 21 Apr 2027.');
  assert.equal(await d.count('#calendar .cal-ruler rect.falls'), 6);
  assert.equal(await d.count('#calendar .cal-ruler .launch'), 0);
});

it('from a launch day back gives the latest days, holidays left out', async () => {
  await put('launch day', '2027-05-14');
  await says('Drawing can wait 16 working days, until Tue 23 Mar 2027 at the latest.');
  await unfold();
  await put('public holidays of', 'GB');
  await says('Drawing can wait 14 working days, until Fri 19 Mar 2027 at the latest.');
  const all = await rows();
  assert.deepEqual(all.Slack.slice(1, 2), ['Fri 7 to Thu 13 May 2027']);
  assert.deepEqual(all.Listing.slice(0, 2), ['Tue 13 Apr 2027', 'Thu 6 May 2027']);
  assert.equal(all.Drawing[1], 'Fri 19 to Thu 25 Mar 2027', 'over before Good Friday');
  const hatched = await d.evaluate(() => [...document.querySelectorAll('#calendar .cal-ruler .lane:first-of-type .free title')].map((t) => t.textContent));
  assert.ok(hatched.includes('Good Friday: Fri 26 Mar 2027') && hatched.includes('Easter Monday: Mon 29 Mar 2027'), String(hatched));
  assert.match(await d.read('#calendar .cal-ruler .mark.launch'), /launch, Fri 14 May/);
  await d.click('#calendar .holiday-days label', 'Good Friday');
  await says('Drawing can wait 15 working days');
});

it('a fault stands at its field with what was typed, and the days before it stay', async () => {
  await put('to', '2027-01-05', 0);
  await d.waitForText('before they begin', '#calendar .day-row .complaint');
  await says('1 field of the calendar to look at');
  assert.equal(await d.evaluate(() => document.querySelectorAll('#calendar .day-row input[type=date]')[1].value), '2027-01-05');
  assert.ok((await d.count('#calendar .cal-ruler rect.falls')) > 0);
  await put('to', '2027-10-09', 0);
  await says('Drawing can wait 15 working days');
  assert.equal(await d.count('#calendar .complaint'), 0);
});

it('a closure that the days run into and that is not put in is named and put in', async () => {
  await put('launch day', '2027-11-15');
  await d.waitForText('launch, Mon 15 Nov', '#calendar .cal-ruler');
  await settled();
  await d.click('#calendar .day-row button', 'Take out week from 1 October');
  await d.waitForText('Not in the list, and within these days: week from 1 October, Fri 1 Oct to Thu 7 Oct 2027', '#calendar .missing-closures');
  await d.click('#calendar .missing-closures button', 'Put them in');
  await d.waitFor(() => !document.querySelector('#calendar .missing-closures'));
  assert.match(await d.evaluate(() => document.querySelector('#calendar .cal-ruler').textContent), /week from 1 October/);
  await put('launch day', '2027-05-14');
  await says('Drawing can wait 15 working days');
});

it('says which delivery choice still makes the day and what it saves; taken, it is the order’s', async () => {
  assert.match(await d.read('#calendar .cal-ways p'), /^Patient still makes Fri 14 May 2027 and saves EUR\s\d+\.\d\d against rush\.$/);
  await d.click('#calendar .cal-ways label', 'patient');
  await d.waitFor(() => /30 working days/.test(document.querySelector('#calendar .cal-ruler')?.textContent));
  await settled();
  assert.equal(await d.evaluate(() => [...document.querySelectorAll('#order select')].find((e) => e.labels[0]?.textContent.startsWith('delivery')).value), 'patient');
  assert.equal((await d.read('#calendar .fixed-days')), '30 days by “patient” in the price list');
});

it('today moves the position, and a step in hand leaves those before it out', async () => {
  const before = Number(/can wait (\d+)/.exec(await d.read('#calendar .says'))[1]);
  await day(2027, 3, 2);
  await says(`Drawing can wait ${before - 1} working day`);
  assert.match(await d.read('#calendar .cal-ruler .mark.today'), /today, Tue 2 Mar/);
  await put('in hand today', 'proof');
  await says('Proof rounds can wait');
  assert.equal((await rows()).Drawing[0], 'over');
  await settled();
  assert.equal(await d.count('#calendar .cal-ruler rect.falls'), 5);
});

it('is handed over as a calendar file of whole days', async () => {
  await catchFiles(d);
  await settled();
  await d.click('#calendar button', 'Save as a calendar file');
  const file = await d.waitFor(async () => {
    const f = globalThis.saved.find((x) => x.name.endsWith('-calendar.ics'));
    return f && { type: f.blob.type, text: await f.blob.text() };
  });
  assert.equal(file.type, 'text/calendar');
  // RFC 5545 sections 3.1, 3.6 and 3.8.2: content lines, one calendar, whole days, an end that is the day after.
  assert.match(file.text, /^BEGIN:VCALENDAR\r\n[^]*END:VCALENDAR\r\n$/);
  assert.ok(file.text.split('\r\n').every((l) => Buffer.byteLength(l) <= 75));
  const events = file.text.replace(/\r\n /g, '').split('BEGIN:VEVENT').slice(1);
  assert.equal(events.length, 7, 'five steps left, the days kept free, the launch');
  const launch = events.find((e) => /SUMMARY:.*launch/.test(e));
  assert.match(launch, /DTSTART;VALUE=DATE:20270514\r\n/);
  assert.match(launch, /DTEND;VALUE=DATE:20270515\r\n/);
  assert.match(launch, /DTSTAMP:20270302T000000Z/);
});

it('what is set can be undone, and comes back', async () => {
  await d.evaluate(() => document.activeElement?.blur());
  await d.press('Control+z');
  await says('Drawing can wait');
  await d.press('Control+y');
  await says('Proof rounds can wait');
});

it('on a phone is a list that can be read, and breaks no rule of accessibility', async () => {
  await d.viewport(390, 844);
  await d.waitFor(() => document.querySelector('#calendar .days-list') && !document.querySelector('#calendar .cal-ruler'));
  const items = await d.evaluate(() => [...document.querySelectorAll('#calendar .days-list li')].map((l) => l.textContent.trim()));
  assert.equal(items[0], 'Today, Tue 2 Mar 2027');
  assert.match(items[1], /^Proof rounds 6 working days.*2027.*At the latest .*to spare/);
  assert.equal(items.at(-1), 'Launch, Fri 14 May 2027');
  assert.equal(await d.evaluate(() => document.documentElement.scrollWidth > innerWidth), false);
  assert.deepEqual(await d.unfit(), []);
  assert.deepEqual(d.complaints(), []);
});
