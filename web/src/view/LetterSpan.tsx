// The height of a marked capital on the pin: a line between two strokes.
import type { LetterMark } from '../engine/wire.gen';
import { onSheet } from './Marks';
import type { Mapping } from './place';

/** The strokes at foot and head reach this far on either side, px. */
const SERIF = 9;

export function LetterSpan({ mark, ...on }: { mark: LetterMark; map: Mapping; raster: { w: number; h: number } }) {
  const [a, b] = [onSheet([mark.x0, mark.y0], on), onSheet([mark.x1, mark.y1], on)];
  const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [dx, dy] = [(-(b.y - a.y) / long) * SERIF, ((b.x - a.x) / long) * SERIF];
  const d = `M${a.x} ${a.y}L${b.x} ${b.y}` + [a, b].map((q) => `M${q.x - dx} ${q.y - dy}L${q.x + dx} ${q.y + dy}`).join('');
  return <g class="letter-span"><path class="halo" d={d} /><path d={d} /></g>;
}
