import { afterAll, describe, expect, it } from 'vitest';
import { dayOf, leftOfDay } from './today';

const own = process.env.TZ;
afterAll(() => {
  if (own === undefined) delete process.env.TZ;
  else process.env.TZ = own;
});

/** The farthest offsets there are, one of 45 minutes, clocks put forward at
 * midnight (Cairo, Santiago), and half an hour of summer (Lord Howe). */
const ZONES = ['UTC', 'Pacific/Kiritimati', 'Etc/GMT+12', 'Pacific/Chatham', 'Asia/Kathmandu', 'America/St_Johns', 'Africa/Cairo', 'America/Santiago', 'Australia/Lord_Howe', 'Europe/London', 'Asia/Shanghai'];

/** The day by the tables of ECMA-402, which read no local clock. */
function byIntl(timeZone: string): (moment: Date) => string {
  const format = new Intl.DateTimeFormat('en-GB', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit', calendar: 'gregory' });
  return (moment) => format.format(moment).split('/').reverse().join('-');
}

const HOUR = 3_600_000;
/** Four years in odd steps, so that every hour of the day comes up. */
const MOMENTS = Array.from({ length: 2500 }, (_, i) => new Date(Date.UTC(2026, 0, 1) + i * 14.25 * HOUR + (i % 7) * 61_001));

describe.each(ZONES)('in %s', (zone) => {
  it('today is the day on the wall, at every hour', () => {
    process.env.TZ = zone;
    const wall = byIntl(zone);
    expect(MOMENTS.filter((m) => dayOf(m) !== wall(m))).toEqual([]);
  });

  it('the day ends when the next begins, and not before', () => {
    process.env.TZ = zone;
    const wall = byIntl(zone);
    const after = (m: Date, ms: number) => wall(new Date(m.getTime() + ms));
    expect(MOMENTS.filter((m) => leftOfDay(m) <= 0 || after(m, leftOfDay(m) - 1) !== wall(m) || after(m, leftOfDay(m)) === wall(m))).toEqual([]);
  });
});

it('the zones tell the local day from that of UTC', () => {
  process.env.TZ = 'Pacific/Kiritimati';
  const noon = new Date(Date.UTC(2027, 1, 5, 12));
  expect(dayOf(noon)).toBe('2027-02-06');
  expect(noon.toISOString().slice(0, 10)).toBe('2027-02-05');
});
