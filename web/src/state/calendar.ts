// The calendar of the order: how it is set, and the days that come of it. Today
// is no part of what is set; it goes along with every question.
import { batch, computed, effect, signal, untracked } from '@preact/signals';
import type { Calendar, Days, DaySpan, Fault, OrderStep, OrderUsual, PricedOrder, Project, Schedule, Workdays } from '../engine/wire.gen';
import { itemsOf } from './items';
import { atHand, faultOf, sentenceOf } from './desk';
import { drawingOf, priceListOf } from './project';
import { saveFile } from './save';
import * as s from './store';
import { dayOf, leftOfDay } from './today';

/** Which end of the order: where the person works, or the maker. */
export type End = 'here' | 'maker';

/** Closures are put in from this year to so many years later. */
const YEARS_AHEAD = 1;

/** Days a maker rests in the week: many work on Saturdays (common practice, no published source). */
const MAKER_WEEKEND = [7];

/** Go writes an empty list that was never made as null. */
const list = <T>(v: T[] | null | undefined): T[] => v ?? [];

const ready = (w: Workdays): Workdays => ({ ...w, weekend: list(w.weekend), off: list(w.off), worked: list(w.worked) });

/** The calendar as the person has set it, if they have. */
export function setOf(p: Project): Schedule | undefined {
  const set = p.plans?.calendar;
  return set && { ...set, here: ready(set.here), maker: ready(set.maker), steps: list(set.steps), ways: list(set.ways) };
}

/** What a calendar starts from: usual steps, and the closures that are not over yet. */
export function startOf(u: OrderUsual, today: string): Schedule {
  return {
    today: '', launch: '', start: '',
    here: { country: '', weekend: list(u.weekend), off: [], worked: [] },
    maker: { country: '', weekend: MAKER_WEEKEND, off: list(u.closures.spans).filter((c) => c.to >= today), worked: [] },
    steps: list(u.steps), slack: u.slack, doing: '', done: 0, ways: [], way: -1, currency: '', minorDigits: 0, lunarYear: true,
  };
}

export function withSchedule(p: Project, calendar: Schedule): Project {
  return { ...p, plans: { ...p.plans, calendar: { ...calendar, today: '', ways: [], way: -1 } } };
}

export function withStep(set: Schedule, key: string, change: Partial<OrderStep>): Schedule {
  return { ...set, steps: set.steps.map((st) => (st.key === key ? { ...st, ...change } : st)) };
}

/** The next step is in hand. */
export function doneWith(set: Schedule): Schedule {
  const next = set.steps[set.steps.findIndex((st) => st.key === set.doing) + 1];
  return next ? { ...set, doing: next.key, done: 0 } : set;
}

export function withWork(set: Schedule, end: End, change: (w: Workdays) => Partial<Workdays>): Schedule {
  return { ...set, [end]: { ...set[end], ...change(set[end]) } };
}

/** A day is worked though it would be free, or no longer. */
export function withWorked(w: Workdays, day: string, on: boolean): Partial<Workdays> {
  const others = w.worked.filter((d) => d !== day);
  return { worked: on ? [...others, day].sort() : others };
}

/** Days off in the order of their days; those that have none yet stand last. */
export function withOff(w: Workdays, more: readonly DaySpan[]): Partial<Workdays> {
  return { off: [...w.off, ...more].sort((a, b) => (a.from || '~').localeCompare(b.from || '~')) };
}

export const today = signal(dayOf(new Date()));
/** The calendar is in view: what nobody looks at is not reckoned. */
export const inView = signal(false);

interface Found {
  project: Project;
  day: string;
  answer?: Days;
  /** Why there is no answer. */
  problem?: string;
}

const usual = signal<{ key: string; answer: OrderUsual } | undefined>(undefined);
const found = signal<Found | undefined>(undefined);
/** The last answer with days: it stays while a field has a fault. */
const last = signal<Days | undefined>(undefined);

export const start = computed(() => usual.value?.answer);

/** How the calendar is set now: by the person, or as it starts. */
export const schedule = computed<Schedule | undefined>(() => {
  const p = s.asked.value;
  const u = usual.value;
  return p && (setOf(p) ?? (u && startOf(u.answer, today.value)));
});

export interface Shown {
  calendar: Calendar | undefined;
  /** The schedule with what the price list fills in. */
  filled: Schedule | undefined;
  faults: readonly Fault[];
  /** Why nothing is said of prices. */
  unpriced: string;
  problem: string;
  /** What is shown is of an earlier wish. */
  late: boolean;
}

export const shown = computed<Shown>(() => {
  const f = found.value;
  return {
    calendar: last.value?.calendar,
    filled: last.value?.schedule,
    faults: list(f?.answer?.faults),
    unpriced: f?.answer?.unpriced ?? '',
    problem: f?.problem ?? '',
    late: f?.project !== s.asked.value || f?.day !== today.value || !f?.answer?.calendar,
  };
});

/** One change of the calendar, as a step that can be undone. */
export function change(make: (set: Schedule) => Schedule, what: string): void {
  const u = usual.value;
  s.change((p) => {
    const set = setOf(p) ?? (u && startOf(u.answer, today.value));
    return set ? withSchedule(p, make(set)) : p;
  }, what);
}

/** The order with its prices, where the list has delivery choices to hold against each other. */
async function pricedOf(p: Project): Promise<PricedOrder | undefined> {
  const prices = priceListOf(p);
  if (!prices || prices.delivery.choices.length === 0) return undefined;
  const got = await itemsOf(p);
  return got && { list: prices, order: got.order };
}

const overtaken = (err: unknown) => ['superseded', 'stopped'].includes((err as { kind?: string } | undefined)?.kind ?? '');

async function askUsual(day: string, countries: string[], key: string): Promise<void> {
  const year = Number(day.slice(0, 4));
  try {
    const got = await atHand.value?.call('orderusual', { from: year, to: year + YEARS_AHEAD, countries }, { lane: 'calendar usual' });
    if (got) usual.value = { key, answer: got.answer };
  } catch (err) {
    if (!overtaken(err)) found.value = { ...(found.value ?? { project: s.asked.value as Project, day }), problem: sentenceOf(err) };
  }
}

async function askDays(p: Project, set: Schedule, day: string): Promise<void> {
  const base = { project: p, day };
  try {
    // What cannot be priced has days all the same.
    const priced = await pricedOf(p).catch(() => undefined);
    const got = await atHand.value?.call('days', { schedule: { ...set, today: day }, ...(priced ? { priced } : {}) }, { lane: 'calendar days' });
    if (!got || s.asked.value !== p) return;
    batch(() => {
      found.value = { ...base, answer: got.answer };
      if (got.answer.calendar) last.value = got.answer;
    });
  } catch (err) {
    if (!overtaken(err) && s.asked.value === p) found.value = { ...base, problem: sentenceOf(err) };
  }
}

/** Keeps today today: past midnight, and when the page is looked at again. */
export function followToday(): () => void {
  let timer: ReturnType<typeof setTimeout>;
  const look = () => {
    const now = new Date();
    today.value = dayOf(now);
    clearTimeout(timer);
    timer = setTimeout(look, leftOfDay(now));
  };
  look();
  document.addEventListener('visibilitychange', look);
  return () => {
    clearTimeout(timer);
    document.removeEventListener('visibilitychange', look);
  };
}

const countriesOf = (set: Schedule | undefined) => [...new Set([set?.here.country, set?.maker.country].filter((c): c is string => Boolean(c)))];

/** Keeps the days up with the project while they are in view. */
export function followCalendar(): () => void {
  return effect(() => {
    const p = s.asked.value;
    const day = today.value;
    if (!p || !inView.value || s.dragged.value || !atHand.value || !drawingOf(p, s.at.value)) return;
    const countries = countriesOf(setOf(p));
    const key = `${day.slice(0, 4)} ${countries.join(' ')}`;
    const set = schedule.value;
    const have = usual.value?.key === key;
    untracked(() => {
      if (!have) void askUsual(day, countries, key);
      if (set && (found.value?.project !== p || found.value.day !== day)) void askDays(p, set, day);
    });
  });
}

/** Hands the calendar over as a file that calendars read. */
export async function saveCalendar(): Promise<void> {
  const filled = shown.value.filled;
  if (!filled) return;
  try {
    const got = await atHand.value?.call('ics', { name: s.design.value?.name ?? '', schedule: filled });
    const wrong = got?.answer.faults[0];
    if (wrong) s.tell(wrong.what);
    else if (got?.bytes) saveFile(new Blob([new Uint8Array(got.bytes)], { type: got.answer.type }), got.answer.fileName);
  } catch (err) {
    const f = faultOf(err);
    s.tell(f.what, f.do);
  }
}
