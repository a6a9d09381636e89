import { expect, it } from 'vitest';
import { moved } from './useMark';

const room = { x: 10, y: 20, w: 100, h: 60 };
const steps = { far: 8, near: 1 };

it('starts from the middle and moves by far or near steps', () => {
  expect(moved(undefined, 'ArrowRight', false, steps, room)).toEqual({ x: 68, y: 50 });
  expect(moved({ x: 30, y: 30 }, 'ArrowUp', true, steps, room)).toEqual({ x: 30, y: 29 });
  expect(moved({ x: 30, y: 30 }, 'Enter', false, steps, room)).toBeUndefined();
});

it('stays in its room', () => {
  expect(moved({ x: 12, y: 78 }, 'ArrowLeft', false, steps, room)).toEqual({ x: 10, y: 78 });
  expect(moved({ x: 12, y: 78 }, 'ArrowDown', false, steps, room)).toEqual({ x: 12, y: 80 });
});
