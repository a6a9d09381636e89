// A parcel of the invented shop, half counted, and its book.
import type { Flaw, Ledger, Parcel, StockLine } from '../../src/engine/wire.gen';
import type { CountProps } from '../../src/panels/ParcelCount';
import type { LedgerProps } from '../../src/panels/ParcelLedger';

const idle = () => undefined;

const FLAWS: Flaw[] = [
  { kind: 'missing', name: 'missing enamel', serious: false },
  { kind: 'dust', name: 'dust', serious: false },
  { kind: 'sharp', name: 'sharp edge', serious: true, caution: 'A sharp edge cuts. Keep such pieces from sale.' },
];

const PARCEL: Parcel = {
  id: 'parcel 1', maker: 'Skerry die works', arrived: '2027-03-03', agreed: 10, within: 7, sure: 95,
  rows: [
    { design: 'd', version: 'gold', name: 'Lighthouse, gold', ordered: 60, firsts: 35, flawed: [{ grade: 'second', flaw: 'dust' }, { grade: 'reject', flaw: 'sharp' }] },
    { design: 'd', version: 'silver', name: 'Lighthouse, silver', ordered: 40, firsts: 0 },
  ],
};

export const COUNT: CountProps = {
  parcel: PARCEL, at: 0, flaws: FLAWS, says: 'Not to tell yet: 2 of 37 flawed so far, so 2 to 12 of the 100 may be; 10 percent of 100 admits 10.',
  naming: false, canUndo: true, last: { grade: 'reject', flaw: 'sharp' }, photoFault: '',
  onVersion: idle, onTap: idle, onFlaw: idle, onUndo: idle, onComplete: idle, onPhoto: idle,
};

const line = (grade: StockLine['grade'], came: number, sold: number): StockLine => ({ grade, came, replacements: 0, gifts: 0, wholesale: 0, fair: 0, sold, left: came - sold });

const LEDGER: Ledger = {
  faults: [], makers: [{ maker: 'Skerry die works', parcels: 1, ordered: 60, graded: 60, firsts: 54, share: 90, lo: 79.5, hi: 96.2, short: 0, late: [2], says: '1 parcel; 90 percent firsts of 60 looked at (79 to 96); 2 days late.' }],
  stock: {
    says: '41 firsts left; at 3 a week, order again by Fri 12 Mar 2027.', notes: [],
    rows: [{
      design: 'd', version: 'gold', name: 'Lighthouse, gold', firsts: line('first', 54, 13), seconds: line('second', 6, 2), says: '',
      reorder: { out: '2027-04-26', by: '2027-03-12', early: '2027-02-20', late: '2027-05-04', ends: 'At the fast end of the pace order by Sat 20 Feb 2027, at the slow end by Tue 4 May 2027.', now: false, die: true, dieAge: 3, says: 'order again by Fri 12 Mar 2027' },
    }],
  },
};

export const STOCK: LedgerProps = {
  ledger: LEDGER, book: { moves: [{ day: '2027-02-20', design: 'd', version: 'gold', kind: 'sold', grade: 'first', count: 13 }], weeks: 8, leadDays: 45 },
  names: [{ design: 'd', version: 'gold', name: 'Lighthouse, gold' }], today: '2027-02-27', refused: '', byCalendar: false,
  onEnter: () => Promise.resolve(true), onOut: idle, onBook: idle, onAgain: idle,
};
