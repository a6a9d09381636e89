import { describe, expect, it } from 'vitest';
import { begin, DEEPEST, redo, replace, undo } from './history';

describe('history', () => {
  it('goes back and forth', () => {
    let h = replace(replace(begin(1), 2, 'two'), 3, 'three');
    h = undo(undo(h));
    expect(h.now).toBe(1);
    expect(h.future.map((s) => s.what)).toEqual(['two', 'three']);
    h = redo(h);
    expect(h.now).toBe(2);
    expect(redo(redo(h)).now).toBe(3);
  });

  it('forgets what was undone once something new is done', () => {
    const h = replace(undo(replace(begin(1), 2, 'two')), 9, 'nine');
    expect(h.future).toEqual([]);
    expect(undo(h).now).toBe(1);
  });

  it('stays put at both ends', () => {
    const h = begin('a');
    expect(undo(h)).toBe(h);
    expect(redo(h)).toBe(h);
  });

  it('takes no step when nothing changed', () => {
    const h = begin('a');
    expect(replace(h, 'a', 'nothing')).toBe(h);
  });

  it('keeps the newest steps only', () => {
    let h = begin(0);
    for (let i = 1; i <= DEEPEST + 5; i++) h = replace(h, i, String(i));
    expect(h.past.length).toBe(DEEPEST);
    expect(h.past[0]?.value).toBe(5);
  });
});
