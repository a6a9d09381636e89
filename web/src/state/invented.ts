// Whose the figures of a price list are: those of the example are invented, and
// stay marked until none of them is left or the person says that they are right.
import type { PriceList, Project } from '../engine/wire.gen';
import { hello } from './store';
import { withPriceList } from './project';

/** The figures of a list that say something, by their places in it. */
function figures(of: unknown, at = ''): [string, string][] {
  if (typeof of === 'string') return /^\d/.test(of) && Number(of) !== 0 ? [[at, of]] : [];
  if (typeof of !== 'object' || of === null) return [];
  return Object.entries(of).flatMap(([k, v]) => figures(v, `${at}.${k}`));
}

const prices = (l: PriceList) => figures({ ...l, id: '', name: '', notes: '' });

export type Invented = 'all' | 'some' | 'none';

/** How much of a list is that of the example. */
export function inventedIn(list: PriceList, example: PriceList | undefined): Invented {
  if (!list.invented) return 'none';
  if (!example) return 'all';
  const now = new Map(prices(list));
  const theirs = prices(example);
  const same = theirs.filter(([at, v]) => now.get(at) === v).length;
  if (same === 0) return 'none';
  return same === theirs.length ? 'all' : 'some';
}

const example = () => hello.value?.blank.order.priceLists[0];

export const inventedNow = (list: PriceList): Invented => inventedIn(list, example());

/** A list that was changed: it is invented no longer once none of the example's figures is left. */
export const settled = (list: PriceList): PriceList => (list.invented && inventedNow(list) === 'none' ? { ...list, invented: false } : list);

/** The figures of the list in use are the maker's own. */
export const withOwn = (p: Project): Project => withPriceList(p, (l) => ({ ...l, invented: false }));
