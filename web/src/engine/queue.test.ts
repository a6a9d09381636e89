import { describe, expect, it } from 'vitest';
import { drawingsOf } from './client';
import { Queue, SMALL, type Job } from './queue';

const job = (name: string, lane: string, dropped: string[] = []): Job & { name: string } => ({ name, lane, drop: () => dropped.push(name) });

describe('the queue', () => {
  it('keeps the newest of a lane, in the place of the first', () => {
    const dropped: string[] = [];
    const q = new Queue<ReturnType<typeof job>>();
    q.push(job('check 1', 'check', dropped));
    q.push(job('picture', 'picture', dropped));
    q.push(job('check 2', 'check', dropped));
    q.push(job('check 3', 'check', dropped));
    expect(dropped).toEqual(['check 1', 'check 2']);
    expect([q.next()?.name, q.next()?.name, q.next()]).toEqual(['check 3', 'picture', undefined]);
  });

  it('puts what must come first before all others and drops none for it', () => {
    const q = new Queue<ReturnType<typeof job>>();
    q.push(job('a', 'a'));
    q.pushFirst(job('b', 'a'));
    expect([q.next()?.name, q.next()?.name]).toEqual(['b', 'a']);
  });

  it('answers small questions before long ones, in the order of asking', () => {
    const q = new Queue<ReturnType<typeof job>>();
    for (const name of ['check', 'picture']) q.push(job(name, name));
    q.push(job('width', `${SMALL}1`));
    q.push(job('price', `${SMALL}2`));
    q.push(job('buys', 'buys'));
    expect([1, 2, 3, 4, 5].map(() => q.next()?.name)).toEqual(['width', 'price', 'check', 'picture', 'buys']);
  });

  it('lets a waiting job be taken out, once', () => {
    const q = new Queue<ReturnType<typeof job>>();
    const a = job('a', 'a');
    q.push(a);
    expect([q.remove(a), q.remove(a)]).toEqual([true, false]);
    expect(q.next()).toBeUndefined();
  });
});

describe('the drawings a request is about', () => {
  it('are the one on the sheet of the design it picks, the one before it where they are compared, and one it names', () => {
    expect(drawingsOf({ drawing: 'd1' })).toEqual(['d1']);
    const picked = { design: 1, version: 0, project: { order: { designs: [{ drawings: [] }, { drawings: [{ id: 'd0' }, { id: 'd1' }, { id: 'd2' }] }] } } };
    expect(drawingsOf({ picked })).toEqual(['d2']);
    expect(drawingsOf({ picked, view: 'struck' })).toEqual(['d2']);
    expect(drawingsOf({ picked, view: 'changed' })).toEqual(['d1', 'd2']);
    expect(drawingsOf({ picked, drawing: 'd3' })).toEqual(['d2', 'd3']);
    expect(drawingsOf({ picked: { ...picked, design: 0 } })).toEqual([]);
    expect(drawingsOf({ project: picked.project })).toEqual(['d2']);
    expect(drawingsOf({})).toEqual([]);
  });
});
