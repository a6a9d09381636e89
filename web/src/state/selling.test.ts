import { describe, expect, it } from 'vitest';
import { BLANK, DESIGN, LIST } from '../../dev/canned/project';
import type { Channel, Guess, Left, OrderItems, OrderUsual, PricedOrder, Selling } from '../engine/wire.gen';
import { marks, rowsOf, takeSays } from '../words/selling';
import { valueAt } from '../widgets/MoneyChart';
import { apart, goalsOf, itemsAt, orderGuess, presaleEach, stakeFrom } from './selling';
import * as plans from './sellingPlan';
import type { Place } from './project';
import { withTerms } from './bill';

const FIRST: Place = { design: 0, version: 0 };

const channel = (change: Partial<Channel>): Channel => ({
  kind: 'online', name: 'Online', share: '50', price: '0', pieces: 0, cut: '0', feePercent: '6.5', feeFixed: '0.3', once: '0', posted: true, postPaid: '2.5',
  others: '0', othersGrams: 0, given: '0', givenOf: 'left', taxed: false, ...change,
});

const USUAL: Selling = {
  currency: 'EUR', minorDigits: 2, pieces: 100, bill: '0', price: '11', secondsShare: '10', secondsOff: '50', secondsBy: 0,
  tax: { percent: '20', included: true, onPosting: true }, grams: 12, mm: 9, classes: [{ name: 'letter', grams: 20, mm: 5, price: '1.1' }],
  packing: { envelope: '0.24', card: '0.15', bag: '0.03', envelopeGrams: 8, cardGrams: 3, bagGrams: 1, envelopeMM: 2 },
  channels: [channel({}), channel({ kind: 'fair', name: 'Fairs', share: '20', once: '60', posted: false })],
};
const GUESS: Guess = { kind: 'three', low: 30, likely: 80, high: 160, orders: 0, daysGone: 0, daysLeft: 14, prior: { orders: 1, days: 1 } };
const KNOWN = { selling: USUAL, guess: GUESS, presale: { closes: '', payout: 14, posting: 3, carriage: 7 } } as unknown as OrderUsual;
const two = { ...BLANK, order: { ...BLANK.order, designs: [{ ...DESIGN, versions: [...DESIGN.versions, { ...DESIGN.versions[0]!, id: 'night', name: 'Night', quantity: 40 }] }] } };

describe('the plan', () => {
  it('is the proposal until something is changed, and follows what the order says', () => {
    expect(plans.leftPlan(BLANK, USUAL, FIRST)).toMatchObject({ grams: 0, secondsShare: '10', packing: { card: '0.15' } });
    expect(plans.leftPlan(withTerms(BLANK, { seconds: 7 }), USUAL, FIRST).secondsShare).toBe('7');
    const carded = { ...BLANK, order: { ...BLANK.order, designs: [{ ...DESIGN, extras: { card: true } }] } };
    expect(plans.leftPlan(carded, USUAL, FIRST).packing.card).toBe('0');
    const own = plans.withLeft(BLANK, USUAL, FIRST, (q) => plans.withChannel(q, 1, { share: '30' }));
    expect(plans.leftPlan(withTerms(own, { seconds: 7 }), USUAL, FIRST).secondsShare).toBe('10');
    expect(BLANK.plans).toBeUndefined();
  });

  it('says which figures are still invented', () => {
    expect(plans.stillInvented(USUAL, USUAL)).toEqual(['the price', 'fees and costs of Online, Fairs', 'post', 'packing', 'seconds']);
    const own = plans.withChannel({ ...USUAL, price: '12' }, 0, { feePercent: '7', posted: false });
    expect(plans.stillInvented(own, USUAL)).toEqual(['fees and costs of Fairs', 'packing', 'seconds']);
  });

  it('keeps seconds with their channel when another goes', () => {
    const by = { ...USUAL, secondsBy: 1 };
    expect(plans.withoutChannel(by, 0).secondsBy).toBe(0);
    expect(plans.withoutChannel(by, 1).secondsBy).toBe(-1);
    const more = plans.withMore(USUAL, USUAL, 'fair');
    expect(more.channels[2]).toMatchObject({ name: 'Fairs 2', share: '0', once: '60' });
  });
});

describe('guesses and stakes', () => {
  it('belong to a version, and outlive a change of another', () => {
    const night = { design: 0, version: 1 };
    const p = plans.withGuess(plans.withGuess(two, night, GUESS, { low: 5 }), FIRST, GUESS, { high: 200 });
    expect(plans.guessOf(p, night, GUESS)).toEqual({ ...GUESS, low: 5 });
    expect(plans.guessOf(p, FIRST, GUESS).high).toBe(200);
    expect([plans.guessed(p, FIRST), plans.guessed(two, FIRST)]).toEqual([true, false]);
  });

  it('follow from what is left unless the person says their own', () => {
    const after = { faults: [], plan: USUAL, left: { each: '7.35', second: '3.1', rows: [{ kind: 'fair', count: 5, before: '9' }, { kind: 'online', count: 5, before: '8.2' }] } } as unknown as Left;
    expect(stakeFrom(BLANK, after)).toMatchObject({ each: '7.35', second: '3.1', leftover: '0', secondsShare: '10' });
    const own = plans.withStake(BLANK, 'each', '6');
    expect(stakeFrom(own, after)?.each).toBe('6');
    expect(plans.withStake(own, 'each', undefined).plans?.selling?.stake).toEqual({});
    expect(stakeFrom(BLANK, { faults: [], plan: USUAL })).toBeUndefined();
    expect(presaleEach(BLANK, KNOWN, after)).toBe('8.2');
    expect(presaleEach(own, KNOWN, after)).toBe('6');
    expect(presaleEach(plans.withPresale(own, KNOWN, (q) => plans.withPresaleEach(q, '5')), KNOWN, after)).toBe('5');
  });

  it('forecast from orders only once there are any', () => {
    expect(orderGuess(GUESS)).toBeUndefined();
    expect(orderGuess({ ...GUESS, orders: 3, daysGone: 2 })?.kind).toBe('orders');
  });
});

describe('what is asked', () => {
  const items: OrderItems = { order: { items: [], terms: { delivery: '', shipping: '', rounds: 0, seconds: 0, free: 0 } }, places: [{ design: 1, version: 0 }, { design: 0, version: 0 }, { design: 0, version: 1 }], left: [] };

  it('names the items of the design on the sheet', () => {
    expect(itemsAt(items, two, FIRST)).toEqual([1, 2]);
    expect([apart(LIST, 2), apart(LIST, 1), apart({ ...LIST, pieces: { ...LIST.pieces, together: 'order' } }, 2)]).toEqual([true, false, false]);
  });

  it('gives a goal priced alike a die of its own', () => {
    const pin = { design: 'Skerry Light', die: '', newDie: false, dieAge: 8, quantity: 100 };
    const priced = { list: LIST, order: { ...items.order, items: [pin] } } as unknown as PricedOrder;
    const plan = { days: KNOWN.presale, goals: [{ name: 'Buoy', quantity: 50, alike: true, each: '0', once: '0' }, { name: 'Bell', quantity: 60, alike: false, each: '3', once: '80' }] };
    const [buoy, bell] = goalsOf(plan, priced, 0);
    expect(buoy?.bill.priced?.order.items).toEqual([{ ...pin, design: 'Buoy', die: 'goal Buoy', newDie: true, dieAge: 0 }]);
    expect(bell?.bill).toEqual({ steps: [{ from: 1, each: '3', once: '80' }], items: [] });
  });

  it('takes quantities for the versions of one design', () => {
    expect(plans.withQuantities(two, 0, [50, 20]).order.designs[0]?.versions.map((v) => v.quantity)).toEqual([50, 20]);
    expect(takeSays([50, 20], ['Day', 'Night'])).toBe('Order 50 of Day, 20 of Night');
    expect(takeSays([1], [''])).toBe('Order 1 pin');
  });
});

describe('the charts', () => {
  it('have even marks from below 0', () => {
    expect(marks(-360, 420)).toEqual([-200, 0, 200, 400]);
    expect(marks(0, 100)).toEqual([0, 20, 40, 60, 80, 100]);
    expect(marks(0, 0)).toEqual([0]);
  });

  it('put a mark on the line', () => {
    const line = [{ n: 0, v: -10 }, { n: 10, v: 10 }];
    expect([valueAt(line, 5), valueAt(line, 12), valueAt([], 3)]).toEqual([0, 10, 0]);
  });

  it('have the best order among the rows once', () => {
    const r = (quantity: number) => ({ quantity }) as never;
    expect(rowsOf({ best: r(50), rows: [r(25), r(50), r(100)] } as never).map((o) => o.quantity)).toEqual([25, 50, 100]);
  });
});
