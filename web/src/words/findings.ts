// What a trouble spot is called, what was measured there and what it means for
// the pin, for one who draws.
import type { Finding, Flat } from '../engine/wire.gen';
import { mm, mm2 } from './length';
import { OUTLINE_KINDS, outlineWords } from './outline';

const OUTSIDE = -2;

const KIND_WORDS: Record<Finding['kind'], string> = {
  'thin-line': 'Line too thin',
  'narrow-area': 'Area too narrow',
  'fades-out': 'Runs out to a point',
  'rounded-corners': 'Sharp corners come out round',
  'no-line': 'No line between colours',
  'no-edge': 'No outer edge',
  gap: 'Gap in a line',
  'open-area': 'Open to the outside',
  'small-area': 'Area too small',
  pinhole: 'Pinhole in the metal',
  'metal-island': 'Speck of metal',
  'solid-metal': 'Large bare metal',
  'small-lettering': 'Lettering too small',
  'small-cut-out': 'Cut-out too small',
  'clutch-shows': 'Clutch shows',
  ...OUTLINE_KINDS,
};

/** The flats of a finding: the one it lies in, and the one beyond its border. */
export interface Sides {
  flat: Flat | undefined;
  other: Flat | undefined;
}

const many = (f: Finding, word: string, words = `${word}s`) => `${f.count} ${f.count === 1 ? word : words}`;

export function kindWords(f: Finding): string {
  if (f.kind === 'gap' && f.other === OUTSIDE) return 'Gap in the outer edge';
  if (f.kind === 'pinhole' && f.count > 1) return 'Pinholes in the metal';
  if (f.kind === 'metal-island' && f.count > 1) return 'Specks of metal';
  if (f.kind === 'loose-part' && f.count > 1) return 'Specks stand alone';
  if (f.kind === 'loose-part' && f.verdict === 'holds') return 'A part hangs';
  if (f.kind === 'sharp-tip' && f.verdict === 'holds') return 'Pointed tip';
  const word = KIND_WORDS[f.kind];
  return f.verdict === 'cannot-tell' ? unsure(word) : word;
}

function unsure(word: string): string {
  return word.includes('too') ? word.replace('too', 'perhaps too') : `${word}, perhaps`;
}

/** What to make of more trouble spots than anybody reads. */
export function manyWords(all: readonly Finding[]): string {
  const counts = new Map<string, number>();
  for (const f of all) counts.set(kindWords(f), (counts.get(kindWords(f)) ?? 0) + 1);
  const [kind, n] = [...counts].reduce((a, b) => (b[1] > a[1] ? b : a), ['', 0]);
  return `${all.length} places, ${n} of them “${kind.toLowerCase()}”. So many mostly come from grain or texture in the picture, or from too small a size: enamel is flat, so try fewer colours, a larger pin, or a drawing without the texture.`;
}

export function measuredWords(f: Finding): string {
  const outline = outlineWords(f);
  if (outline) return outline.measured(f);
  switch (f.kind) {
    case 'no-line':
    case 'no-edge':
      return `${mm(f.length)} long${f.count > 1 ? ` in ${f.count} places` : ''}, ${mm(f.limit, 2)} of metal needed`;
    case 'gap':
      return f.count > 1 ? `${f.count} places, the narrowest ${mm(f.thinnest, 2)} open` : `${mm(f.thinnest, 2)} open, in metal about ${mm(f.typical, 2)} wide`;
    case 'open-area':
      return `${mm2(f.area)} behind an opening of ${mm(f.thinnest, 2)}`;
    case 'fades-out':
      return f.count > 1 ? `${f.count} points come out shorter, by up to ${mm(f.length)}` : `its end comes out about ${mm(f.length)} shorter`;
    case 'rounded-corners':
      return `${many(f, 'corner')}, ${mm2(f.area)} lost in all`;
    case 'small-area':
      return `about ${mm(f.thinnest, 2)} square, the maker holds ${mm(f.limit, 2)} square`;
    case 'pinhole':
      return `${f.count > 1 ? `${many(f, 'hole')}, the smallest` : 'about'} ${mm(f.thinnest, 2)} square`;
    case 'metal-island':
      return `${f.count > 1 ? `${many(f, 'speck')}, the smallest` : 'about'} ${mm(f.thinnest, 2)} across, the maker holds ${mm(f.limit, 2)}`;
    case 'solid-metal':
      return `${mm2(f.area)} of metal with nothing in it${f.count > 1 ? ` in ${f.count} places` : ''}, ${mm(f.thinnest)} across`;
    case 'small-lettering':
      return `${many(f, 'letter')} ${mm(f.thinnest, 2)} high, the maker holds ${mm(f.limit, 2)}`;
    case 'clutch-shows':
      return `by ${mm(f.typical)}, on metal ${mm(2 * f.thinnest)} broad`;
    case 'small-cut-out':
      return `${f.count > 1 ? `${many(f, 'hole')}, the smallest ` : ''}${mm(f.thinnest, 2)} across, the maker cuts ${mm(f.limit, 2)}`;
    default:
      return `${mm(f.thinnest, 2)} at the thinnest, the maker holds ${mm(f.limit, 2)}`;
  }
}

export function meaningWords(f: Finding, { flat, other }: Sides): string {
  const colour = flat ? ` of ${flat.name}` : '';
  if (f.verdict === 'cannot-tell') {
    return `The drawing is too coarse to say. Bring one of at least ${f.needPx} px on its long side.`;
  }
  const outline = outlineWords(f);
  if (outline) return outline.meaning(f);
  switch (f.kind) {
    case 'thin-line':
      return 'A wall this thin may break off in the die or vanish under polish. Make the pin larger, or draw the line thicker.';
    case 'narrow-area':
      return `The enamel${colour} cannot flow into a gap this narrow; it will stay bare or spill over. Make it wider, or let it be metal.`;
    case 'fades-out':
      return flat?.role === 'enamel'
        ? `The enamel${colour} cannot reach into a point this long: nothing spoils, but its colour will end sooner than drawn. Blunt it if its length matters.`
        : 'A point this long fades away in metal: nothing breaks, but it will end sooner than drawn. End it where it is marked, or thicken it there, if its length matters.';
    case 'rounded-corners':
      return 'No tool cuts a corner sharper than its own width, so the tips of these corners come out a little rounder than drawn. Nothing to mend; the marked one loses most.';
    case 'no-line':
      return `${meeting(flat, other)} meet with no metal between them and would run into each other. Let a line be built there.`;
    case 'gap':
      return f.other === OUTSIDE
        ? `The outer edge is broken here, and the enamel${colour} would run out. Close the gap.`
        : `The line stops and goes on again. Through the opening ${meeting(flat, other).toLowerCase()} would run into each other. Close the gap.`;
    case 'open-area':
      return 'Its outline does not close, so it counts as background and would be cut away, through an opening too narrow to cut. Close the outline and give it a colour, or open it wider if it is meant to be a notch.';
    case 'small-area':
      return `There is too little room for a drop of enamel${colour}. Make it larger, join it with its neighbour, or print it.`;
    case 'pinhole':
      return 'A hole this small cannot be filled or cut, and plating will close it or leave a pit. Let it be metal.';
    case 'metal-island':
      return 'A speck this small has no hold in the die: it wears off or is polished away. Take it out, make it larger, or print it.';
    case 'solid-metal':
      return 'Large bare metal shows every scratch and every ripple of the polish. It can be made; some texture, a pattern of lines or a fill would look better.';
    case 'small-lettering':
      return 'Letters this low fill up or break, and nobody will read them. Make them larger, leave some out, print them, or put them on the back.';
    case 'clutch-shows':
      return 'What holds the pin is broader than the metal before it and peeps out beside it or through a hole. The pin can be made; move the post, take a smaller clutch or another fastening, or make the pin larger.';
    case 'small-cut-out':
      return 'A hole this small cannot be cut cleanly through the metal. Make it larger, or fill it with enamel or metal.';
    default:
      return 'Enamel reaches the outside with no rim to hold it. Let an outer edge be built.';
  }
}

function meeting(flat: Flat | undefined, other: Flat | undefined): string {
  return flat && other && flat.id !== other.id ? `${flat.name.charAt(0).toUpperCase()}${flat.name.slice(1)} and ${other.name}` : 'Two colours';
}

/** Metal that is missing is so at every size. */
const AT_ANY_SIZE: readonly Finding['kind'][] = ['no-line', 'no-edge', 'gap', 'open-area', 'loose-part', 'grown-together'];

/** A larger pin has these all the more, or all the same. */
const NOT_BY_SIZE: readonly Finding['kind'][] = ['long-arm', 'sharp-tip'];

/** Whether a larger pin has the trouble no more. */
export function mendsBySize(f: Finding): boolean {
  return f.verdict !== 'holds' && !AT_ANY_SIZE.includes(f.kind) && !NOT_BY_SIZE.includes(f.kind);
}

/** The figures behind a finding, in a line of small print. */
export function factsWords(f: Finding): string {
  const error = `measured to ±${mm(f.error, 2)}`;
  switch (f.kind) {
    case 'thin-line':
    case 'narrow-area':
    case 'fades-out':
      return `${mm(f.length)} long, ${mm(f.typical, 2)} wide for the most part; ${error}.`;
    case 'small-lettering':
      return f.count > 1 ? `The row is ${mm(f.length)} long; ${error}.` : `A capital you marked, from foot to head; ${error}.`;
    case 'small-area':
    case 'pinhole':
    case 'metal-island':
      return `${mm2(f.area)} in all; ${error}.`;
    default:
      return `${error.charAt(0).toUpperCase()}${error.slice(1)}.`;
  }
}
