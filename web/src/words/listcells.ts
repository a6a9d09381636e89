// The cells of a price list as the page lays them out, group by group. Places
// are those of the engine; what a cell holds and how it is typed stands beside.
export type CellKind = 'amount' | 'percent' | 'count' | 'mm' | 'grams' | 'text' | 'flag' | 'pick' | 'charge';

export interface Cell {
  at: string;
  label: string;
  as: CellKind;
  /** What may be picked, and its words. */
  options?: readonly (readonly [string, string])[];
  unit?: string;
  /** 0 is not said, and shown so. */
  unsaid?: boolean;
}

/** Any number of alike rows; their cells are placed below the row. */
export interface Rows {
  rows: string;
  title: string;
  columns: readonly Cell[];
  blank: unknown;
  /** What one row is called. */
  one: string;
}

export interface Group {
  id: string;
  title: string;
  parts: readonly (Cell | Rows)[];
}

export const isRows = (p: Cell | Rows): p is Rows => 'rows' in p;

const amount = (at: string, label: string): Cell => ({ at, label, as: 'amount' });
const percent = (at: string, label: string): Cell => ({ at, label, as: 'percent' });
const count = (at: string, label: string, unit?: string): Cell => ({ at, label, as: 'count', ...(unit ? { unit } : {}) });
const said = (at: string, label: string, unit?: string): Cell => ({ ...count(at, label, unit), unsaid: true });
const charge = (at: string, label: string): Cell => ({ at, label, as: 'charge' });
const text = (at: string, label: string): Cell => ({ at, label, as: 'text' });
const flag = (at: string, label: string): Cell => ({ at, label, as: 'flag' });
const pick = (at: string, label: string, options: Cell['options'] = []): Cell => ({ at, label, as: 'pick', options });

/** The kinds of one thing: those listed, and every other. */
const kinds = (at: string, title: string, one: string): (Cell | Rows)[] => [
  charge(`${at}.others`, `${title}, every other`),
  { rows: `${at}.listed`, title, one, columns: [text('id', 'kind'), charge('charge', 'on top')], blank: { id: '', charge: { rate: '', by: 'piece' } } },
];

/** The prices by size and number have a table of their own between the first
 * group and the rest. */
export const GROUPS: readonly Group[] = [
  {
    id: 'die', title: 'The die, and the fewest pieces',
    parts: [
      amount('die.flat', 'die, once'), amount('die.further', 'each further die of a design'),
      said('die.keptMonths', 'kept for reorders', 'months'), flag('die.eachVersion', 'a die for every version'),
      said('least.design', 'fewest of a design', 'pins'), said('least.version', 'fewest of a version', 'pins'),
    ],
  },
  {
    id: 'colours', title: 'Colours, finishes and print',
    parts: [
      count('colours.included', 'enamels in the price'), charge('colours.further', 'each further enamel'),
      charge('colours.printed', 'each colour printed on top'), amount('colours.printSetUp', 'print set-up, each colour, once'),
      ...kinds('colours.fill', 'Fill', 'fill'), ...kinds('colours.fancy', 'Fancy fill', 'fancy fill'),
      ...kinds('metal.making', 'Making', 'making'), ...kinds('metal.plating', 'Plating', 'plating'),
      { rows: 'metal.thick', title: 'Thicker metal', one: 'thickness', columns: [{ at: 'from', label: 'from', as: 'mm' }, charge('charge', 'on top')], blank: { from: 2, charge: { rate: '', by: 'piece' } } },
    ],
  },
  {
    id: 'parts', title: 'Parts and fasteners',
    parts: [
      count('shape.cutOutsFree', 'cut-outs in the price'), charge('shape.cutOut', 'each further cut-out'),
      charge('shape.part', 'each further part'), charge('shape.ring', 'each ring'), charge('shape.chain', 'each chain'),
      charge('back.post', 'each post beside the first'), charge('back.stamp', 'stamp on the back'),
      ...kinds('back.kinds', 'Fastening', 'fastening'),
    ],
  },
  {
    id: 'pack', title: 'Packing and card',
    parts: [
      charge('pack.dome', 'clear dome'), charge('pack.card', 'backing card'), amount('pack.cardSetUp', 'card set-up, once'),
      ...kinds('pack.packaging', 'Packaging', 'packaging'),
    ],
  },
  {
    id: 'delivery', title: 'Proofs and delivery',
    parts: [
      said('proofs.included', 'proof rounds in the price'), amount('proofs.further', 'each further round'),
      {
        rows: 'delivery.choices', title: 'Ways of delivery, the usual one first', one: 'way of delivery',
        columns: [text('name', 'name'), said('days', 'working days'), percent('off', 'cheaper by'), percent('more', 'dearer by'), pick('on', 'of', [['pieces', 'the pieces'], ['all', 'all before carriage']]), amount('fee', 'fee, once')],
        blank: { name: '', days: 0, off: '', more: '', on: 'pieces', fee: '' },
      },
    ],
  },
  {
    id: 'carriage', title: 'Carriage and duty',
    parts: [
      pick('shipping.by', 'carriage goes by', [['flat', 'one price'], ['weight', 'weight'], ['class', 'service']]),
      amount('shipping.flat', 'one price, once'), amount('shipping.further', 'each kg past the last weight'),
      { rows: 'shipping.weights', title: 'By weight', one: 'weight', columns: [{ at: 'upTo', label: 'up to', as: 'grams' }, amount('rate', 'charge')], blank: { upTo: 500, rate: '' } },
      { rows: 'shipping.classes', title: 'By service', one: 'service', columns: [text('name', 'name'), said('days', 'working days'), amount('rate', 'charge')], blank: { name: '', days: 0, rate: '' } },
      percent('fees.duty', 'duty'), flag('fees.dutyOnShipping', 'duty on the carriage as well'), percent('fees.tax', 'tax'),
      amount('fees.bankFee', 'bank fee, once'), percent('fees.bankPercent', 'bank fee'),
    ],
  },
  {
    id: 'other', title: 'Other charges, more or fewer pieces',
    parts: [
      {
        rows: 'named', title: 'Charges of any other name', one: 'charge',
        columns: [text('name', 'name'), amount('rate', 'charge'), pick('by', 'for each', [['order', 'order'], ['piece', 'piece'], ['colour', 'enamel'], ['design', 'design']])],
        blank: { name: '', rate: '', by: 'order' },
      },
      percent('count.over', 'pieces too many, at most'), flag('count.overBilled', 'they are billed'),
      percent('count.under', 'pieces missing, at most'), flag('count.underBilled', 'they are billed all the same'),
    ],
  },
  {
    id: 'notes', title: 'What is not price',
    parts: [text('notes.faults', 'faulty pieces'), text('notes.keeps', 'what the maker keeps'), text('notes.other', 'other')],
  },
];
