import { describe, expect, it } from 'vitest';
import { BLANK, LIST } from '../../dev/canned/project';
import { foreign, upTo, withoutInto, withTerms } from './bill';
import { freeName, openPrices, withList, withListAt, withoutList, withUse } from './lists';

const other = { ...LIST, id: 'other', name: 'Other', currency: 'USD' };
const two = withList(BLANK, other);

describe('price lists', () => {
  it('are in use once they are added, and the neighbour is when one goes', () => {
    expect(two.order.priceList).toBe('other');
    const gone = withoutList(two, 'other');
    expect(gone.order.priceList).toBe(LIST.id);
    expect(gone.order.priceLists).toEqual([LIST]);
    expect(withoutList(gone, LIST.id)).toBe(gone);
  });

  it('come back to where they stood', () => {
    const gone = withoutList(withUse(two, LIST.id), LIST.id);
    expect(withListAt(gone, LIST, 0, true)).toEqual(withUse(two, LIST.id));
    expect(withListAt(two, LIST, 0, true)).toBe(two);
  });

  it('drop wishes that the one in use has no name for', () => {
    const wished = withTerms(two, { delivery: 'patient', seconds: 3 });
    expect(withUse(wished, LIST.id).order.terms).toMatchObject({ delivery: '', seconds: 3 });
  });

  it('start with no price known', () => {
    const open = openPrices(LIST, { ...other, pieces: { ...LIST.pieces, breaks: [] } });
    expect(open.pieces.breaks.map((b) => b.from)).toEqual([50, 100, 300]);
    expect(open.pieces.breaks.flatMap((b) => b.unit).join('')).toBe('');
  });

  it('have names that differ', () => {
    expect(freeName(two, 'Other')).toBe('Other 2');
    expect(freeName(two, 'New')).toBe('New');
  });
});

describe('the bill', () => {
  it('keeps its terms apart from the second currency', () => {
    const into = { currency: 'USD', minorDigits: 2, rate: '1.1', dated: '' };
    const p = withTerms(withTerms(BLANK, { free: 2 }), { into });
    expect(p.order.terms).toMatchObject({ free: 2, into });
    expect(withoutInto(p).order.terms).not.toHaveProperty('into');
  });

  it('wants a rate for each other currency', () => {
    expect(foreign(two)).toEqual(['EUR']);
    expect(foreign(BLANK)).toEqual([]);
  });

  it('is compared past the last break and twice what is asked for, and no further than the engine goes', () => {
    expect(upTo([LIST], 100)).toBe(330);
    expect(upTo([LIST], 1000)).toBe(2000);
    expect(upTo([LIST], 90000)).toBe(20000);
  });
});
