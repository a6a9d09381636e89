// What a maker can hold, in words.
import type { Limits } from '../engine/wire.gen';

export interface LimitRow {
  key: keyof Limits;
  label: string;
  unit: 'mm' | 'mm²' | 'N' | '°';
  /** It may be switched off. */
  off?: true;
}

/** What is typed to leave a thing unlooked at. */
export const OFF = 'off';

export const LIMIT_GROUPS: readonly { name: string; rows: readonly LimitRow[] }[] = [
  {
    name: 'Lines and areas',
    rows: [
      { key: 'line', label: 'thinnest metal line', unit: 'mm' },
      { key: 'area', label: 'narrowest colour area', unit: 'mm' },
      { key: 'edge', label: 'outer edge', unit: 'mm' },
      { key: 'areaSize', label: 'smallest colour area', unit: 'mm²' },
      { key: 'lettering', label: 'lowest capitals, raised', unit: 'mm', off: true },
      { key: 'letteringSunk', label: 'lowest capitals, sunk', unit: 'mm', off: true },
      { key: 'solid', label: 'widest bare metal', unit: 'mm', off: true },
    ],
  },
  {
    name: 'Outline',
    rows: [
      { key: 'cutOut', label: 'smallest cut-out', unit: 'mm' },
      { key: 'bridge', label: 'narrowest bridge', unit: 'mm' },
      { key: 'tip', label: 'least radius of a tip', unit: 'mm', off: true },
      { key: 'tipAngle', label: 'tips noted below', unit: '°', off: true },
      { key: 'push', label: 'push that an arm stands', unit: 'N', off: true },
    ],
  },
  {
    name: 'Parts that hang',
    rows: [
      { key: 'eye', label: 'hole for a ring', unit: 'mm' },
      { key: 'eyeRim', label: 'metal round that hole', unit: 'mm' },
    ],
  },
];
