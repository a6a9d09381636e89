// A project as the engine would propose it, for panels shown alone.
import type { Charge, Design, DrawingRef, KindCharge, Kinds, PriceList, Project } from '../../src/engine/wire.gen';

const apiece = (rate: string): Charge => ({ rate, by: 'piece' });
const others = (rate: string, listed: KindCharge[] = []): Kinds => ({ listed, others: apiece(rate) });

export const LIST: PriceList = {
  id: 'skerry', name: 'Skerry Light, invented', invented: true, currency: 'EUR', minorDigits: 2,
  pieces: {
    sizes: [25, 32, 38, 50], sizeBy: 'longest', together: 'version',
    breaks: [
      { from: 50, unit: ['2.60', '2.90', '3.30', '4.20'] },
      { from: 100, unit: ['1.75', '1.95', '2.25', '2.90'] },
      { from: 300, unit: ['1.35', '1.50', '1.70', '2.20'] },
    ],
  },
  least: { design: 50, version: 0 },
  die: { flat: '75', bySize: [], eachVersion: false, further: '50', keptMonths: 24 },
  metal: { making: others('0'), plating: others('0'), thick: [] },
  colours: {
    included: 4, further: apiece('0.11'), fill: others('0', [{ id: 'hard', charge: { rate: '20', by: 'percent' } }]),
    fancy: others('0.07'), printed: apiece('0.1'), printSetUp: '20',
  },
  shape: { cutOutsFree: 1, cutOut: apiece('0.05'), part: apiece('0.2'), ring: apiece('0.03'), chain: apiece('0.15') },
  back: { post: apiece('0.12'), kinds: others('0.25'), stamp: { rate: '14', by: 'set-up' } },
  pack: { dome: apiece('0.1'), packaging: others('0'), cardSetUp: '20', card: apiece('0.2') },
  proofs: { included: 2, further: '8' },
  delivery: { choices: [] },
  shipping: { by: 'flat', flat: '28', weights: [], further: '', classes: [] },
  fees: { duty: '0', dutyOnShipping: false, tax: '0', bankFee: '0', bankPercent: '0' },
  count: { over: '', overBilled: false, under: '', underBilled: false },
  named: [], notes: { faults: '', keeps: '', other: '' },
};

export const DESIGN: Design = {
  id: 'design-1', name: 'Skerry Light',
  drawings: [{ id: 'drawing-1', fileName: 'lighthouse.svg', ground: 'auto', revision: 1 }],
  colours: 5, edits: [], recipes: [{ kind: 'outer-edge', width: 0 }],
  size: { mm: 34, by: 'longest' }, making: 'struck', fill: 'soft',
  limits: { line: 0.2, area: 0.3, edge: 0.3, areaSize: 0.25, cutOut: 1.5, bridge: 1.5, lettering: 1.5, letteringSunk: 2, solid: 5, eye: 1.5, eyeRim: 1, tip: 0.3, tipAngle: 40, push: 5 },
  base: 'iron', thickness: 1.5, posts: 0,
  versions: [{ id: 'version-1', name: 'First', plating: 'gold', colours: [], quantity: 100 }],
};

export const BLANK: Project = {
  format: 1,
  order: { name: 'New order', designs: [DESIGN], priceLists: [LIST], priceList: LIST.id },
};

export const REVISIONS: DrawingRef[] = [
  ...DESIGN.drawings,
  {
    id: 'drawing-2', fileName: 'lighthouse-2.svg', ground: 'auto', revision: 2, differs: '2 places changed, 3.1 % of what is drawn', places: 2,
    lost: ['The name of lamp: the new drawing has no such colour.'],
  },
];
