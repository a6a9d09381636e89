import { describe, expect, it } from 'vitest';
import { HELLO, OPENED } from '../../dev/canned/answers';
import { DESIGN } from '../../dev/canned/project';
import { asPlanned, firstWish, keptText, planOf, readKept, remade } from './plan';

const KEPT = { mm: 45, making: 'cast', fill: 'hard' } as const;

describe('a plan that a device keeps', () => {
  it('is read back as it was kept', () => {
    expect(readKept(keptText(KEPT))).toEqual(KEPT);
  });

  it('is none when it is not one', () => {
    for (const text of [null, '', 'x', '3', '{}', '{"mm":0,"making":"cast","fill":"soft"}', '{"mm":"32","making":"cast","fill":"soft"}', '{"mm":32,"making":"carved","fill":"soft"}', '{"mm":32,"making":"cast","fill":"jam"}']) {
      expect(readKept(text)).toBeUndefined();
    }
  });
});

describe('the sheet before drawing', () => {
  it('starts with a usual pin, and with the plan once there is one', () => {
    const usual = HELLO.blank.order.designs[0];
    expect(firstWish(HELLO, undefined, undefined)).toMatchObject({ mm: usual?.size.mm, making: usual?.making, fill: usual?.fill, own: undefined });
    expect(firstWish(HELLO, undefined, { mm: 21, making: 'struck', fill: 'soft' })).toMatchObject({ mm: 21 });
  });

  it('works by the shop’s own limits where the pin is made the same way', () => {
    const own = { ...DESIGN, limits: { ...DESIGN.limits, line: 0.17 } };
    const wish = firstWish(HELLO, own, { mm: 30, making: own.making, fill: own.fill });
    expect(wish?.limits.line).toBe(0.17);
    const hard = HELLO.limits.find((l) => l.making !== own.making || l.fill !== own.fill);
    if (wish && hard) expect(remade(wish, hard, HELLO, own).limits).toEqual(hard.limits);
  });

  it('asks for the recommended canvas unless the artist has another', () => {
    const wish = firstWish(HELLO, undefined, undefined);
    expect(wish && planOf(wish)).toMatchObject({ w: 0, h: 0 });
    expect(wish && planOf({ ...wish, own: { w: 900, h: 700 } })).toMatchObject({ w: 900, h: 700 });
  });
});

describe('a drawing that was planned', () => {
  it('starts at the size, making and fill of its plan, and says so', () => {
    const o = asPlanned(OPENED, KEPT, HELLO, 'as planned');
    expect(o.design).toMatchObject({ size: { mm: 45, by: 'longest' }, making: 'cast', fill: 'hard' });
    expect(o.notes[0]).toBe('as planned');
    expect(o.design.drawings).toEqual(OPENED.design.drawings);
    expect(OPENED.design.size.mm).not.toBe(45);
  });
});
