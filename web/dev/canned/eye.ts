// What sight starts from, for panels seen alone.
import type { EyeUsual } from '../../src/engine/wire.gen';

export const EYE_USUAL: EyeUsual = {
  distances: [{ name: 'in the hand', mm: 400 }, { name: 'on the lapel', mm: 1000 }, { name: 'across a table', mm: 2000 }],
  acuity: 1, thresholds: { gap: 1, letter: 16, letterBest: 20, noticed: 5, colour: 10, metal: 20, lightness: 3 },
  cloths: [{ name: 'denim', rgb: { r: 62, g: 82, b: 112 } }, { name: 'undyed canvas', rgb: { r: 214, g: 203, b: 180 } }],
  leastDistance: 100, greatestDistance: 20000, leastAcuity: 0.05, greatestAcuity: 3,
};
