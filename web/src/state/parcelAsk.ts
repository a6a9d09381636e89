// What the engine says of the parcel in hand, of a look at some, and of the book.
import { effect, signal, untracked } from '@preact/signals';
import type { Claim, Ledger, LookedAt, Parcel, ParcelCounted, Planned, PlanAsk, Project, SomeLooked, StockBook, StockMove, Worth } from '../engine/wire.gen';
import { bill } from './bill';
import { atHand, faultOf, sentenceOf } from './desk';
import { bookOf, namesOf, parcelsOf, withMove, withPlans } from './parcel';
import { flush, parcel } from './parcelCount';
import * as s from './store';
import { dayOf } from './today';

/** The section is unfolded: nothing is asked before, unless something came. */
export const parcelOpen = signal(false);

export const counted = signal<{ parcel: Parcel; answer: ParcelCounted } | undefined>(undefined);
export const look = signal<SomeLooked>({ lot: 60, looked: 12, bad: 0, sure: 95, atMost: 2 });
export const looked = signal<{ look: SomeLooked; answer: LookedAt } | undefined>(undefined);
export const planAsked = signal<PlanAsk | undefined>(undefined);
export const planned = signal<Planned | undefined>(undefined);
export const ledger = signal<{ project: Project; answer: Ledger } | undefined>(undefined);
/** Why the last move was not entered. */
export const refusedMove = signal('');
export const claim = signal<{ parcel: Parcel; claim: Claim } | undefined>(undefined);
export const problem = signal('');

export const today = () => dayOf(new Date());

const overtaken = (err: unknown) => typeof err === 'object' && err !== null && 'kind' in err && (err.kind === 'superseded' || err.kind === 'stopped');

/** Runs a question; what goes wrong is said, except that a newer one came. */
async function quietly<T>(ask: () => Promise<T> | undefined): Promise<T | undefined> {
  try {
    const got = await ask();
    problem.value = '';
    return got;
  } catch (err) {
    if (!overtaken(err)) problem.value = sentenceOf(err);
    return undefined;
  }
}

const NOTHING: Parcel = { id: '', maker: '', agreed: 10, within: 7, sure: 95, rows: [] };

/** The bill, and how pieces are sold where the person said so. */
function worthOf(p: Project): Worth | undefined {
  const { quote } = bill.value;
  if (!quote || quote.needs.length > 0) return undefined;
  const plan = p.plans?.selling?.left;
  const grams = s.shown.value?.check.back.weight ?? 0;
  const selling = plan ? { ...plan, grams: plan.grams || grams } : undefined;
  return { currency: quote.currency, minorDigits: quote.minorDigits, bill: quote.total, ...(selling ? { selling } : {}) };
}

async function askCount(p: Project, now: Parcel): Promise<void> {
  const worth = worthOf(p);
  const got = await quietly(() => atHand.value?.call('parcel', { parcel: now, today: today(), ...(worth ? { worth } : {}) }, { lane: 'parcel' }));
  if (got) counted.value = { parcel: now, answer: got.answer };
}

const ledgerAsk = (p: Project, book: StockBook) => {
  const schedule = p.plans?.calendar;
  return { book, parcels: [...parcelsOf(p)], names: namesOf(p), today: today(), ...(schedule ? { schedule } : {}) };
};

async function askLedger(p: Project): Promise<void> {
  const usual = counted.value?.answer.usual;
  if (!usual) return;
  const got = await quietly(() => atHand.value?.call('ledger', ledgerAsk(p, bookOf(p, usual)), { lane: 'ledger' }));
  if (got) ledger.value = { project: p, answer: got.answer };
}

async function askLook(now: SomeLooked): Promise<void> {
  const got = await quietly(() => atHand.value?.call('lookedat', { look: now }, { lane: 'lookedat' }));
  if (got) looked.value = { look: now, answer: got.answer };
}

async function askPlan(ask: PlanAsk): Promise<void> {
  const got = await quietly(() => atHand.value?.call('plan', ask, { lane: 'plan' }));
  if (got) planned.value = got.answer;
}

/** Keeps the answers up with the count and the project: called once. */
export function followParcel(): () => void {
  const stops = [
    effect(() => {
      const p = s.asked.value;
      const now = parcel.value;
      const open = parcelOpen.value;
      void bill.value;
      if (!p || !atHand.value || s.dragged.value || (!open && !now)) return;
      untracked(() => void askCount(p, now ?? NOTHING));
    }),
    effect(() => {
      const p = s.asked.value;
      const usual = counted.value?.answer.usual;
      if (!p || !usual || !parcelOpen.value || ledger.value?.project === p) return;
      untracked(() => void askLedger(p));
    }),
    effect(() => {
      const now = look.value;
      if (atHand.value && parcelOpen.value) untracked(() => void askLook(now));
    }),
    effect(() => {
      const ask = planAsked.value;
      if (ask && atHand.value) untracked(() => void askPlan(ask));
    }),
  ];
  return () => stops.forEach((stop) => stop());
}

let entering: Promise<unknown> = Promise.resolve();

/** Enters a move when the book can hold it; says why not otherwise. Moves are
 * entered one after another: each is held against those before it. */
export function enter(move: StockMove): Promise<boolean> {
  const next = entering.then(() => enterNow(move));
  entering = next;
  return next;
}

async function enterNow(move: StockMove): Promise<boolean> {
  flush();
  const p = s.asked.value;
  const usual = counted.value?.answer.usual;
  if (!p || !usual) return false;
  const book = withMove(bookOf(p, usual), move);
  try {
    const got = await atHand.value?.call('ledger', ledgerAsk(p, book));
    const fault = got?.answer.faults[0];
    refusedMove.value = fault?.what ?? '';
    if (!got || fault) return false;
    s.change((q) => withPlans(q, { ledger: withMove(bookOf(q, usual), move) }), 'Entered in the book');
    return true;
  } catch (err) {
    refusedMove.value = faultOf(err).what;
    return false;
  }
}

export async function askClaim(): Promise<void> {
  flush();
  const now = parcel.value;
  if (!now) return;
  const got = await quietly(() => atHand.value?.call('claim', { parcel: now, today: today() }, { lane: 'claim' }));
  if (!got) return;
  const fault = got.answer.faults[0];
  if (fault) problem.value = fault.what;
  if (got.answer.claim) claim.value = { parcel: now, claim: got.answer.claim };
}
