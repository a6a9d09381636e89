import { expect, it } from 'vitest';
import { BLANK } from '../../dev/canned/project';
import { lookOf } from './look';
import { withDesign, withVersion } from './project';

it('tells looks apart, but not sizes or quantities', () => {
  const look = lookOf(BLANK);
  expect(lookOf(withDesign(BLANK, { size: { mm: 50, by: 'width' } }))).toBe(look);
  expect(lookOf(withVersion(BLANK, { quantity: 5 }))).toBe(look);
  expect(lookOf(withDesign(BLANK, { colours: 3 }))).not.toBe(look);
  expect(lookOf(withVersion(BLANK, { plating: 'copper' }))).not.toBe(look);
});
