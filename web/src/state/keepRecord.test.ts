import { expect, test } from 'vitest';
import type { Design, Project } from '../engine/wire.gen';
import { begin, replace, undo } from './history';
import { copyName, drawingsIn, named, nameOf, needsOf, onlyLooked, picturesIn, renamed, withDrawings, withPictures, type Work } from './keepRecord';

const project = (name: string, ...ids: string[]): Project => ({
  format: 2,
  order: { name: 'New order', designs: [{ name, drawings: ids.map((id) => ({ id, fileName: `${id}.svg`, ground: 'auto', revision: 1 })) } as unknown as Design], priceLists: [], priceList: '' },
});
const EXAMPLES = ['Skerry Light', 'Anchor Buoy'];

test('drawings of steps gone back from, and to come, are kept too', () => {
  const h = undo(replace(replace(begin(project('a', 'x')), project('b', 'y', 'x'), 'one'), project('c', 'z'), 'two'));
  expect(drawingsIn(h.now)).toEqual(['y', 'x']);
  expect(needsOf(h).uses.sort()).toEqual(['x', 'y', 'z']);
  expect(needsOf(h).pictures).toBeUndefined();
});

test('a project is called as it was named, else like its design', () => {
  const p = project('Gull', 'x');
  expect(nameOf(p, 'New order')).toBe('Gull');
  expect(nameOf(named(p, 'Spring'), 'New order')).toBe('Spring');
  expect(nameOf(named(p, '  '), 'New order')).toBe('Gull');
  const work: Work = { id: 'k', format: 2, history: begin(p) };
  expect(nameOf(renamed(work, 'Autumn').history.now, 'New order')).toBe('Autumn');
  expect(renamed(work, 'Autumn').history.past).toHaveLength(1);
});

test('copies get names of their own', () => {
  expect(copyName('Gull', [])).toBe('Gull, copy');
  expect(copyName('Gull', ['Gull', 'Gull, copy'])).toBe('Gull, copy 2');
  expect(copyName('Gull, copy 2', ['Gull, copy', 'Gull, copy 2'])).toBe('Gull, copy 3');
});

test('looking at the examples is nothing to keep; a change or a drawing is', () => {
  const demo = begin(project('Skerry Light', 'first'));
  expect(onlyLooked(demo, EXAMPLES, 'first')).toBe(true);
  const other = replace(demo, project('Anchor Buoy', 'k2'), 'Opened Anchor Buoy');
  expect(onlyLooked(other, EXAMPLES, 'first')).toBe(true);
  expect(onlyLooked(replace(other, project('Buoy', 'k2'), 'Named Buoy'), EXAMPLES, 'first')).toBe(false);
  expect(onlyLooked(undo(replace(demo, project('x', 'first'), '3 enamels')), EXAMPLES, 'first')).toBe(false);
  expect(onlyLooked(begin(project('Gull', 'own')), EXAMPLES, 'first')).toBe(false);
});

test('drawings of a file get names of their own', () => {
  const p = withDrawings(project('a', 'drawing-1', 'drawing-2'), new Map([['drawing-1', 'drawing-k'], ['drawing-2', 'drawing-m']]));
  expect(drawingsIn(p)).toEqual(['drawing-k', 'drawing-m']);
});

test('pictures of flawed pieces and proofs are found, in every step, and called otherwise', () => {
  const rows = [{ design: 'd', version: 'v', name: 'n', ordered: 2, firsts: 0, flawed: [{ grade: 'second', flaw: '', photos: ['x', 'y'] }, { grade: 'reject', flaw: '', photos: ['x'] }, { grade: 'reject', flaw: '' }] }];
  const p = { ...project('a'), plans: { quotes: 'q', parcels: [{ id: 'parcel 1', rows }], proofs: [{ id: 'proof-z' }] } } as unknown as Project;
  expect(picturesIn(p)).toEqual(['x', 'y', 'proof-z']);
  expect(picturesIn(project('a'))).toEqual([]);
  expect(needsOf(replace(begin(p), project('b'), 'none')).pictures).toEqual(['x', 'y', 'proof-z']);
  const other = withPictures(p, (id) => `${id}2`);
  expect(picturesIn(other)).toEqual(['x2', 'y2', 'proof-z2']);
  expect(withPictures(other, (id) => id.slice(0, -1))).toEqual(p);
});
