// The order as the order's program wants it: what every version is to a price
// list. Each design is asked about once for as long as it stays as it is, so an
// order may hold more drawings than the engine keeps open.
import { computed, signal } from '@preact/signals';
import type { Design, OrderItems, OrderPlace, Project, Quote, Wanted } from '../engine/wire.gen';
import { atHand } from './desk';
import { pickedOf, type Place } from './project';
import * as s from './store';

export const NO_TERMS: Wanted['terms'] = { delivery: '', shipping: '', rounds: 0, seconds: 0, free: 0 };

/** How many versions an order has in all. */
export const versionsIn = (p: Project) => p.order.designs.reduce((n, d) => n + d.versions.length, 0);

/** A bill of a whole order, or why there is none. */
export interface Billed {
  quote?: Quote;
  problem?: string;
  /** The version behind each item, and what is left out. */
  places?: OrderPlace[];
  left?: string[];
}

/** The bill that the order's program made last. */
export const priced = signal<Billed & { project: Project } | undefined>(undefined);

/** What a piece comes to in an order of several versions, for its title. */
export const eachInAll = computed(() => {
  const p = s.shown.value?.project;
  if (!p || versionsIn(p) < 2) return undefined;
  if (!priced.value) return { says: '…', of: '' };
  const { quote } = priced.value;
  if (!quote || quote.needs.length > 0) return { says: 'no price', of: '' };
  return { says: quote.eachSays, of: `over all ${quote.pieces}` };
});

const known = new WeakMap<Design, Promise<OrderItems | undefined>>();

function itemsOfDesign(p: Project, d: Design): Promise<OrderItems | undefined> {
  const had = known.get(d);
  const engine = atHand.value;
  if (had || !engine) return had ?? Promise.resolve(undefined);
  const { at: _, ...project } = s.picked(p).project;
  const alone = { ...project, order: { ...project.order, designs: [d] } };
  const asked = engine.call('orderitems', { project: alone }, { lane: `order items ${d.id}` }).then((g): OrderItems | undefined => g.answer);
  known.set(d, asked);
  // What was overtaken or refused is asked again the next time.
  asked.catch(() => known.delete(d));
  return asked;
}

/** All of an order, with the place of each item. */
export async function itemsOf(p: Project): Promise<OrderItems | undefined> {
  const all: OrderItems = { order: { items: [], terms: p.order.terms ?? NO_TERMS }, places: [], left: [] };
  for (const [design, d] of p.order.designs.entries()) {
    const got = await itemsOfDesign(p, d);
    if (!got) return undefined;
    all.order.items.push(...got.order.items);
    all.places.push(...got.places.map(({ version }): OrderPlace => ({ design, version })));
    all.left.push(...got.left);
  }
  return all;
}

/** Which item of an order a version is; -1 when it is not in it. */
export const itemAt = (items: OrderItems, at: Place) => items.places.findIndex((o) => o.design === at.design && o.version === at.version);

/** What is ordered together with the version on the sheet; nothing when it is alone. */
export async function besideOf(p: Project): Promise<{ order?: Wanted; item?: number }> {
  if (versionsIn(p) < 2) return {};
  const items = await itemsOf(p);
  const item = items ? itemAt(items, pickedOf(p)) : -1;
  return items && item >= 0 ? { order: items.order, item } : {};
}
