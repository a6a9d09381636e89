// What the order costs by each maker, over its number of pieces.
import type { Compared, Comparison } from '../engine/wire.gen';
import { ticks } from '../words/order';

const W = 420;
const H = 210;
const PAD = { l: 44, r: 12, t: 16, b: 28 };

interface Props {
  comparison: Comparison;
  /** Pieces asked for. */
  now: number;
  /** ID of the list in use. */
  used: string;
}

/** Stretches without a gap: where a maker has no price the line ends. Between
 * two points the total is a straight line, and it jumps from one number to the next. */
export function linesOf(m: Compared, cuts: readonly number[]): Compared['points'][] {
  const all: Compared['points'][] = [];
  let last = -2;
  for (const p of m.points) {
    const at = cuts.indexOf(p.quantity);
    if (at !== last + 1 || all.length === 0) all.push([]);
    all.at(-1)?.push(p);
    last = at;
  }
  return all;
}

export function MakersChart({ comparison, now, used }: Props) {
  const points = comparison.makers.flatMap((m) => m.points);
  const cuts = [...new Set(points.map((p) => p.quantity))].sort((a, b) => a - b);
  const far = Math.max(now, ...cuts, 1);
  const high = Math.max(1, ...points.map((p) => p.draw));
  const x = (n: number) => PAD.l + (n / far) * (W - PAD.l - PAD.r);
  const y = (v: number) => H - PAD.b - (v / high) * (H - PAD.t - PAD.b);
  return (
    <figure class="chart makers-chart">
      <svg viewBox={`0 0 ${W} ${H}`} role="img" aria-label="Total of the order by each maker over its number of pieces; the words and the table below say the same.">
        {ticks(high).map((v) => (
          <g key={v}>
            <line class="grid" x1={PAD.l} x2={W - PAD.r} y1={y(v)} y2={y(v)} />
            <text class="tick side" x={PAD.l - 5} y={y(v) + 4}>{v}</text>
          </g>
        ))}
        {ticks(far).map((n) => <text key={n} class="tick" x={x(n)} y={H - PAD.b + 16}>{n}</text>)}
        <line class="axis" x1={PAD.l} x2={W - PAD.r} y1={H - PAD.b} y2={H - PAD.b} />
        <line class="included" x1={x(now)} x2={x(now)} y1={PAD.t} y2={H - PAD.b} />
        {comparison.makers.map((m, i) => (
          <g key={m.list} class={`maker-line m${i % 4}${m.list === used ? ' used' : ''}`}>
            {linesOf(m, cuts).map((run, k) => <path key={k} d={run.map((p, j) => `${j ? 'L' : 'M'}${x(p.quantity).toFixed(1)} ${y(p.draw).toFixed(1)}`).join('')} />)}
            {m.now ? <circle cx={x(m.now.quantity)} cy={y(m.now.draw)} r={3.5} /> : null}
          </g>
        ))}
        <text class="axis-name" x={0} y={10}>{comparison.currency} in all</text>
        <text class="axis-name end" x={W} y={H - 1}>pins</text>
      </svg>
      <figcaption>
        {comparison.makers.map((m, i) => <span key={m.list} class={`key maker-key m${i % 4}`}>{m.name}</span>)}
        <span class="key included">{now} asked for</span>
      </figcaption>
    </figure>
  );
}
