import { expect, it } from 'vitest';
import { BLANK } from '../../dev/canned/project';
import type { ColourEntry } from '../engine/wire.gen';
import { colourOf, withCodes, withColourList, withFinish, withHandEdit, withoutCode } from './colouring';
import { versionOf } from './project';

const red: ColourEntry = { code: 'SL-32', name: 'Signal red', rgb: { r: 196, g: 51, b: 43 } };
const blue: ColourEntry = { code: 'SL-54', name: '', rgb: { r: 31, g: 78, b: 140 } };
const of = (p: typeof BLANK, flat: number) => colourOf(versionOf(p), flat);

it('notes a code and leaves the colour', () => {
  const p = withCodes(BLANK, [{ flat: 3, entry: red }], false);
  expect(of(p, 3)).toEqual({ flat: 3, code: 'SL-32', named: 'Signal red' });
  expect(versionOf(BLANK)?.colours).toEqual([]);
});

it('takes the colour with the code, and another code takes its place', () => {
  const p = withCodes(BLANK, [{ flat: 3, entry: red }], true);
  expect(of(p, 3)?.rgb).toEqual(red.rgb);
  const q = withCodes(p, [{ flat: 3, entry: blue }, { flat: 1, entry: red }], false);
  expect(of(q, 3)).toEqual({ flat: 3, code: 'SL-54' });
  expect(of(q, 1)?.code).toBe('SL-32');
  expect(versionOf(q)?.colours).toHaveLength(2);
});

it('takes a code off with its colour', () => {
  const p = withCodes(BLANK, [{ flat: 3, entry: red }, { flat: 1, entry: blue }], true);
  expect(versionOf(withoutCode(p, 3))?.colours.map((c) => c.flat)).toEqual([1]);
});

it('lets a colour given by hand win over that of a code', () => {
  const p = withCodes(BLANK, [{ flat: 3, entry: red }], true);
  const q = withHandEdit(p, { op: 'recolour', flat: 3, rgb: { r: 1, g: 2, b: 3 } });
  expect(of(q, 3)).toEqual({ flat: 3, code: 'SL-32', named: 'Signal red' });
  expect(of(withHandEdit(p, { op: 'name', flat: 3, name: 'tower' }), 3)?.rgb).toEqual(red.rgb);
});

it('puts a list into the order and takes it out; codes stay', () => {
  const p = withCodes(withColourList(BLANK, { name: 'Skerry', entries: [red] }), [{ flat: 3, entry: red }], false);
  expect(p.order.colourList?.name).toBe('Skerry');
  const q = withColourList(p, undefined);
  expect('colourList' in q.order).toBe(false);
  expect(of(q, 3)?.code).toBe('SL-32');
});

it('keeps a finish through codes and colours, and drops it when plain', () => {
  const p = withFinish(withCodes(BLANK, [{ flat: 3, entry: red }], true), 3, 'pearl');
  expect(of(p, 3)).toEqual({ flat: 3, code: 'SL-32', named: 'Signal red', rgb: red.rgb, finish: 'pearl' });
  expect(of(withCodes(p, [{ flat: 3, entry: blue }], false), 3)).toEqual({ flat: 3, code: 'SL-54', finish: 'pearl' });
  expect(of(withoutCode(p, 3), 3)).toEqual({ flat: 3, finish: 'pearl' });
  expect(versionOf(withFinish(withoutCode(p, 3), 3, ''))?.colours).toEqual([]);
});
