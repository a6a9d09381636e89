// What is not read, along its middle line on the pin, and the place that was walked to.
import type { Pair, Reading } from '../engine/wire.gen';
import { Crosshair } from './Marks';
import type { Mapping } from './place';

/** More marks than this hide the pin; the list has them all. */
const MOST = 60;

export interface EyeMarked {
  /** What is not read, when it is to be shown. */
  readings: readonly Reading[];
  /** The one that was walked to, or two colours that meet. */
  picked: Reading | Pair | undefined;
}

export function EyeMarks({ readings, picked, map }: EyeMarked & { map: Mapping }) {
  const at = picked && map.toSheet(picked.x, picked.y);
  const own = picked && 'path' in picked && !readings.includes(picked) ? [picked] : [];
  return (
    <g class="unread">
      {[...readings.slice(0, MOST), ...own].map((r, i) => <Mark key={i} reading={r} map={map} picked={r === picked} />)}
      {at ? <Crosshair at={at} /> : null}
    </g>
  );
}

function Mark({ reading: r, map, picked }: { reading: Reading; map: Mapping; picked: boolean }) {
  const d = shapeOf(r, map);
  return <g class={`${r.parted}${picked ? ' picked' : ''}`}><path class="halo" d={d} /><path d={d} /></g>;
}

/** Lettering is boxed, everything else followed. */
function shapeOf(r: Reading, map: Mapping): string {
  const corners = [r.x0, r.y0, r.x1, r.y0, r.x1, r.y1, r.x0, r.y1];
  const points = r.detail === 'lettering' || r.path.length < 4 ? [...corners, r.x0, r.y0] : r.path;
  let d = '';
  for (let i = 0; i + 1 < points.length; i += 2) {
    const p = map.toSheet(points[i] ?? 0, points[i + 1] ?? 0);
    d += `${i === 0 ? 'M' : 'L'}${p.x.toFixed(1)} ${p.y.toFixed(1)}`;
  }
  return d;
}
