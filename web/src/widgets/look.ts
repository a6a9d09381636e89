import type { Flat, Plating } from '../engine/wire.gen';
import { hexOf } from '../state/project';

/** How a swatch shows a plating: lit from the top left. */
export function tone(p: Plating) {
  return { backgroundImage: `linear-gradient(135deg, ${hexOf(p.bright)}, ${hexOf(p.mid)} 45%, ${hexOf(p.dark)})` };
}

/** A metal flat is seen in its plating, whatever it was drawn in. */
export function look(flat: Flat, plating: Plating | undefined) {
  return flat.role === 'metal' && plating ? tone(plating) : { backgroundColor: hexOf(flat.rgb) };
}
