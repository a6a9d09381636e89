// What is left after costs, how many to order, and what a pre-sale has to
// bring: asked of the order's program while their section is open. Each feeds
// the next: what a piece leaves is what the others reckon with.
import { computed, effect, signal, untracked } from '@preact/signals';
import type { Demand, GoalAsk, Guess, Left, OrderItems, OrderUsual, Presale, PresalePlan, PriceList, PricedOrder, Project, Promise as Promised, Schedule, Stake } from '../engine/wire.gen';
import { setOf, startOf } from './calendar';
import { itemsOf } from './items';
import { atHand, sentenceOf } from './desk';
import { designOf, priceListOf, type Place } from './project';
import { guessOf, leftPlan, presaleOf, stakeOf } from './sellingPlan';
import * as s from './store';
import { dayOf } from './today';

/** An answer, and the project it was asked for; or why there is none. */
export interface Answered<T> {
  project: Project;
  got?: T;
  problem?: string;
}

export const usual = signal<OrderUsual | undefined>(undefined);
export const left = signal<Answered<Left> | undefined>(undefined);
export const demand = signal<Answered<Demand> | undefined>(undefined);
export const presale = signal<Answered<Presale> | undefined>(undefined);
export const promise = signal<Answered<Promised> | undefined>(undefined);
/** Weight of the pin on the sheet, in grams; 0 while it is not known. */
export const pinGrams = signal(0);

/** The plan on the page: what was stated, or the proposal. */
export const plan = computed(() => (s.asked.value && usual.value ? leftPlan(s.asked.value, usual.value.selling, s.at.value) : undefined));

const overtaken = (err: unknown) => typeof err === 'object' && err !== null && 'kind' in err && (err.kind === 'superseded' || err.kind === 'stopped');

/** The items of the design on the sheet: one for each version, in their order. */
export function itemsAt(items: OrderItems, p: Project, at: Place): number[] {
  const versions = designOf(p, at)?.versions ?? [];
  return versions.map((_, v) => items.places.findIndex((o) => o.design === at.design && o.version === v));
}

export async function learn(): Promise<OrderUsual | undefined> {
  const year = Number(dayOf(new Date()).slice(0, 4));
  usual.value ??= (await atHand.value?.call('orderusual', { from: year, to: year + 1, countries: [] }))?.answer;
  return usual.value;
}

/** One question; its answer, its problem, or nothing where a newer one overtook it. */
async function answering<T>(into: { value: Answered<T> | undefined }, p: Project, ask: () => Promise<{ answer: T }> | undefined): Promise<T | undefined> {
  try {
    const got = (await ask())?.answer;
    if (s.asked.value !== p) return undefined;
    if (got !== undefined) into.value = { project: p, got };
    return got;
  } catch (err) {
    if (!overtaken(err) && s.asked.value === p) into.value = { project: p, problem: sentenceOf(err) };
    return undefined;
  }
}

async function ask(p: Project, list: PriceList): Promise<void> {
  let items: OrderItems | undefined;
  let known: OrderUsual | undefined;
  try {
    [items, known] = await Promise.all([itemsOf(p), learn()]);
  } catch (err) {
    if (!overtaken(err) && s.asked.value === p) refuse(p, sentenceOf(err));
    return;
  }
  if (!items || !known || s.asked.value !== p) return;
  const at = s.at.value;
  const own = itemsAt(items, p, at);
  pinGrams.value = items.order.items[own[at.version] ?? -1]?.weight ?? 0;
  const priced: PricedOrder = { list, order: items.order };
  void answering(promise, p, () => askPromise(p, known, priced));
  const after = await answering(left, p, () => askLeft(p, known, priced));
  if (!after) {
    if (s.asked.value === p) waiting(p, left.value?.problem ?? '');
    return;
  }
  const stake = stakeFrom(p, after);
  if (!stake) {
    waiting(p, 'What a piece leaves is not known while something under “Left after costs” cannot be used.');
    return;
  }
  void answering(demand, p, () => askDemand(p, at, known, priced, own, stake));
  void answering(presale, p, () => askPresale(p, at, known, priced, own, { ...stake, each: presaleEach(p, known, after) ?? stake.each }));
}

function waiting(p: Project, problem: string): void {
  demand.value = { project: p, problem };
  presale.value = { project: p, problem };
}

function refuse(p: Project, problem: string): void {
  left.value = { project: p, problem };
  waiting(p, problem);
}

const call = () => atHand.value;

function askLeft(p: Project, known: OrderUsual, priced: PricedOrder) {
  const stated = leftPlan(p, known.selling, s.at.value);
  const ready = { ...stated, currency: stated.currency || priced.list.currency, grams: stated.grams || pinGrams.value };
  return call()?.call('left', { plan: ready, priced }, { lane: 'left' });
}

/** What a piece brings: as stated, or as it follows from what is left. */
export function stakeFrom(p: Project, after: Left): Stake | undefined {
  const own = stakeOf(p);
  const each = own.each ?? after.left?.each;
  if (each === undefined) return undefined;
  const { currency, minorDigits, secondsShare } = after.plan;
  return { currency, minorDigits, each, second: own.second ?? after.left?.second ?? '0', secondsShare, leftover: own.leftover ?? '0', missed: own.missed ?? '0', free: own.free ?? 0 };
}

/** What a paid pre-order leaves: as stated, or as a piece sold online does. */
export function presaleEach(p: Project, known: OrderUsual, after: Left): string | undefined {
  const online = after.left?.rows.find((r) => r.kind === 'online' && !r.flawed && r.count > 0);
  return presaleOf(p, known).each ?? stakeOf(p).each ?? online?.before;
}

/** Where a list counts each version for itself, versions are asked for one after another. */
export const apart = (list: PriceList, versions: number) => versions > 1 && (list.pieces.together === 'version' || !list.pieces.together);

function askDemand(p: Project, at: Place, known: OrderUsual, priced: PricedOrder, items: number[], stake: Stake) {
  const all = designOf(p, at)?.versions ?? [];
  const each = all.map((v) => v.quantity);
  const versions = all.map((v, i) => ({ name: v.name, guess: guessOf(p, { ...at, version: i }, known.guess) }));
  const own = apart(priced.list, all.length);
  const look = own ? [...new Set(each)] : [each.reduce((a, b) => a + b, 0)];
  return call()?.call('demand', { bill: { steps: [], priced, items }, versions, stake, most: 0, look, apart: own }, { lane: 'demand' });
}

/** Pre-orders looked at: past this a pre-sale of one design hardly goes. */
const MOST_PAID = 2000;

/** A guess from orders, once there is something to guess from. */
export const orderGuess = (g: Guess): Guess | undefined => (g.orders > 0 || g.daysGone > 0 ? { ...g, kind: 'orders' } : undefined);

/** A goal that is priced by the list is the design of that name, where the order
 * has one; else the same pin made with a die of its own. */
export function goalsOf(plan: PresalePlan, priced: PricedOrder, item: number): GoalAsk[] {
  const pin = priced.order.items[item];
  return plan.goals.map((g) => {
    const drawn = priced.order.items.find((it) => it.design === g.name);
    const own = drawn ?? (pin && { ...pin, design: g.name, die: `goal ${g.name}`, newDie: true, dieAge: 0 });
    const bill = g.alike && own
      ? { steps: [], priced: { ...priced, order: { ...priced.order, items: [own] } }, items: [] }
      : { steps: [{ from: 1, each: g.each, once: g.once }], items: [] };
    return { name: g.name, quantity: g.quantity, bill };
  });
}

function askPresale(p: Project, at: Place, known: OrderUsual, priced: PricedOrder, items: number[], stake: Stake) {
  const guess = orderGuess(guessOf(p, at, known.guess));
  const goals = goalsOf(presaleOf(p, known), priced, items[at.version] ?? 0);
  const name = designOf(p, at)?.name ?? '';
  return call()?.call('presale', { name, bill: { steps: [], priced, items }, stake, goals, most: MOST_PAID, ...(guess ? { guess } : {}) }, { lane: 'presale' });
}

/** The days that the calendar counts with, or those it starts from. */
export const scheduleOf = (p: Project, known: OrderUsual, day: string): Schedule => ({ ...(setOf(p) ?? startOf(known, day)), today: day });

function askPromise(p: Project, known: OrderUsual, priced: PricedOrder) {
  const { days } = presaleOf(p, known);
  if (!days.closes) return undefined;
  return call()?.call('promise', { schedule: scheduleOf(p, known, dayOf(new Date())), presale: days, priced }, { lane: 'promise' });
}

/** Let a wish settle before it is reckoned with, ms. */
const SETTLE = 150;

/** Keeps the answers up with the project while the section is open. */
export function followSelling(open: { value: boolean }): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last: { p: Project; at: Place } | undefined;
  const stop = effect(() => {
    const p = s.asked.value;
    const at = s.at.value;
    const found = s.shown.value;
    if (!open.value || !p || found?.project !== p || s.dragged.value || !atHand.value) return;
    const list = priceListOf(p);
    untracked(() => {
      if (!list || (last?.p === p && last.at === at)) return;
      last = { p, at };
      clearTimeout(timer);
      timer = setTimeout(() => void ask(p, list), SETTLE);
    });
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}
