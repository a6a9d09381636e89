// Price lists: a maker each, added, copied, put away and chosen; what is wrong
// in the one in use; what was read of a file or of pasted rows.
import { computed, effect, signal, untracked } from '@preact/signals';
import type { CellError, PriceFileRead, PriceList, Project } from '../engine/wire.gen';
import { atHand, faultOf } from './desk';
import { settled } from './invented';
import { priceListOf } from './project';
import { saveFile } from './save';
import * as s from './store';

const withLists = (p: Project, priceLists: PriceList[], priceList = p.order.priceList): Project => ({ ...p, order: { ...p.order, priceLists, priceList } });

/** Another list in use; wishes that it has no name for fall away. */
export function withUse(p: Project, id: string): Project {
  const next = withLists(p, p.order.priceLists, id);
  const list = priceListOf(next);
  const { terms } = p.order;
  if (!list || !terms) return next;
  const among = (name: string, all: readonly { name: string }[]) => (all.some((c) => c.name === name) ? name : '');
  const delivery = among(terms.delivery, list.delivery.choices);
  const shipping = among(terms.shipping, list.shipping.classes);
  return { ...next, order: { ...next.order, terms: { ...terms, delivery, shipping } } };
}

/** A list more, in use from now on. */
export const withList = (p: Project, l: PriceList): Project => withLists(p, [...p.order.priceLists, l], l.id);

/** Without a list; where it was in use, its neighbour is. The last one stays. */
export function withoutList(p: Project, id: string): Project {
  const at = p.order.priceLists.findIndex((l) => l.id === id);
  const rest = p.order.priceLists.filter((l) => l.id !== id);
  const next = rest[Math.min(at, rest.length - 1)];
  if (at < 0 || !next) return p;
  return withLists(p, rest, p.order.priceList === id ? next.id : p.order.priceList);
}

/** Puts a list back where it stood. */
export function withListAt(p: Project, l: PriceList, at: number, used: boolean): Project {
  if (p.order.priceLists.some((o) => o.id === l.id)) return p;
  const lists = [...p.order.priceLists];
  lists.splice(at, 0, l);
  return withLists(p, lists, used ? l.id : p.order.priceList);
}

/** Another list's contents in the place of one. */
export const withListFor = (p: Project, l: PriceList): Project => withLists(p, p.order.priceLists.map((o) => (o.id === l.id ? l : o)));

/** The table of prices with nothing in it, to be typed into. */
export function openPrices(like: PriceList, l: PriceList): PriceList {
  const { pieces } = like;
  return { ...l, pieces: { ...pieces, breaks: pieces.breaks.map((b) => ({ from: b.from, unit: b.unit.map(() => '') })) } };
}

/** A name that no other list has: "Maker 2". */
export function freeName(p: Project, name: string): string {
  const taken = new Set(p.order.priceLists.map((l) => l.name));
  if (!taken.has(name)) return name;
  let n = 2;
  while (taken.has(`${name} ${n}`)) n++;
  return `${name} ${n}`;
}

/** What was put away last, until it is put back or another is. */
export const removed = signal<{ list: PriceList; at: number; used: boolean } | undefined>(undefined);

export function remove(list: PriceList): void {
  const p = s.history.value?.now;
  if (!p) return;
  removed.value = { list, at: p.order.priceLists.findIndex((l) => l.id === list.id), used: p.order.priceList === list.id };
  s.change((q) => withoutList(q, list.id), `Put away ${list.name}`);
}

export function putBack(): void {
  const r = removed.value;
  removed.value = undefined;
  if (r) s.change((p) => withListAt(p, r.list, r.at, r.used), `Put back ${r.list.name}`);
}

/** Takes a list in as one more; the engine gives it an ID of its own. */
export async function take(name: string, make: (blank: PriceList) => PriceList, what: string): Promise<void> {
  const p = s.history.value?.now;
  const used = p && priceListOf(p);
  if (!p || !used) return;
  try {
    const got = await atHand.value?.call('newlist', { project: s.picked(p).project, name: freeName(p, name), currency: used.currency });
    if (got) s.change((q) => withList(q, make(got.answer.list)), what);
  } catch (err) {
    const f = faultOf(err);
    s.tell(f.what, f.do);
  }
}

/** A maker of whom nothing is known: the sizes and numbers of the list in use, no prices. */
export function add(): Promise<void> {
  const p = s.history.value?.now;
  const like = p && priceListOf(p);
  return like ? take('New maker', (blank) => openPrices(like, blank), 'Added a maker') : Promise.resolve();
}

export function copy(list: PriceList): Promise<void> {
  return take(`${list.name}, copy`, (blank) => ({ ...list, id: blank.id, name: blank.name }), `Copied ${list.name}`);
}

/** What was brought last: its text where it was pasted, and what became of it. */
export interface Arrived {
  text: string;
  fileName: string;
  read?: PriceFileRead;
  /** Why nothing of it could be read. */
  refused?: { what: string; do: string };
}

export const arrived = signal<Arrived | undefined>(undefined);

/** More than the engine takes of a list; it says so in words. */
const READ_MOST = 2 << 20;

async function read(base: Arrived, bytes?: Uint8Array<ArrayBuffer>): Promise<void> {
  const p = s.history.value?.now;
  const into = p && priceListOf(p);
  if (!into) return;
  try {
    const got = await atHand.value?.call('pricefile', { text: base.text, into }, bytes ? { bytes } : {});
    if (got) arrived.value = { ...base, read: got.answer };
  } catch (err) {
    arrived.value = { ...base, refused: faultOf(err) };
  }
}

export const readText = (text: string): Promise<void> => read({ text, fileName: '' });

export async function readFile(file: File): Promise<void> {
  await read({ text: '', fileName: file.name }, new Uint8Array(await file.slice(0, READ_MOST).arrayBuffer()));
}

/** Takes what was read in the place of the list it was read into. */
export function accept(): void {
  const list = arrived.value?.read?.list;
  if (!list) return;
  arrived.value = undefined;
  s.change((p) => withListFor(p, settled(list)), `Prices of ${list.name}`);
}

/** Takes what was read as one maker more. */
export async function acceptMore(): Promise<void> {
  const list = arrived.value?.read?.list;
  if (!list) return;
  arrived.value = undefined;
  await take(list.name, (blank) => settled({ ...list, id: blank.id, name: blank.name }), `Added ${list.name}`);
}

export async function save(list: PriceList): Promise<void> {
  try {
    const got = await atHand.value?.call('pricefilewrite', { list });
    const bytes = got?.bytes;
    if (got && bytes) saveFile(new Blob([new Uint8Array(bytes)], { type: 'text/csv' }), got.answer.fileName);
  } catch (err) {
    const f = faultOf(err);
    s.tell(f.what, f.do);
  }
}

const checked = signal<{ list: PriceList; cells: CellError[] } | undefined>(undefined);
/** What is wrong in the list in use, as far as it was looked at. */
export const faults = computed<readonly CellError[]>(() => {
  const p = s.asked.value;
  const c = checked.value;
  return p && c && c.list === priceListOf(p) ? c.cells : [];
});

/** Looks at the list in use whenever it is another: called once. */
export function followFaults(): () => void {
  return effect(() => {
    const p = s.asked.value;
    const list = p && priceListOf(p);
    if (!list || !s.shown.value?.check.quoteProblem) return;
    untracked(() => {
      if (checked.value?.list === list) return;
      atHand.value?.call('listcheck', { list }, { lane: 'list check' })
        .then(({ answer }) => (checked.value = { list, cells: answer.cells }))
        // Overtaken by a newer list.
        .catch(() => undefined);
    });
  });
}
