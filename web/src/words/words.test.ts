import { describe, expect, it } from 'vitest';
import { both, inches, mm, parseLength } from './length';
import { fixed, money, parseRate } from './money';

describe('lengths', () => {
  it('shows units', () => {
    expect(mm(32)).toBe('32 mm');
    expect(mm(0.184)).toBe('0.18 mm');
    expect(mm(100)).toBe('100 mm');
    expect(inches(25.4)).toBe('1.00 in');
    expect(both(31.75)).toBe('31.8 mm · 1.25 in');
  });

  it.each([
    ['32', 32], ['32 mm', 32], ['3.2cm', 32], ['1.25 in', 31.75], ['1.25"', 31.75],
    ['1 1/4 in', 31.75], ['3/4 in', 19.05], ['31,5', 31.5],
  ])('reads %s', (text, want) => {
    expect(parseLength(text)).toBeCloseTo(want, 9);
  });

  it.each(['', 'big', '-3', '0', '1/0 in', '32 px'])('does not read "%s"', (text) => {
    expect(parseLength(text)).toBeUndefined();
  });
});

describe('money', () => {
  it('pads and never rounds', () => {
    expect(fixed('3', 2)).toBe('3.00');
    expect(fixed('1.234', 2)).toBe('1.234');
    expect(money('12.5', 'EUR', 2)).toBe('EUR 12.50');
    expect(money('1200', 'JPY', 0)).toBe('JPY 1200');
  });

  it('reads rates as typed', () => {
    expect(parseRate(' 1,25 ')).toBe('1.25');
    expect(parseRate('-1')).toBeUndefined();
    expect(parseRate('free')).toBeUndefined();
  });
});
