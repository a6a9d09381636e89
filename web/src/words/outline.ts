// What is wrong with the outline of a pin, in words.

import type { Finding } from '../engine/wire.gen';
import { mm, mm2 } from './length';

/** The kinds that are of the outline. */
export type OutlineKind = 'loose-part' | 'grown-together' | 'weak-eye' | 'thin-bridge' | 'sharp-tip' | 'long-arm';

interface Words {
  measured: (f: Finding) => string;
  meaning: (f: Finding) => string;
}

const newtons = (v: number | undefined) => `${(v ?? 0).toFixed(v !== undefined && v < 10 ? 1 : 0)} N`;

export const OUTLINE_KINDS: Record<OutlineKind, string> = {
  'loose-part': 'A part stands alone',
  'grown-together': 'Parts grow together',
  'weak-eye': 'Eye too weak',
  'thin-bridge': 'Metal too thin to hold its shape',
  'sharp-tip': 'Sharp tip',
  'long-arm': 'Arm bends too easily',
};

const OUTLINE: Record<OutlineKind, Words> = {
  'loose-part': {
    measured: (f) => (f.count > 1 ? `${f.count} specks, ${mm2(f.area)} in all` : `${mm2(f.area)}, ${mm(f.thinnest, 2)} from the rest`),
    meaning: (f) => {
      if (f.verdict === 'holds') return 'Both parts were drawn with an eye, so they are taken to hang from each other by a ring or a chain. If that is not meant, join them.';
      if (f.count > 1) return 'Nothing this small can be made by itself. Take the specks out, or let them touch the pin.';
      return 'Nothing joins this part to the rest, and a pin is one piece of metal. Hang it from a ring, join it by a bridge of metal, or let it go.';
    },
  },
  'grown-together': {
    measured: (f) => `two eyes in one piece of metal, ${mm(f.thinnest)} apart`,
    meaning: () => 'These parts are to hang from each other, but their metal meets, so that nothing swings. Move one eye away from the other part, or let the pin be one piece.',
  },
  'weak-eye': {
    measured: (f) => {
      if (f.typical === 0) return 'no hole there for a ring';
      if (f.typical === f.thinnest) return `a hole of ${mm(f.thinnest, 2)}, a ring needs ${mm(f.limit, 2)}`;
      return `${mm(f.thinnest, 2)} of metal round the hole, ${mm(f.limit, 2)} needed`;
    },
    meaning: () => 'A ring pulls at its hole with every movement. Make the hole large enough to turn in, with enough metal round it that the eye does not tear or bend open.',
  },
  'thin-bridge': {
    measured: (f) => `${mm(f.thinnest, 2)} wide over ${mm(f.length)}, the maker holds ${mm(f.limit, 2)}`,
    meaning: () => 'Here the pin itself, not a line on it, is so narrow that it bends in the pocket or at the polishing wheel. Draw it wider, let it lie against its neighbour, or make the pin larger.',
  },
  'sharp-tip': {
    measured: (f) => `a radius of ${mm(f.thinnest, 2)}, its sides enclose ${f.angle ?? 0}°`,
    meaning: (f) =>
      f.verdict === 'holds'
        ? 'A slender point catches on cloth and wears bright first. It can be made; blunt it if the pin is for children or for knitwear.'
        : `A point sharper than a radius of ${mm(f.limit, 2)} pricks, and scratches what it is worn on. Round it: little is lost to the eye.`,
  },
  'long-arm': {
    measured: (f) => `${mm(f.length)} long and ${mm(f.thinnest, 2)} wide, bends at ${newtons(f.force)}`,
    meaning: (f) => `A finger that catches its end bends it for good. It would have to be ${mm(f.limit, 2)} wide; a thicker or stiffer metal, a shorter arm, or one that leans on the rest helps too. A larger pin does not; a much smaller one does, of which no finger gets hold.`,
  },
};

/** The words for a finding of the outline; nothing for any other. */
export function outlineWords(f: Finding): Words | undefined {
  return f.kind in OUTLINE ? OUTLINE[f.kind as OutlineKind] : undefined;
}
