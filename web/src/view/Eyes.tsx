// The eyes that parts hang by, on the pin: those that are added can be moved, and
// while one is, the chain goes along.
import type { Check, Hanging, HangingEye, HeldParts, Loop } from '../engine/wire.gen';
import { dropEye, leaveEyes, moveEye, movingEye, type EyeRef } from '../state/parts';
import { eyeName, placeWords } from '../words/parts';
import { capital } from '../words/words';
import type { Box, Mapping, Point } from './place';
import { useGrip } from './useGrip';
import { stepsOf } from './useMark';

interface Props {
  parts: HeldParts;
  check: Check;
  map: Mapping;
  home: Box;
  /** The sheet still shows the eyes as they were. */
  live: boolean;
}

const ENDS = ['upper', 'lower'] as const;

export function Eyes({ parts, live, ...on }: Props) {
  const { map } = on;
  return (
    <>
      <svg class="overlay" aria-hidden="true">
        <g class="eye-marks">
          {parts.joins.map((j, i) => (
            <g key={i}>
              {live ? j.loops.map((l, n) => <Outline key={n} loop={l} map={map} />) : null}
              {ENDS.map((end) => <Mark key={end} eye={j[end]} map={map} live={live} />)}
            </g>
          ))}
        </g>
      </svg>
      {parts.joins.flatMap((j, i) => ENDS.map((end) => (
        j[end].drawn ? null : <Handle key={`${i} ${end}`} eye={{ join: i, end }} hanging={j} all={parts.joins.length} {...on} />
      )))}
    </>
  );
}

/** A ring or link, while the picture does not show it there yet. */
function Outline({ loop: l, map }: { loop: Loop; map: Mapping }) {
  const at = map.toSheet(l.x, l.y);
  const half = (v: number) => Math.max(1, ((v - l.wire) / 2) * map.scale);
  const wire = Math.max(1.5, l.wire * map.scale);
  return (
    <g transform={`translate(${at.x} ${at.y}) rotate(${(l.angle * 180) / Math.PI})`} class="loop">
      <ellipse class="casing" rx={half(l.long)} ry={half(l.wide)} stroke-width={wire + 2} />
      <ellipse rx={half(l.long)} ry={half(l.wide)} stroke-width={wire} />
    </g>
  );
}

/** The hole and the metal round it, while it moves or where something is wrong. */
function Mark({ eye, map, live }: { eye: HangingEye; map: Mapping; live: boolean }) {
  const at = map.toSheet(eye.x, eye.y);
  const r = (eye.across / 2) * map.scale;
  if (!live && !eye.problem) return null;
  return (
    <g class={eye.problem ? 'eye-mark bad' : 'eye-mark'}>
      {live ? <circle class="hole" cx={at.x} cy={at.y} r={r} /> : null}
      <circle class="rim" cx={at.x} cy={at.y} r={r + eye.rim * map.scale} />
    </g>
  );
}

function Handle({ eye, hanging, all, check, map, home }: Omit<Props, 'parts' | 'live'> & { eye: EyeRef; hanging: Hanging; all: number }) {
  const e = hanging[eye.end];
  const at = map.toSheet(e.x, e.y);
  const name = eyeName(eye, all);
  const raster = check.flats;
  const sent = () => {
    const m = movingEye.value;
    const last = m && !m.done && m.eye.join === eye.join && m.eye.end === eye.end ? m.joins[eye.join]?.[eye.end].at : undefined;
    return last && map.toSheet(last[0] * raster.w, last[1] * raster.h);
  };
  const grip = useGrip({
    at, sent, home, steps: stepsOf(check, map),
    onMove: (to: Point) => {
      const w = map.toWork(to.x, to.y);
      moveEye(eye, [w.x / raster.w, w.y / raster.h]);
    },
    onDrop: () => void dropEye(`Moved ${name}`),
    onLeave: leaveEyes,
  });
  return (
    <button
      type="button" class={e.problem ? 'eye-handle bad' : 'eye-handle'} style={{ left: `${at.x}px`, top: `${at.y}px` }}
      aria-label={`${capital(name)}, ${placeWords(e)}. ${e.problem} The arrow keys move it, with Shift in small steps.`}
      {...grip}
    />
  );
}
