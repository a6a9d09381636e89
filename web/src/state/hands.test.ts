import { describe, expect, it } from 'vitest';
import { CHECK, FLATS } from '../../dev/canned/answers';
import { BLANK, DESIGN } from '../../dev/canned/project';
import type { Gap } from '../engine/wire.gen';
import { countFor, fillOf, moreByEdit, moreEnamels, roomForMore, splitOf, underOf, withArea, withBuilt, withKept, withoutProposed, withRecipe, type Seen, type Under } from './hands';
import { designOf } from './project';

const gap: Gap = { ends: [0.5, 0.4, 0.5, 0.45], width: { mm: 0.8, inches: 0.0315, inMM: '0.8 mm', inInches: '0.03 in' }, open: false };
const under = (u: Partial<Under> = {}): Under => ({ x: 0.25, y: 0.5, area: 12, width: 3, built: false, gap: undefined, lines: [], ...u });
const { flats } = CHECK;
const at = (i: number) => {
  const f = FLATS[i];
  if (!f) throw new Error('canned flats');
  return f;
};
const [night, lamp, ink] = [at(0), at(4), at(5)]; // three areas, one area, metal
const pink = { r: 250, g: 150, b: 160 };

describe('an area filled', () => {
  it('is an edit at its place, in shares, with the count that was shown', () => {
    const touch = { hit: true, flat: 0, area: 12, width: 3, built: false };
    expect(underOf(touch, 200, 500, flats)).toEqual(under());
    expect(fillOf(under(), night, { role: 'enamel', rgb: pink }, false, 5)).toEqual({ op: 'fill', flat: 0, x: 0.25, y: 0.5, role: 'enamel', rgb: pink, count: 5 });
    expect(fillOf(under(), undefined, { role: 'cutout' }, false, 5)).toEqual({ op: 'fill', flat: 0, x: 0.25, y: 0.5, role: 'cutout', count: 5 });
  });

  it('stops at the gap and at drawn lines', () => {
    const lines = [{ points: [[0, 0], [1, 1]] as [number, number][], width: 0.01 }];
    expect(fillOf(under({ gap, lines }), night, { role: 'metal' }, true, 5)).toMatchObject({ gap: gap.ends, lines });
    expect(fillOf(under({ gap, lines }), night, { role: 'metal' }, false, 5)).not.toHaveProperty('gap');
    expect(splitOf(under({ gap, lines }), night, true, 5)).toEqual({ op: 'split', flat: 0, x: 0.25, y: 0.5, gap: gap.ends, lines, count: 5 });
  });

  it('is one step with the line that closes the gap and the count it needs', () => {
    const edit = fillOf(under({ gap }), night, { role: 'enamel', rgb: pink }, true, 5);
    const d = designOf(withArea(BLANK, edit, 6, gap));
    expect(d?.edits).toEqual([...DESIGN.edits, edit]);
    expect(d?.colours).toBe(6);
    expect(d?.recipes.at(-1)).toEqual({ kind: 'draw-line', width: 0, points: [[0.5, 0.4], [0.5, 0.45]] });
    expect(designOf(withArea(BLANK, edit, 6, undefined))?.recipes).toEqual(DESIGN.recipes);
  });
});

describe('the count of enamels', () => {
  const enamel = (rgb = pink) => ({ role: 'enamel' as const, rgb });

  it('grows by a colour that is not there yet', () => {
    expect(moreEnamels(flats, night, under(), enamel(), false)).toBe(1);
    expect(moreEnamels(flats, night, under(), enamel(lamp.rgb), false)).toBe(0);
    expect(moreEnamels(flats, undefined, under({ gap }), enamel(), true)).toBe(1);
    expect(moreEnamels(flats, night, under(), { role: 'metal' }, false)).toBe(0);
  });

  it('falls with the last area of one', () => {
    expect(moreEnamels(flats, lamp, under(), enamel(), false)).toBe(0);
    expect(moreEnamels(flats, lamp, under(), enamel(night.rgb), false)).toBe(-1);
    expect(moreEnamels(flats, lamp, under(), { role: 'cutout' }, false)).toBe(-1);
    expect(moreEnamels(flats, lamp, under({ gap }), enamel(night.rgb), true)).toBe(0);
    expect(moreEnamels(flats, lamp, under({ lines: [{ points: [], width: 0 }] }), enamel(night.rgb), false)).toBe(0);
    expect(moreEnamels(flats, ink, under(), { role: 'enamel' }, false)).toBe(1);
  });

  it('changes with the role of a flat, and with a join', () => {
    const role = (r: 'enamel' | 'metal' | 'printed') => ({ op: 'role' as const, flat: 0, role: r });
    expect([moreByEdit(ink, role('enamel')), moreByEdit(lamp, role('metal')), moreByEdit(lamp, role('enamel')), moreByEdit(ink, role('printed'))]).toEqual([1, -1, 0, 0]);
    expect([moreByEdit(lamp, { op: 'join', flat: 4, with: 0 }), moreByEdit(ink, { op: 'join', flat: 5, with: 0 })]).toEqual([-1, 0]);
    expect(moreByEdit(lamp, { op: 'name', flat: 4, name: 'lamp' })).toBe(0);
  });

  it('goes by the colour drawn, not by that of a code', () => {
    const painted = { ...flats, flats: flats.flats.map((f) => (f.id === lamp.id ? { ...f, rgb: pink } : f)), codes: [{ flat: lamp.id, code: 'A', named: '', drawn: lamp.rgb }] };
    expect(moreEnamels(painted, night, under(), enamel(lamp.rgb), false)).toBe(0);
    expect(moreEnamels(painted, night, under(), enamel(pink), false)).toBe(1);
  });

  it('is asked for so that no other colour gives way', () => {
    const seen = (asked: number, most = 12): Seen => ({ flats, asked, most }); // five are shown
    expect(countFor(seen(5), 1)).toBe(6);
    expect(countFor(seen(9), 1)).toBe(9);
    expect(countFor(seen(5), -1)).toBe(4);
    expect(countFor(seen(9), -1)).toBe(9);
    expect(countFor(seen(5, 5), 1)).toBe(5);
    expect(roomForMore(seen(5, 5), night, under())).toBe(false);
    expect(roomForMore(seen(5, 5), lamp, under())).toBe(true);
    expect(roomForMore(seen(5, 5), lamp, under({ gap }))).toBe(false);
    expect(roomForMore(seen(5), undefined, under())).toBe(true);
  });
});

describe('built metal', () => {
  it('lies before what was done by hand, wherever it is changed', () => {
    const erased = { kind: 'erase-line' as const, width: 1, points: [[0, 0], [1, 1]] as [number, number][] };
    const p = withRecipe(BLANK, erased);
    const all = withBuilt(designOf(p)?.recipes ?? [], 'build-lines', 0.3);
    expect(all.map((r) => r.kind)).toEqual(['outer-edge', 'build-lines', 'erase-line']);
    expect(withBuilt(all, 'outer-edge', 0.5)).toEqual([{ kind: 'outer-edge', width: 0.5 }, ...all.slice(1)]);
    expect(withBuilt([], 'outer-edge', 0)).toEqual([{ kind: 'outer-edge', width: 0 }]);
  });

  it('stays proposed at another width, until it is kept or left out', () => {
    const all = withBuilt([{ kind: 'outer-edge', width: 0, proposed: true }, { kind: 'build-lines', width: 0.3 }], 'outer-edge', 0.5);
    expect(all[0]).toEqual({ kind: 'outer-edge', width: 0.5, proposed: true });
    expect(withKept(all)).toEqual([{ kind: 'outer-edge', width: 0.5 }, { kind: 'build-lines', width: 0.3 }]);
    expect(withoutProposed(all)).toEqual([{ kind: 'build-lines', width: 0.3 }]);
  });
});
