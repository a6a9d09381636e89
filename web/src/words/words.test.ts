import { describe, expect, it } from 'vitest';
import { CHECK, TRUE_SIZE } from '../../dev/canned/answers';
import { grams, mm } from './length';
import { both, eachWords, sightSays } from './words';

describe('lengths and masses', () => {
  it('show units', () => {
    expect(mm(32)).toBe('32 mm');
    expect(mm(0.184)).toBe('0.18 mm');
    expect(mm(100)).toBe('100 mm');
    expect(grams(9.84)).toBe('9.8 g');
    expect(both(CHECK.shown.h)).toBe('34 mm · 1.34 in');
  });
});

describe('what the engine says', () => {
  it('is taken as it says it', () => {
    expect(sightSays(CHECK, TRUE_SIZE)).toBe('27.2 × 34 mm; its size on this screen is a guess until checked.');
    expect(sightSays(CHECK, undefined)).toBe('27.2 × 34 mm.');
    expect(eachWords(CHECK)).toBe('about EUR\u00a03.390');
    expect(eachWords({ ...CHECK, quoteProblem: 'Too few.' })).toBe('no price');
  });
});
