import { describe, expect, it } from 'vitest';
import type { Parcel, ParcelUsual, Project } from '../engine/wire.gen';
import * as p from './parcel';

const usual: ParcelUsual = { agreed: 10, within: 7, sure: 95, weeks: 8, leadDays: 45, levels: [], qualities: [] };

const project = {
  format: 1,
  order: {
    name: 'Skerry Light', priceList: 'a', priceLists: [{ id: 'a', name: 'Skerry die works' }],
    designs: [
      { id: 'd1', name: 'Lighthouse', versions: [{ id: 'v1', name: 'gold', quantity: 60 }, { id: 'v2', name: '', quantity: 40 }] },
      { id: 'd2', name: 'Buoy', versions: [{ id: 'v1', name: '', quantity: 30 }] },
    ],
  },
} as unknown as Project;

const fresh = () => p.freshParcel(project, usual, '2027-03-03');

describe('a parcel', () => {
  it('begins with all that is ordered, by name', () => {
    expect(fresh().rows.map((r) => [r.name, r.ordered, r.firsts])).toEqual([['Lighthouse, gold', 60, 0], ['Lighthouse, version 2', 40, 0], ['Buoy', 30, 0]]);
    expect(fresh()).toMatchObject({ id: 'parcel 1', maker: 'Skerry die works', arrived: '2027-03-03', agreed: 10 });
  });

  it('gets a name that no other has', () => {
    const two = p.withParcel(p.withParcel(project, fresh()), { ...fresh(), id: 'parcel 2' });
    expect(p.freshParcel(p.withoutParcel(two, 'parcel 1'), usual, '').id).toBe('parcel 3');
  });

  it('counts pieces, and names the fault of the last flawed one', () => {
    let a: Parcel = fresh();
    a = p.tapped(a, 0, 'first');
    a = p.withFlaw(p.tapped(a, 0, 'second'), 0, 'dust');
    a = p.withFlaw(p.tapped(a, 0, 'reject'), 0, 'sharp');
    a = p.tapped(a, 2, 'first');
    expect(a.rows[0]).toMatchObject({ firsts: 1, flawed: [{ grade: 'second', flaw: 'dust' }, { grade: 'reject', flaw: 'sharp' }] });
    expect(a.rows[2]?.firsts).toBe(1);
    expect(p.tapped(a, 9, 'first')).toBe(a);
  });

  it('lets a count of what came grow with what is looked at', () => {
    let a = p.withRow(fresh(), 0, { received: 1 });
    a = p.tapped(p.tapped(a, 0, 'first'), 0, 'second');
    expect(a.rows[0]?.received).toBe(2);
    expect(p.tapped(fresh(), 0, 'first').rows[0]?.received).toBeUndefined();
  });

  it('names versions it does not know', () => {
    const a = p.tapped(fresh(), 1, 'second');
    expect(p.missingRows(project, { ...a, rows: a.rows.slice(0, 2) }).map((r) => r.name)).toEqual(['Buoy']);
  });
});

describe('what is kept', () => {
  it('leaves the project that was', () => {
    const before = JSON.stringify(project);
    p.orderedAgain(p.withParcel(project, fresh()), 'd2', 5);
    expect(JSON.stringify(project)).toBe(before);
  });

  it('orders one design again, on its die', () => {
    const q = p.orderedAgain(project, 'd2', 5);
    expect(q.order.designs.map((d) => d.extras)).toEqual([undefined, { reorder: true, dieAge: 5 }]);
    expect(p.orderedAgain(q, 'd2', 3).order.designs[1]?.extras?.dieAge).toBe(5);
    expect(p.orderedAgain(project, 'gone', 5)).toBe(project);
  });

  it('takes moves in and out', () => {
    const m = { day: '2027-03-10', design: 'd1', version: 'v1', kind: 'sold', grade: 'first', count: 2 } as const;
    const book = p.withMove(p.bookOf(project, usual), m);
    expect(book).toEqual({ moves: [m], weeks: 8, leadDays: 45 });
    expect(p.withoutMove(book, 0).moves).toEqual([]);
  });
});
