// One step on the ruler: the days as they fall, the latest that still do, and
// what is free of work under them.
import { useId } from 'preact/hooks';
import type { FreeRun, StepRow } from '../engine/wire.gen';
import type { DayLine } from '../state/dayline';
import { runWords } from '../words/calendar';

export const LANE = 26;
const BAR = 12;
/** Days narrower than this, px, show no weekends: they would be a grey haze. */
const LEAST_WEEKEND = 2;

interface Props {
  row: StepRow;
  line: DayLine;
  free: readonly FreeRun[];
  /** Pattern of the hatching, as `Hatching` has named it. */
  hatch: string;
  /** The launch day, or empty. */
  launch: string;
}

/** The hatching of closures and holidays, once for a drawing. */
export function Hatching({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={id} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="hatch-line" d="M0 0V5" />
      </pattern>
    </defs>
  );
}

export function Lane({ row, line, free, hatch, launch }: Props) {
  const end = line.days * line.wide;
  return (
    <g class="lane">
      <rect class="lane-ground" x={0} y={0} width={end} height={LANE} />
      {free.map((r) => <Free key={r.from} run={r} line={line} hatch={hatch} />)}
      {row.first ? <Falls row={row} line={line} launch={launch} /> : null}
      {row.key === 'slack' ? <Kept row={row} line={line} /> : row.latestFirst ? <Latest row={row} line={line} /> : null}
    </g>
  );
}

function Free({ run, line, hatch }: { run: FreeRun; line: DayLine; hatch: string }) {
  if (run.kind === 'weekend' && line.wide < LEAST_WEEKEND) return null;
  const at = { x: line.x(run.from), width: Math.max(1, line.end(run.to) - line.x(run.from)), y: 0, height: LANE };
  if (run.kind === 'weekend') return <rect class="weekend" {...at} />;
  return (
    <g class={`free ${run.kind}`}>
      <title>{runWords(run)}</title>
      <rect class="free-ground" {...at} />
      <rect {...at} fill={`url(#${hatch})`} />
    </g>
  );
}

function Falls({ row, line, launch }: { row: StepRow; line: DayLine; launch: string }) {
  const x = line.x(row.first);
  const late = launch !== '' && row.last >= launch;
  return <rect class={late ? 'falls late' : 'falls'} x={x} y={2} width={Math.max(2, line.end(row.last) - x)} height={BAR} rx={1.5} />;
}

/** The latest days, a mark at the latest start. */
function Latest({ row, line }: { row: StepRow; line: DayLine }) {
  const [x, to] = [line.x(row.latestFirst), line.end(row.latestLast)];
  const y = 20;
  return (
    <g class="latest">
      <path class="latest-line" d={`M${x} ${y}H${to}M${to} ${y - 3.5}v7`} />
      <path class="latest-start" d={`M${x} ${y - 4.5}l4.5 4.5l-4.5 4.5l-4.5 -4.5z`} />
    </g>
  );
}

/** The days kept free. */
function Kept({ row, line }: { row: StepRow; line: DayLine }) {
  const x = line.x(row.latestFirst);
  return <rect class="kept" x={x} y={3} width={Math.max(2, line.end(row.latestLast) - x)} height={LANE - 6} rx={1.5} />;
}

/** A lane by itself, today and the launch day on it. */
export function LoneLane(p: Omit<Props, 'hatch'> & { today: string }) {
  const hatch = useId();
  const width = p.line.days * p.line.wide;
  return (
    <svg class="lone-lane" width={width} height={LANE} viewBox={`0 0 ${width} ${LANE}`} aria-hidden="true">
      <Hatching id={hatch} />
      <Lane {...p} hatch={hatch} />
      <path class="today-line" d={`M${p.line.x(p.today)} 0V${LANE}`} />
      {p.launch ? <path class="launch-line" d={`M${p.line.x(p.launch)} 0V${LANE}`} /> : null}
    </svg>
  );
}
