import { describe, expect, it } from 'vitest';
import { begin, DEEPEST, redo, replace, turn, undo } from './history';

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

  it('goes back to where a step was made, and does it again there', () => {
    const at = (n: number, place: string) => ({ n, place });
    let h = replace(begin(at(1, 'a')), at(2, 'a'), 'two');
    h = turn(turn(h, at(2, 'b')), at(2, 'c'));
    expect(h.now).toEqual(at(2, 'c'));
    h = undo(h);
    expect(h.now).toEqual(at(1, 'a'));
    h = redo(turn(h, at(1, 'd')));
    expect(h.now).toEqual(at(2, 'a'));
    expect(undo(replace(turn(h, at(2, 'e')), at(3, 'e'), 'three')).now).toEqual(at(2, 'e'));
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
