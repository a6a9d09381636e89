// Parcels of a project: pure changes to what was counted.
import type { FlawKind, FlawedPiece, Parcel, ParcelRow, ParcelUsual, Plans, Project, StockBook, StockMove, StockName } from '../engine/wire.gen';
import { designOf, priceListOf, withDesign, type Place } from './project';

export const parcelsOf = (p: Project): readonly Parcel[] => p.plans?.parcels ?? [];

export function withPlans(p: Project, change: Partial<Plans>): Project {
  return { ...p, plans: { ...p.plans, ...change } };
}

/** Another state of the parcel of that name; one that is new comes last. */
export function withParcel(p: Project, parcel: Parcel): Project {
  const all = parcelsOf(p);
  const known = all.some((o) => o.id === parcel.id);
  return withPlans(p, { parcels: known ? all.map((o) => (o.id === parcel.id ? parcel : o)) : [...all, parcel] });
}

export function withoutParcel(p: Project, id: string): Project {
  return withPlans(p, { parcels: parcelsOf(p).filter((o) => o.id !== id) });
}

/** The order's versions under the names they go by, the design's alone where it has one version. */
export function namesOf(p: Project): StockName[] {
  return p.order.designs.flatMap((d) =>
    d.versions.map((v, i) => ({
      design: d.id, version: v.id,
      name: d.versions.length > 1 ? `${d.name}, ${v.name || `version ${i + 1}`}` : d.name || 'the pin',
    })));
}

/** A parcel of all that is ordered, nothing counted yet. */
export function freshParcel(p: Project, usual: ParcelUsual, today: string): Parcel {
  const quantities = p.order.designs.flatMap((d) => d.versions.map((v) => v.quantity));
  const used = new Set(parcelsOf(p).map((o) => o.id));
  let n = used.size + 1;
  while (used.has(`parcel ${n}`)) n++;
  return {
    id: `parcel ${n}`, maker: priceListOf(p)?.name ?? '', arrived: today,
    agreed: usual.agreed, within: usual.within, sure: usual.sure,
    rows: namesOf(p).map((name, i) => ({ ...name, ordered: quantities[i] ?? 0, firsts: 0 })),
  };
}

/** Versions that the order has and the parcel does not know yet, as when one
 * was added after it was begun. */
export function missingRows(p: Project, parcel: Parcel): ParcelRow[] {
  const quantities = p.order.designs.flatMap((d) => d.versions.map((v) => v.quantity));
  return namesOf(p).flatMap((n, i) =>
    parcel.rows.some((r) => r.design === n.design && r.version === n.version) ? [] : [{ ...n, ordered: quantities[i] ?? 0, firsts: 0 }]);
}

export function withRow(parcel: Parcel, at: number, change: Partial<ParcelRow>): Parcel {
  return { ...parcel, rows: parcel.rows.map((r, i) => (i === at ? { ...r, ...change } : r)) };
}

export type Tapped = 'first' | 'second' | 'reject';

/** One more piece of a version. A count of what came that is now too small grows along. */
export function tapped(parcel: Parcel, at: number, grade: Tapped): Parcel {
  const row = parcel.rows[at];
  if (!row) return parcel;
  const flawed = row.flawed ?? [];
  const more = grade === 'first' ? { firsts: row.firsts + 1 } : { flawed: [...flawed, { grade, flaw: '' } satisfies FlawedPiece] };
  const graded = row.firsts + flawed.length + 1;
  return withRow(parcel, at, { ...more, ...(row.received && row.received < graded ? { received: graded } : {}) });
}

/** Changes the flawed piece counted last. */
export function withLast(parcel: Parcel, at: number, change: (piece: FlawedPiece) => Partial<FlawedPiece>): Parcel {
  const flawed = parcel.rows[at]?.flawed ?? [];
  return withRow(parcel, at, { flawed: flawed.map((f, i) => (i === flawed.length - 1 ? { ...f, ...change(f) } : f)) });
}

export const withFlaw = (parcel: Parcel, at: number, flaw: FlawKind) => withLast(parcel, at, () => ({ flaw }));

export function bookOf(p: Project, usual: Pick<ParcelUsual, 'weeks' | 'leadDays'>): StockBook {
  return p.plans?.ledger ?? { moves: [], weeks: usual.weeks, leadDays: usual.leadDays };
}

export const withMove = (book: StockBook, move: StockMove): StockBook => ({ ...book, moves: [...book.moves, move] });

export const withoutMove = (book: StockBook, at: number): StockBook => ({ ...book, moves: book.moves.filter((_, i) => i !== at) });

/** The design of a version, ordered again on its kept die; what was said of its
 * age before counts when it is more. */
export function orderedAgain(p: Project, design: string, dieAge: number): Project {
  const at: Place = { design: p.order.designs.findIndex((d) => d.id === design), version: 0 };
  const d = designOf(p, at);
  return d ? withDesign(p, { extras: { ...d.extras, reorder: true, dieAge: Math.max(dieAge, d.extras?.dieAge ?? 0) } }, at) : p;
}
