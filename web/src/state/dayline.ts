// Days on a line: where a day lies on the ruler. Days are counted, never
// moments, so that no zone and no change of clocks moves a mark.

const DAY = 86_400_000;

/** The days since 1 January 1970 of a day as ISO 8601 has it. */
export function count(day: string): number {
  const [y = 0, m = 1, d = 1] = day.split('-').map(Number);
  return Date.UTC(y, m - 1, d) / DAY;
}

/** The day that many days after 1 January 1970. */
export const dayAt = (n: number) => new Date(n * DAY).toISOString().slice(0, 10);

export interface DayLine {
  /** First day, counted. */
  from: number;
  /** Days there are. */
  days: number;
  /** Width of a day, px. */
  wide: number;
  /** Where a day begins, px. */
  x: (day: string) => number;
  /** Where a day is over, px. */
  end: (day: string) => number;
}

/** A line from one day to another, both on it, so wide. What lies beyond is put at its ends. */
export function dayLine(from: string, to: string, width: number): DayLine {
  const first = count(from);
  const days = Math.max(1, count(to) - first + 1);
  const wide = width / days;
  const at = (n: number) => Math.min(days, Math.max(0, n)) * wide;
  return { from: first, days, wide, x: (day) => at(count(day) - first), end: (day) => at(count(day) - first + 1) };
}

export interface Tick {
  day: string;
  x: number;
}

/** The first of each month on a line. */
export function months(line: DayLine): Tick[] {
  return ticks(line, (day) => day.endsWith('-01'));
}

/** Every Monday on a line; 1 January 1970 was a Thursday. */
export function mondays(line: DayLine): Tick[] {
  return ticks(line, (_, n) => (n + 3) % 7 === 0);
}

function ticks(line: DayLine, wanted: (day: string, n: number) => boolean): Tick[] {
  return Array.from({ length: line.days }, (_, i) => line.from + i)
    .map((n) => ({ n, day: dayAt(n) }))
    .filter(({ day, n }) => wanted(day, n))
    .map(({ n, day }) => ({ day, x: (n - line.from) * line.wide }));
}
