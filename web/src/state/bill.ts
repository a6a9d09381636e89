// The bill of the order on the sheet, and makers held against each other. The
// check brings the bill of one version that a list can price; whatever else is
// asked of the order's program.
import { computed, effect, signal, untracked } from '@preact/signals';
import type { Comparison, MakerRate, PriceList, Project, Terms } from '../engine/wire.gen';
import { atHand, sentenceOf } from './desk';
import { itemAt, itemsOf, NO_TERMS, priced, versionsIn, type Billed } from './items';
import { drawingOf, pickedOf, priceListOf, versionOf } from './project';
import * as s from './store';

export function withTerms(p: Project, change: Partial<Terms>): Project {
  return { ...p, order: { ...p.order, terms: { ...(p.order.terms ?? NO_TERMS), ...change } } };
}

/** Without a second currency. */
export function withoutInto(p: Project): Project {
  const { into: _, ...rest } = p.order.terms ?? NO_TERMS;
  return { ...p, order: { ...p.order, terms: rest } };
}

/** What 1 of each other currency is in the one compared in, as the person typed it. */
export const rates = computed<readonly MakerRate[]>(() => s.asked.value?.plans?.rates ?? NO_RATES);

const NO_RATES: readonly MakerRate[] = [];

export function withRate(p: Project, r: MakerRate): Project {
  const others = p.plans?.rates?.filter((o) => o.currency !== r.currency) ?? [];
  return { ...p, plans: { ...p.plans, rates: [...others, r] } };
}

interface Compared {
  project: Project;
  rates: readonly MakerRate[];
  comparison?: Comparison;
  problem?: string;
}

export const compared = signal<Compared | undefined>(undefined);

/** The check says it all: one version, and a list that prices it. */
const plain = (p: Project, found: s.Shown) => versionsIn(p) === 1 && found.check.quoteProblem === '';

/** The bill on the sheet: of an earlier wish until the new one is there. */
export const bill = computed<Billed>(() => {
  const found = s.shown.value;
  if (found && plain(found.project, found)) return { quote: found.check.quote };
  return priced.value ?? { problem: found?.check.quoteProblem ?? '' };
});

/** The currencies of other makers than the one in use. */
export function foreign(p: Project): string[] {
  const own = priceListOf(p)?.currency;
  return [...new Set(p.order.priceLists.map((l) => l.currency))].filter((c) => c !== own);
}

const overtaken = (err: unknown) => typeof err === 'object' && err !== null && 'kind' in err && (err.kind === 'superseded' || err.kind === 'stopped');

async function price(p: Project, list: PriceList): Promise<void> {
  try {
    const got = await itemsOf(p);
    const q = got && (await atHand.value?.call('orderquote', { list, order: got.order }, { lane: 'order quote' }));
    if (q && s.asked.value === p) priced.value = { project: p, quote: q.answer, places: got.places, left: got.left };
  } catch (err) {
    if (!overtaken(err) && s.asked.value === p) priced.value = { project: p, problem: sentenceOf(err) };
  }
}

/** Looked at up to past the last break of any list, and twice what is asked for;
 * this far the engine goes. */
const MOST = 20000;

export function upTo(lists: readonly PriceList[], quantity: number): number {
  const last = Math.max(...lists.map((l) => l.pieces.breaks.at(-1)?.from ?? 1));
  return Math.min(MOST, Math.max(Math.ceil(last * 1.1), quantity * 2, 10));
}

async function compare(p: Project, own: PriceList, known: readonly MakerRate[]): Promise<void> {
  const base = { project: p, rates: known };
  const need = foreign(p);
  const lists = p.order.priceLists.filter((l) => !need.includes(l.currency) || known.some((r) => r.currency === l.currency));
  try {
    const got = await itemsOf(p);
    const item = got ? itemAt(got, pickedOf(p)) : -1;
    if (!got || item < 0) return;
    const ask = { lists, order: got.order, item, upTo: upTo(lists, versionOf(p)?.quantity ?? 1), currency: own.currency, rates: [...known] };
    const c = await atHand.value?.call('makers', ask, { lane: 'makers' });
    if (c && s.asked.value === p) compared.value = { ...base, comparison: c.answer };
  } catch (err) {
    if (!overtaken(err) && s.asked.value === p) compared.value = { ...base, problem: sentenceOf(err) };
  }
}

/** Let a wish settle before makers are compared, ms. */
const SETTLE = 200;

/** Keeps the bill and the comparison up with the project: called once. */
export function followBill(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    const p = s.asked.value;
    const found = s.shown.value;
    const known = rates.value;
    if (!p || !found || found.project !== p || s.dragged.value || !atHand.value || !drawingOf(p)) return;
    const list = priceListOf(p);
    if (!list) return;
    untracked(() => {
      if (!plain(p, found) && priced.value?.project !== p) void price(p, list);
      clearTimeout(timer);
      if (p.order.priceLists.length < 2) compared.value = undefined;
      else if (compared.value?.project !== p || compared.value.rates !== known) timer = setTimeout(() => void compare(p, list, known), SETTLE);
    });
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}
