// Words of the maker's proof.
import type { Deviation, DeviationKind, ProofRound } from '../engine/wire.gen';
import { plural } from './words';

/** What differs, in a word or two, at the head of its line. */
export const KIND: Record<DeviationKind, string> = {
  mirrored: 'Mirrored', 'size-stated': 'Size as stated', 'size-drawn': 'Size as drawn', stretched: 'Stretched',
  'outline-moved': 'Outline moved', 'part-missing': 'Part missing', 'part-moved': 'Part moved', 'cut-out-filled': 'Cut-out filled',
  'line-missing': 'Line missing', 'line-added': 'Line added', 'line-thinner': 'Line thinner', 'line-thicker': 'Line thicker',
  'areas-merged': 'Areas joined', 'area-split': 'Area split', 'area-recoloured': 'Other colour', 'patch-added': 'Something added',
  'post-missing': 'Post missing', 'post-moved': 'Post moved', 'post-added': 'Post added',
  'area-unfilled': 'Not filled', 'colours-swapped': 'Colours swapped',
};

/** "Round 2, Harbour Mint", "Finished pin 1, Harbour Mint" */
export function roundWords(r: ProofRound): string {
  return [`${r.photo ? 'Finished pin' : 'Round'} ${r.round}`, r.maker].filter(Boolean).join(', ');
}

export const NO_PROOF = 'When a maker sends a proof, it is held against your pin here, line by line.';

/** The section in a sentence. */
export function proofSays(r: ProofRound | undefined, toChange: number): string {
  if (!r) return NO_PROOF;
  const fails = r.differences.filter((d) => d.verdict === 'fails').length;
  if (!r.fit) return `${roundWords(r)}: not compared yet.`;
  if (!r.fit.good) return `${roundWords(r)}: the pin does not lie well on it. Set it by hand.`;
  if (fails === 0) return `${roundWords(r)}: shows what you asked for.`;
  const open = toChange === 0 ? 'all accepted' : `${toChange < fails ? `${toChange} ` : fails > 1 ? 'all ' : ''}to be changed`;
  return `${roundWords(r)}: ${fails === 1 ? 'one thing differs' : `${fails} things differ`}, ${open}.`;
}

/** Where it lies, from the upper left as seen from the front. */
export function whereWords(d: Deviation): string {
  const side = d.behind ? 'on the back, ' : '';
  return `${side}${round(d.left)} mm from the left, ${round(d.top)} mm from the top`;
}

/** Kinds that have no place of their own. */
const EVERYWHERE = new Set<DeviationKind>(['mirrored', 'size-stated', 'size-drawn', 'stretched']);

export const hasPlace = (d: Deviation) => !EVERYWHERE.has(d.kind);

const round = (v: number) => (Math.round(v * 10) / 10).toFixed(1);

export const pagesWords = (n: number) => `This PDF has ${plural(n, 'page')}; the pin may be on another one.`;

/** How far two colours lie apart, for an eye. */
export function apartWords(deltaE: number): string {
  if (deltaE < 1) return 'the same';
  if (deltaE < 3.5) return 'hardly apart';
  if (deltaE < 10) return 'another shade';
  return 'another colour';
}
