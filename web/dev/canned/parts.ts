// A pin in two parts as the engine would answer of it, hung by a chain.
import type { HangingEye, HeldParts, Length } from '../../src/engine/wire.gen';

const length = (mm: number): Length => ({ mm, inches: mm / 25.4, inMM: `${mm} mm`, inInches: `${(mm / 25.4).toFixed(2)} in` });

const eye = (x: number, y: number): HangingEye => ({ x, y, across: 24, rim: 16, drawn: false, left: length(6.3), top: length(Math.round(y / 1.6) / 10), room: '', problem: '' });

export const PARTS: HeldParts = {
  count: 2, choice: 'dangle', loose: 1, says: '2 parts; one hangs from nothing.',
  joins: [{
    upper: eye(300, 310), lower: { ...eye(300, 400), room: 'off', problem: 'It stands on no part. Move it onto one, or to its edge.' },
    ring: length(3), links: 2, drop: length(11.7), loops: [], says: 'It hangs 9.7 mm from eye to eye, 2.1 mm lower than drawn.',
    problem: 'Rings of 3 mm do not go round 1 mm of metal and what else hangs in them. Take larger ones.',
  }],
};
