import { expect, it } from 'vitest';
import { CAPITALS } from '../../dev/canned/hands';
import { BLANK } from '../../dev/canned/project';
import { capitalSays } from '../words/lettering';
import { toldOf, withMark, withoutMark } from './lettering';
import { begun, lastWanted, markOf, recipeOf, withPoint } from './line';
import { designOf } from './project';

const [HELD, LOW, BESIDE] = CAPITALS;

it('a capital is a foot and a head, and no line', () => {
  const foot = withPoint(begun('capital'), [0.4, 0.6]);
  expect(foot.width).toBe(0);
  expect([lastWanted(begun('capital')), lastWanted(foot), lastWanted(withPoint(begun('draw-line'), [0, 0]))]).toEqual([false, true, false]);
  expect(markOf(foot)).toBeUndefined();
  const whole = withPoint(foot, [0.4, -1]);
  expect(markOf(whole)).toEqual({ x0: 0.4, y0: 0.6, x1: 0.4, y1: 0 });
  expect(recipeOf(whole)).toBeUndefined();
});

it('marks are kept, told by their place, and taken out', () => {
  if (!HELD || !LOW) throw new Error('no canned capitals');
  const p = withMark(withMark(BLANK, HELD.mark), LOW.mark);
  const all = designOf(p)?.lettering ?? [];
  expect(all).toEqual([HELD.mark, LOW.mark]);
  expect(toldOf([LOW], HELD.mark)).toBeUndefined();
  expect(toldOf([HELD, LOW], { ...LOW.mark })).toBe(LOW);
  expect(withoutMark(all, { ...HELD.mark })).toEqual([LOW.mark]);
});

it('the answer says height, what it is made of, and the least', () => {
  expect(CAPITALS.map(capitalSays)).toEqual([
    '1.8 mm high, raised: holds; the least is 1.5 mm',
    '1.5 mm high, sunk: too low; the least is 2 mm. It holds on a pin of 44.2 mm',
    'lies beside the pin or in a cut-out; mark it along its stem',
  ]);
  expect(HELD && capitalSays({ ...HELD, least: 0 })).toBe('1.8 mm high, raised: your limits ask no least height');
  expect(BESIDE && capitalSays({ ...BESIDE, lies: 'printed' })).toMatch(/^1.6 mm high, printed: it needs no metal/);
});
