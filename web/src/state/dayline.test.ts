import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { count, dayAt, dayLine, mondays, months } from './dayline';

const own = process.env.TZ;
afterAll(() => {
  if (own === undefined) delete process.env.TZ;
  else process.env.TZ = own;
});

/** ISO 8601 weekdays by Python's isocalendar and GNU date, which agree. */
const WEEKDAYS = readFileSync(new URL('../../../testdata/reference/iso_week_dates.csv', import.meta.url), 'utf8').trim().split('\n').slice(1).map((l) => l.split(','));

describe('days on a line', () => {
  it.each(['UTC', 'Pacific/Kiritimati', 'Etc/GMT+12', 'America/Santiago'])('lie the same in %s', (zone) => {
    process.env.TZ = zone;
    expect(count('1970-01-01')).toBe(0);
    expect(count('2027-03-01') - count('2027-02-28')).toBe(1);
    expect(count('2028-03-01') - count('2028-02-28')).toBe(2);
    for (let n = count('2026-12-01'); n < count('2028-04-01'); n++) expect(count(dayAt(n))).toBe(n);
    const line = dayLine('2027-03-01', '2027-04-04', 350);
    expect([line.days, line.wide, line.x('2027-03-01'), line.end('2027-04-04')]).toEqual([35, 10, 0, 350]);
    expect(line.x('2027-03-29')).toBe(280);
    expect([line.x('2026-01-01'), line.end('2029-01-01')]).toEqual([0, 350]);
  });

  it('have months and Mondays in their places', () => {
    const line = dayLine('2027-03-01', '2027-05-16', 770);
    expect(months(line)).toEqual([{ day: '2027-03-01', x: 0 }, { day: '2027-04-01', x: 310 }, { day: '2027-05-01', x: 610 }]);
    expect(mondays(line)).toHaveLength(11);
    expect(mondays(line)[1]).toEqual({ day: '2027-03-08', x: 70 });
  });

  it('know their Mondays by a published table', () => {
    for (const [day = '', , , weekday] of WEEKDAYS) {
      expect(mondays(dayLine(day, day, 1)).length, day).toBe(weekday === '1' ? 1 : 0);
    }
    expect(WEEKDAYS.length).toBeGreaterThan(10);
  });
});
