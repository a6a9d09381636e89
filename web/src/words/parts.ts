// The parts of a pin, in words.
import type { HangingEye } from '../engine/wire.gen';
import type { EyeRef } from '../state/parts';

export const END_WORDS: Record<EyeRef['end'], string> = { upper: 'upper eye', lower: 'lower eye' };

/** "the upper eye", or with several places to hang by "the upper eye of chain 2". */
export function eyeName({ join, end }: EyeRef, joins: number): string {
  return `the ${END_WORDS[end]}${joins > 1 ? ` of chain ${join + 1}` : ''}`;
}

/** Where an eye is, as seen from the front. */
export function placeWords(e: HangingEye): string {
  return `${e.left.inMM} from the left, ${e.top.inMM} from the top`;
}
