import { describe, expect, it } from 'vitest';
import type { Ledger, Parcel, ParcelCounted } from '../engine/wire.gen';
import { FLAW_KEYS, inHundred, moveSays, parcelSays, progressSays, title } from './parcel';

const parcel: Parcel = { id: 'p', maker: '', agreed: 10, within: 7, sure: 95, rows: [] };
const answer = { tally: { says: 'As agreed.' } } as ParcelCounted;
const ledger = { stock: { says: '41 firsts left.' } } as Ledger;

describe('the parcel in a sentence', () => {
  it('leads with what is left once pieces move', () => {
    expect(parcelSays(undefined, undefined, undefined, 0)).toMatch(/^Count what arrives/);
    expect(parcelSays(parcel, undefined, undefined, 0)).toBe('Counting …');
    expect(parcelSays(parcel, answer, ledger, 0)).toBe('As agreed.');
    expect(parcelSays(parcel, answer, ledger, 1)).toBe('41 firsts left.');
    expect(parcelSays(parcel, answer, undefined, 1)).toBe('As agreed.');
  });

  it('counts in words', () => {
    expect(progressSays(60, 35, 2, 1)).toBe('38 of 60 counted: 35 sound, 2 seconds, 1 reject');
    expect(moveSays({ day: '2027-03-10', design: 'd', version: 'v', kind: 'fair', grade: 'first', count: 12 }, 'Buoy')).toBe('2027-03-10: 12 firsts of Buoy, at the fair');
    expect([title(parcel, 1), title({ ...parcel, arrived: '2027-03-03' }, 1)]).toEqual(['Parcel 2', 'Parcel, 2027-03-03']);
  });

  it('writes a chance of a hundred with the places it needs', () => {
    expect([0, 0.0004, 0.05, 0.0996, 0.37, 1].map(inHundred)).toEqual(['0', 'under 0.1', '5.0', '10', '37', '100']);
  });

  it('has a key of its own for every fault', () => {
    expect(new Set(FLAW_KEYS).size).toBe(11);
  });
});
