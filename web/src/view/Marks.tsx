// Marks laid over the pin: a gap, a line made by hand, the mark of the arrow keys.
import type { Check, Gap, ProposedLine, Recipe } from '../engine/wire.gen';
import type { Share } from '../state/line';
import { both } from '../words/words';
import type { Mapping, Point } from './place';

interface OnPin {
  map: Mapping;
  /** The working raster, px. */
  raster: { w: number; h: number };
}

/** Strokes across the ends of a gap reach this far on either side, px. */
const SERIF = 7;

/** Its words stand this far off, px. */
const WORDS_OFF = 14;

/** With this much room they are not cut off, px. */
const WORDS_LONG = 170;

export function onSheet([x, y]: Share, { map, raster }: OnPin): Point {
  return map.toSheet(x * raster.w, y * raster.h);
}

export interface GapProps extends OnPin {
  gap: Gap;
  /** Where the pin was touched. */
  from: Point;
  room: { w: number };
}

/** The gap on the sheet: its ends, its middle, and the direction across it that
 * leads away from where the pin was touched, if the sheet has room there. */
function lie({ gap, from, room, ...on }: GapProps) {
  const [x0, y0, x1, y1] = gap.ends;
  const [a, b] = [onSheet([x0, y0], on), onSheet([x1, y1], on)];
  const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const across = { x: -(b.y - a.y) / long, y: (b.x - a.x) / long };
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const away = (middle.x - from.x) * across.x + (middle.y - from.y) * across.y < 0 ? -1 : 1;
  const reach = middle.x + away * across.x * WORDS_LONG;
  const way = reach < 0 || reach > room.w ? -away : away;
  return { a, b, middle, across: { x: way * across.x, y: way * across.y } };
}

/** The gap as a short line between two strokes. */
export function GapMark(p: GapProps) {
  const { a, b, across } = lie(p);
  const serif = (q: Point) => `M${q.x - across.x * SERIF} ${q.y - across.y * SERIF}L${q.x + across.x * SERIF} ${q.y + across.y * SERIF}`;
  const d = `M${a.x} ${a.y}L${b.x} ${b.y}${serif(a)}${serif(b)}`;
  return <g class="gap-mark"><path class="halo" d={d} /><path d={d} /></g>;
}

/** How wide it is, beside it. */
export function GapWords(p: GapProps) {
  const { middle, across } = lie(p);
  const at = { left: `${middle.x + across.x * WORDS_OFF}px`, top: `${middle.y + across.y * WORDS_OFF}px` };
  // The label grows the way the direction points.
  const shift = `translate(${50 * across.x - 50}%, ${50 * across.y - 50}%)`;
  return <p class="gap-words" style={{ ...at, transform: shift }}>gap {both(p.gap.width)}</p>;
}

/** Lines that were not drawn and wait for a yes, dashed. */
export function ProposedLines({ lines, map }: Pick<OnPin, 'map'> & { lines: readonly ProposedLine[] }) {
  const d = lines.map((l) => l.path.reduce((all, x, i, path) => {
    if (i % 2 === 1) return all;
    const p = map.toSheet(x, path[i + 1] ?? 0);
    return `${all}${i === 0 ? 'M' : 'L'}${p.x.toFixed(1)} ${p.y.toFixed(1)}`;
  }, '')).join('');
  return <path class="proposed-lines" d={d} />;
}

/** How wide a line made by hand is on the sheet, px. */
export function pxWide(line: Pick<Recipe, 'width'>, thinnest: number, check: Check, map: Mapping): number {
  return (line.width > 0 ? line.width : thinnest) * check.scale * map.scale;
}

export function pathOf(points: readonly Share[], on: OnPin): string {
  return points.map((s, i) => {
    const p = onSheet(s, on);
    return `${i === 0 ? 'M' : 'L'}${p.x.toFixed(1)} ${p.y.toFixed(1)}`;
  }).join('');
}

/** A line made by hand, at its width: whole where it is drawn, hatched where it erases. */
export function HandLine({ line, width, ...on }: OnPin & { line: { kind: Recipe['kind']; points?: readonly Share[] }; width: number }) {
  const d = pathOf(line.points ?? [], on);
  return (
    <g class={`hand-line ${line.kind}`}>
      <path class="casing" d={d} stroke-width={width + 4} />
      <path class="body" d={d} stroke-width={width} />
    </g>
  );
}

/** Half the length of the mark, and the room left in its middle, px. */
const ARM = 16;
const EYE = 4;

export function Crosshair({ at: { x, y } }: { at: Point }) {
  const d = `M${x - ARM} ${y}H${x - EYE}M${x + EYE} ${y}H${x + ARM}M${x} ${y - ARM}V${y - EYE}M${x} ${y + EYE}V${y + ARM}`;
  return <g class="crosshair"><path class="halo" d={d} /><path d={d} /></g>;
}
