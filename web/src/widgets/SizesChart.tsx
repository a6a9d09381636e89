// The sizes that hold, one lane for each making: what fails falls as the pin
// grows, and where nothing fails a bar runs on.
import type { SizesFor, Sizes } from '../engine/wire.gen';
import { rangeWords } from '../words/sizes';

const W = 420;
const PAD = { l: 8, r: 8, t: 26, b: 26 };
const LANE = 58;
/** The highest a curve rises in its lane. */
const HIGH = 34;
const TICK = 10;

interface Props {
  sizes: Sizes;
  /** A making that is only thought of, as one lane more. */
  thought: SizesFor | undefined;
  /** Of the pin now, mm. */
  size: number;
  onDrag: (mm: number) => void;
  onDrop: () => void;
}

/** A small share is to be seen: its root is drawn. */
const rise = (share: number) => HIGH * Math.sqrt(share);

export function SizesChart({ sizes, thought, size, onDrag, onDrop }: Props) {
  const { from, to } = sizes;
  const rows = thought ? [...sizes.rows, thought] : sizes.rows;
  const x = (mm: number) => PAD.l + ((mm - from) / (to - from)) * (W - PAD.l - PAD.r);
  const high = PAD.t + LANE * rows.length + PAD.b;
  const ticks = Array.from({ length: Math.floor((to - from) / TICK) + 1 }, (_, i) => from + TICK * i);
  const point = (e: PointerEvent & { currentTarget: SVGSVGElement }) => {
    const box = e.currentTarget.getBoundingClientRect();
    const mm = from + ((((e.clientX - box.x) / box.width) * W - PAD.l) / (W - PAD.l - PAD.r)) * (to - from);
    onDrag(Math.round(Math.min(to, Math.max(from, mm)) * 2) / 2);
  };
  return (
    <figure class="chart sizes-chart">
      <svg
        viewBox={`0 0 ${W} ${high}`} role="img" aria-label="What fails at each size, and the sizes at which nothing does; the table below has the numbers."
        onPointerDown={(e) => { e.currentTarget.setPointerCapture(e.pointerId); point(e); }}
        onPointerMove={(e) => { if (e.currentTarget.hasPointerCapture(e.pointerId)) point(e); }}
        onPointerUp={onDrop} onPointerCancel={onDrop}
      >
        <rect class="hit" width={W} height={high} />
        {ticks.map((mm) => (
          <g key={mm}>
            <line class="grid" x1={x(mm)} x2={x(mm)} y1={PAD.t} y2={high - PAD.b} />
            <text class={mm === to ? 'tick last' : 'tick'} x={mm === to ? W : x(mm)} y={high - 8}>{mm}{mm === to ? ' mm' : ''}</text>
          </g>
        ))}
        {rows.map((r, i) => <Lane key={`${r.making} ${r.fill} ${r.name}`} row={r} from={from} to={to} x={x} base={PAD.t + LANE * (i + 1) - 8} thought={r === thought} />)}
        {size >= from && size <= to ? (
          <g class="now">
            <line x1={x(size)} x2={x(size)} y1={PAD.t - 6} y2={high - PAD.b} />
            <text x={Math.min(W - 26, Math.max(26, x(size)))} y={13}>{Math.round(size * 10) / 10} mm</text>
          </g>
        ) : null}
      </svg>
      <figcaption>
        <span class="key lines">lines that fail, of all their length</span> <span class="key areas">colour areas that fail</span> <span class="key holds">holds</span>
      </figcaption>
    </figure>
  );
}

interface LaneProps {
  row: SizesFor;
  from: number;
  to: number;
  x: (mm: number) => number;
  base: number;
  thought: boolean;
}

function Lane({ row, from, to, x, base, thought }: LaneProps) {
  const line = (share: (i: number) => number) => row.curve.map((_, i) => `${i ? 'L' : 'M'}${x(from + i).toFixed(1)} ${(base - rise(share(i))).toFixed(1)}`).join('');
  const lines = line((i) => row.curve[i]?.lines ?? 0);
  return (
    <g class={`lane${row.now ? ' chosen' : ''}${thought ? ' thought' : ''}`}>
      <path class="lines" d={`${lines}L${x(to)} ${base}L${x(from)} ${base}Z`} />
      <path class="areas" d={line((i) => row.curve[i]?.areas ?? 0)} />
      <line class="axis" x1={x(from)} x2={x(to)} y1={base} y2={base} />
      {row.ranges.filter((r) => r.from.mm <= to).map((r) => {
        const a = Math.min(to, Math.max(from, r.from.mm));
        const b = r.to.mm === 0 ? to : Math.min(to, Math.max(from, r.to.mm));
        return (
          <g key={r.from.mm}>
            <line class="holds" x1={x(a)} x2={x(b)} y1={base} y2={base} />
            {a === r.from.mm ? <text class="lane-from" x={x(a)} y={base - 8}>{rangeWords(r)}</text> : null}
          </g>
        );
      })}
      <text class="lane-name" x={W - PAD.r} y={base - HIGH - 3}>{row.name}</text>
    </g>
  );
}
