import { describe, expect, it } from 'vitest';
import { BLANK } from '../../dev/canned/project';
import { wayToAsk } from './eyeWay';
import { withDesign, withSize, withVersion } from './project';

const idle = { seen: false, dragging: false };
const full = { project: BLANK, asDrawn: false };
const larger = withSize(BLANK, 41);

describe('how it is asked what is seen', () => {
  it('waits for the first pin to be measured', () => {
    expect(wayToAsk(BLANK, undefined, idle)).toBe('wait');
    expect(wayToAsk(BLANK, undefined, { ...idle, seen: true })).toBe('in-full');
  });

  it('looks another size up, and asks in full once it is measured', () => {
    expect(wayToAsk(larger, full, { seen: false, dragging: true })).toBe('as-drawn');
    expect(wayToAsk(larger, full, idle)).toBe('as-drawn');
    expect(wayToAsk(larger, { project: larger, asDrawn: true }, idle)).toBe('as-drawn');
    expect(wayToAsk(larger, full, { ...idle, seen: true })).toBe('in-full');
  });

  it('asks in full at once about another plating: the metal is measured', () => {
    expect(wayToAsk(withVersion(BLANK, { plating: 'silver' }), full, idle)).toBe('in-full');
  });

  it('waits for other metal to be measured', () => {
    expect(wayToAsk(withDesign(BLANK, { recipes: [{ kind: 'outer-edge', width: 0 }] }), full, idle)).toBe('wait');
  });
});
