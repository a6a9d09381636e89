// Words of the calendar.
import type { Calendar, Country, DaySpan, Fault, FreeRun, Schedule, StepRow, Workdays } from '../engine/wire.gen';
import type { End } from '../state/calendar';
import { count } from '../state/dayline';
import { plural } from './words';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
/** From Monday, as ISO 8601 counts. */
export const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** "Sat 6 Feb 2027"; 1 January 1970 was a Thursday. */
export function dayWords(day: string): string {
  const n = count(day);
  if (!Number.isFinite(n)) return day;
  const [y, m, d] = day.split('-').map(Number);
  return `${WEEKDAYS[(((n + 3) % 7) + 7) % 7]} ${d} ${MONTHS[(m ?? 1) - 1]} ${y}`;
}

/** "Sat 6 Feb". */
export const shortDay = (day: string) => dayWords(day).replace(/ \d+$/, '');

/** A month on the ruler, with its year where it is the first or begins one. */
export function monthWords(day: string, first: boolean): string {
  const [y = '', m = '1'] = day.split('-');
  const name = MONTHS[Number(m) - 1] ?? '';
  return first || m === '01' ? `${name} ${y}` : name;
}

export const BY_WORDS = {
  here: 'your days',
  maker: 'maker’s days',
  every: 'every day',
} as const;

/** "6 of your working days"; short, for the ruler. */
export function lengthWords(r: Pick<StepRow, 'days' | 'by'>): string {
  return plural(r.days, r.by === 'every' ? 'day' : 'working day');
}

export const runWords = (r: FreeRun) => `${r.name}: ${r.from === r.to ? dayWords(r.from) : `${shortDay(r.from)} to ${dayWords(r.to)}`}`;

/** The calendar in a sentence. */
export function calendarSays(c: Calendar | undefined, faults: number, problem: string): string {
  if (problem) return problem;
  if (faults > 0) return `${plural(faults, 'field')} of the calendar to look at; the days below are those from before.`;
  return c ? c.position : 'Counting days …';
}

/** Whether the launch day is missed. */
export const missed = (c: Calendar | undefined, filled: Schedule | undefined) => Boolean(c && filled?.launch && !c.makes);

export const doingAt = (set: Schedule) => Math.max(0, set.steps.findIndex((st) => st.key === set.doing));

/** "Public holidays of 61 countries and parts of countries are known." */
export const coverage = (all: readonly Country[]) => `Public holidays of ${all.length} countries and parts of countries are known: ${all.map((c) => c.name).join('; ')}.`;

/** What is wrong at a field. */
export const faultOf = (faults: readonly Fault[], field: string) => faults.find((f) => f.field === field)?.what;

/** Where a delivery choice sets the days of making. */
export function wayMaking(filled: Schedule | undefined): string | undefined {
  const way = filled?.ways?.[filled.way];
  return way && way.making > 0 ? `${plural(way.making, 'day')} by “${way.name}” in the price list` : undefined;
}

export const spanWords = (s: DaySpan) => `${s.name || 'days off'}, ${s.to === '' || s.to === s.from ? dayWords(s.from) : `${shortDay(s.from)} to ${dayWords(s.to)}`}`;

export const WORK_WORDS = {
  here: {
    title: 'Your days', weekend: 'your weekend', none: 'none, or a country not in the list', span: 'away', spans: 'Your days off', off: 'time off', offs: 'times off', add: 'Add days off',
    unlisted: 'No public holidays are counted for you yet: choose where you work, or add them as days off.',
  },
  maker: {
    title: 'The maker’s days', weekend: 'the maker’s weekend', none: 'none, such as China or Taiwan', span: 'closed', spans: 'The maker’s closures', off: 'closure', offs: 'closures', add: 'Add a closure',
    unlisted: 'China and Taiwan have no list of holidays here: what their makers keep free stands below as closures, to be corrected by what yours says.',
  },
} as const;

/** "Sat and Sun free, holidays of France, 2 times off". */
export function workSays(end: End, w: Workdays, country: string): string {
  const free = WEEKDAYS.filter((_, i) => w.weekend.includes(i + 1));
  const weekend = free.length === 0 ? 'no weekend' : `${free.join(' and ')} free`;
  const off = w.off.length > 0 ? `, ${plural(w.off.length, WORK_WORDS[end].off, WORK_WORDS[end].offs)}` : '';
  return `${weekend}${country ? `, holidays of ${country}` : ', no public holidays'}${off}`;
}

/** "8 working days to spare". */
export function spareWords(spare: number): string {
  if (spare === 0) return 'nothing to spare';
  return spare > 0 ? `${plural(spare, 'working day')} to spare` : `${plural(-spare, 'working day')} late`;
}
