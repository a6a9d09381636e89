// What is seen of a pin, in plain words.
import type { Flat, Idea, Pair, Plating, Reading, ReadingAt, Vision } from '../engine/wire.gen';
import { mm } from './length';
import { capital } from './words';

/** Flats that are no flat of the drawing: metal that was built, and what lies outside the pin. */
const BUILT_METAL = -1;
const OUTSIDE = -2;

/** What names are made of. */
export interface Names {
  flats: readonly Flat[];
  plating: Plating | undefined;
}

/** What lies at a flat of a pin, as one would call it. */
export function nameOf(id: number, { flats, plating }: Names): string {
  if (id === OUTSIDE) return 'the cloth';
  const flat = flats.find((f) => f.id === id);
  if (id === BUILT_METAL || !flat || flat.role === 'metal') return plating?.name ?? 'metal';
  return flat.role === 'cutout' ? 'a cut-out' : flat.name;
}

/** "400 mm", "1 m", "1.5 m". */
export function distance(v: number): string {
  return v < 1000 ? mm(v, 0) : `${Number((v / 1000).toFixed(2))} m`;
}

/** How much is read from one distance. */
export function rowSays(r: ReadingAt): string {
  return `${capital(r.words)}.`;
}

/** From which size all of it is. */
export function allFrom(r: ReadingAt): string {
  return r.readFrom.mm > 0 ? `All of it from ${r.readFrom.inMM}` : 'All of it at no size.';
}

/** What a detail is. */
export function detailWords(r: Reading, names: Names): string {
  const [a, b] = r.beside.map((id) => nameOf(id, names));
  switch (r.detail) {
    case 'line':
      return a === b ? `A line through ${a}` : `The line between ${a} and ${b}`;
    case 'edge':
      return 'The outer edge';
    case 'area':
      return `A strip of ${nameOf(r.flat, names)}`;
    default:
      return 'Lettering';
  }
}

export interface Answer {
  mark: '✓' | '✕' | '?';
  words: string;
}

/** The first question: is it told from what lies beside it? */
export function partedWords(r: Reading): Answer {
  if (r.parted === 'cannot-tell') return { mark: '?', words: `This drawing is too coarse to say; one of ${r.needPx} px would tell` };
  if (r.detail === 'lettering') return letters(r);
  if (r.parted === 'holds') return { mark: '✓', words: 'It is told apart' };
  return { mark: '✕', words: r.detail === 'area' ? 'The two lines beside it run together' : 'It runs together with what lies beside it' };
}

function letters(r: Reading): Answer {
  if (r.parted === 'fails') return { mark: '✕', words: 'Too low to be read' };
  return { mark: '✓', words: r.better > 0 && r.measured < r.better ? `It can be read; ${mm(r.better)} would be read with ease` : 'It is read with ease' };
}

/** The second: is it noticed at all? */
export function noticedWords(r: Reading): Answer {
  switch (r.noticed) {
    case 'holds':
      return { mark: '✓', words: r.parted === 'holds' ? 'It is noticed' : 'Something is noticed there all the same' };
    case 'fails':
      return { mark: '✕', words: 'Nobody would miss it' };
    default:
      return { mark: '?', words: 'Whether it is noticed cannot be told' };
  }
}

/** What was measured. */
export function measuredAs(r: Reading): string {
  return `${mm(r.measured, 2)} ${r.detail === 'lettering' ? 'high' : 'wide'}; ${mm(r.need, 2)} is told apart from here`;
}

/** Why no size helps, where none does. */
export function noSize(r: Reading): string {
  return r.built ? 'It was built, so it is as wide at every size: build it wider.' : 'No pin is large enough.';
}

/** What is not surely read; lettering that is read is told as well and left out here. */
export const unread = (all: readonly Reading[]) => all.filter((r) => r.parted !== 'holds');

export function unreadSays(n: number, unsure: number): string {
  if (n === 0) return 'Everything is told apart from there.';
  const sure = n - unsure;
  const parts = [sure > 0 ? `${sure} ${sure === 1 ? 'place is' : 'places are'} not read` : '', unsure > 0 ? `${unsure} cannot be told` : ''];
  return `${parts.filter(Boolean).join('; ')}.`;
}

// ---- colours that meet

/** How they meet. */
export function meetWords(p: Pair): string {
  switch (p.kind) {
    case 'touching':
      return `touch for ${mm(p.length)}, with no metal between`;
    case 'across-line':
      return `lie on either side of a line ${mm(p.width, 2)} wide`;
    default:
      return `meet for ${mm(p.length)}`;
  }
}

/** How each kind of eye is called. */
export const EYE_WORDS: Record<Vision, string> = {
  normal: 'by colour', protan: 'without red', deutan: 'without green', tritan: 'without blue',
};

export interface Judged {
  /** In what light, or by what eye. */
  by: string;
  apart: boolean;
  /** The same in a sentence of its own. */
  says: string;
}

/** A pair as it is judged: by colour, in dim light, and by eyes that miss a colour. */
export function judged(p: Pair): Judged[] {
  const says = (apart: boolean, where: string) => `${apart ? 'told apart' : 'read as one'} ${where}`;
  return p.seen.flatMap((v): Judged[] => {
    const apart = v.byColour === 'holds';
    if (v.vision !== 'normal') return [{ by: EYE_WORDS[v.vision], apart, says: says(apart, `to eyes that see ${EYE_WORDS[v.vision]}`) }];
    const dim = v.byLightness === 'holds';
    return [{ by: 'by colour', apart, says: says(apart, 'by colour') }, { by: 'in dim light', apart: dim, says: says(dim, 'in dim light') }];
  });
}

/** Whether a pair reads as one to the usual eye. */
export const readsAsOne = (p: Pair) => p.seen[0]?.byColour === 'fails';

/** What an idea does besides. */
export function ideaDoes(i: Idea): string {
  const also = i.fixes > 1 ? `It tells ${i.fixes} pairs apart` : 'It tells this pair apart';
  return i.breaks > 0 ? `${also}, and makes ${i.breaks} other read as one.` : `${also}.`;
}

/** How far a colour moves. */
export function shiftWords(shift: number): string {
  if (shift <= 0) return '';
  if (shift < 3) return 'The change of colour is hardly seen.';
  return shift < 10 ? 'The change of colour is small.' : 'It becomes plainly another shade.';
}
