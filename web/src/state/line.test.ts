import { expect, it } from 'vitest';
import { begun, recipeOf, turnedTo, withoutLast, withPoint } from './line';

it('has two points before it is a line', () => {
  const one = begun('draw-line', [0.2, 0.3]);
  expect(recipeOf(one)).toBeUndefined();
  const two = withPoint(one, [0.5, 1.4]);
  expect(recipeOf(two)).toEqual({ kind: 'draw-line', width: 0, points: [[0.2, 0.3], [0.5, 1]] });
  expect(withoutLast(two)).toEqual(one);
  expect(withoutLast(withoutLast(one)).points).toEqual([]);
});

it('is as thin as the maker holds when drawn, and as wide as what it is to take when erased', () => {
  expect(begun('draw-line', [0, 0], 0.7).width).toBe(0);
  expect(begun('erase-line', [0, 0], 0.72).width).toBe(0.9);
  expect(begun('erase-line', [0, 0], 40).width).toBe(5);
  expect(begun('erase-line').width).toBe(1);
});

it('turned from one to the other keeps a width that both can have', () => {
  expect(turnedTo(begun('draw-line'), 'erase-line').width).toBe(1);
  expect(turnedTo({ ...begun('draw-line'), width: 0.4 }, 'erase-line').width).toBe(0.4);
  expect(turnedTo(begun('erase-line'), 'draw-line').width).toBe(1);
});
