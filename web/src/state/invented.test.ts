import { describe, expect, it } from 'vitest';
import { LIST } from '../../dev/canned/project';
import { withCell } from './cells';
import { inventedIn } from './invented';

describe('whose figures a list holds', () => {
  it('is the example’s until something is typed, and in part from then on', () => {
    expect(inventedIn(LIST, LIST)).toBe('all');
    const one = withCell(LIST, 'die.flat', '70.5');
    expect(inventedIn(one, LIST)).toBe('some');
    expect(inventedIn({ ...one, name: 'Mine', id: 'mine' }, LIST)).toBe('some');
  });

  it('is nobody’s but the person’s once none of the example’s is left', () => {
    expect(inventedIn({ ...LIST, invented: false }, LIST)).toBe('none');
    const none: unknown = JSON.parse(JSON.stringify(LIST), (_, v: unknown) => (typeof v === 'string' && /^\d/.test(v) ? `${v}9` : v));
    expect(inventedIn(none as typeof LIST, LIST)).toBe('none');
  });
});
