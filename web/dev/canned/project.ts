// A project as the engine would propose it, for panels shown alone.
import type { Design, DrawingRef, PriceList, Project } from '../../src/engine/wire.gen';

export const LIST: PriceList = {
  id: 'skerry', name: 'Skerry Light, invented', invented: true, currency: 'EUR', minorDigits: 2,
  die: '75', sizes: [25, 32, 38, 50], sizeBy: 'longest',
  breaks: [
    { from: 50, unit: ['2.60', '2.90', '3.30', '4.20'] },
    { from: 100, unit: ['1.75', '1.95', '2.25', '2.90'] },
    { from: 300, unit: ['1.35', '1.50', '1.70', '2.20'] },
  ],
  included: 4, extraColour: { rate: '0.11', by: 'piece' }, hard: { rate: '20', by: 'percent' },
  fancy: { rate: '0.07', by: 'piece' }, printed: { rate: '0.1', by: 'piece' }, printSetUp: '20', secondPost: '0.12', backStamp: '14', shipping: '28', minimum: 50,
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
