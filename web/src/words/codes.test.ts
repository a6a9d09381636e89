import { expect, it } from 'vitest';
import { CODES } from '../../dev/canned/codes';
import { nearWords, placeWords, standing } from './codes';

it('says how a colour stands with its code', () => {
  const [same, different, , taken] = CODES.rows;
  if (!same || !different || !taken?.taken?.match) throw new Error('canned rows');
  expect(standing(same)).toBe('same');
  expect(standing(different)).toBe('clearly different, greener');
  expect(standing(taken)).toBe('close, a little stronger');
  expect(standing({ ...taken, taken: { ...taken.taken, recoloured: true } })).toBe('in its colour, close to the drawn one');
  const { match: _, ...gone } = taken.taken;
  expect(standing({ ...taken, taken: gone })).toBe('this list has no such code');
  expect(standing({ ...same, nearest: [] })).toBe('the list is empty');
  expect(nearWords(taken.taken.match)).toBe('close, a little stronger');
});

it('says where in a list something is', () => {
  const fault = { line: 7, column: 'hex', what: '', do: '', kept: false };
  expect(placeWords(fault)).toBe('line 7, hex');
  expect(placeWords({ ...fault, column: '' })).toBe('line 7');
});
