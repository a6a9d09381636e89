import { expect, it } from 'vitest';
import { BLANK } from '../../dev/canned/project';
import { lookOf } from './look';
import { FIRST, withDesign, withVersion } from './project';

it('tells looks apart, but not sizes or quantities', () => {
  const look = lookOf(BLANK, FIRST);
  expect(lookOf(withDesign(BLANK, { size: { mm: 50, by: 'width' } }), FIRST)).toBe(look);
  expect(lookOf(withVersion(BLANK, { quantity: 5 }), FIRST)).toBe(look);
  expect(lookOf(withDesign(BLANK, { colours: 3 }), FIRST)).not.toBe(look);
  expect(lookOf(withVersion(BLANK, { plating: 'copper' }), FIRST)).not.toBe(look);
});
