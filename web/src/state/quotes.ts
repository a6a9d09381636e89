// A price list from plain quotes: asked on a button, with progress, and stopped
// at will; what was found is taken as one step.
import { computed, signal } from '@preact/signals';
import type { Deduction, PriceList, Project } from '../engine/wire.gen';
import { atHand, faultOf } from './desk';
import { freeName, take, withListFor } from './lists';
import { priceListOf } from './project';
import * as s from './store';

/** The quotes as they were typed, kept with the project. */
export const quotes = computed(() => s.asked.value?.plans?.quotes ?? '');

export const withQuotes = (p: Project, text: string): Project => ({ ...p, plans: { ...p.plans, quotes: text } });

interface Found {
  text: string;
  answer?: Deduction;
  /** Why nothing was found. */
  refused?: { what: string; do: string };
}

export const found = signal<Found | undefined>(undefined);

/** Quotes are being worked out: how far, of 1, and how to stop. */
export const working = signal<{ share: number; stop: () => void } | undefined>(undefined);

/** Nothing of the list in use but its name and money. */
const baseOf = (l: PriceList): PriceList => ({ ...l, invented: false });

const stopped = (err: unknown) => typeof err === 'object' && err !== null && 'kind' in err && (err.kind === 'stopped' || err.kind === 'superseded');

export async function work(text: string): Promise<void> {
  const p = s.history.value?.now;
  const used = p && priceListOf(p);
  if (!p || !used || working.value) return;
  if (text !== quotes.value) s.change((q) => withQuotes(q, text), 'Quotes typed');
  const stopper = new AbortController();
  const stop = () => stopper.abort();
  working.value = { share: 0, stop };
  try {
    const got = await atHand.value?.call('fromquotes', { text, base: baseOf(used) }, {
      lane: 'quotes', signal: stopper.signal, onProgress: (share) => (working.value = { share, stop }),
    });
    if (got) found.value = { text, answer: got.answer };
  } catch (err) {
    if (!stopped(err)) found.value = { text, refused: faultOf(err) };
  } finally {
    working.value = undefined;
  }
}

/** Takes the proposal as one maker more. */
export async function useAsMaker(list: PriceList): Promise<void> {
  const p = s.history.value?.now;
  if (!p) return;
  const name = freeName(p, 'From quotes');
  await take(name, (blank) => ({ ...list, id: blank.id, name: blank.name }), 'Added a list from quotes');
  found.value = undefined;
}

/** Takes the proposal in the place of the list in use. */
export function useInPlace(list: PriceList): void {
  s.change((p) => {
    const used = priceListOf(p);
    return used ? withListFor(p, { ...list, id: used.id, name: used.name }) : p;
  }, 'Took the list from quotes');
  found.value = undefined;
}
