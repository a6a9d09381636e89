// An amount over a number of pieces, below 0 as well.
import { marks } from '../words/selling';

const W = 420;
const H = 200;
const PAD = { l: 48, r: 12, t: 18, b: 34 };

export interface MoneyPoint {
  n: number;
  v: number;
}

export interface MoneyMark {
  n: number;
  v: number;
  says: string;
  kind: 'best' | 'now' | 'covers';
}

interface Props {
  points: readonly MoneyPoint[];
  marked: readonly MoneyMark[];
  /** What lies along and up. */
  along: string;
  up: string;
  label: string;
}

export function MoneyChart({ points, marked, along, up, label }: Props) {
  const all = [...points, ...marked];
  const far = Math.max(1, ...all.map((p) => p.n));
  const low = Math.min(0, ...all.map((p) => p.v));
  const high = Math.max(0, ...all.map((p) => p.v), low + 1);
  const x = (n: number) => PAD.l + (n / far) * (W - PAD.l - PAD.r);
  const y = (v: number) => H - PAD.b - ((v - low) / (high - low)) * (H - PAD.t - PAD.b);
  const line = points.map((p, i) => `${i ? 'L' : 'M'}${x(p.n).toFixed(1)} ${y(p.v).toFixed(1)}`).join('');
  return (
    <figure class="chart money-chart">
      <svg viewBox={`0 0 ${W} ${H}`} role="img" aria-label={label}>
        {marks(low, high).map((v) => (
          <g key={v}>
            <line class={v === 0 ? 'axis' : 'grid'} x1={PAD.l} x2={W - PAD.r} y1={y(v)} y2={y(v)} />
            <text class="tick side" x={PAD.l - 5} y={y(v) + 4}>{String(v).replace('-', '−')}</text>
          </g>
        ))}
        {marks(0, far).map((n) => <text key={n} class="tick" x={x(n)} y={H - PAD.b + 16}>{n}</text>)}
        <path d={line} />
        {marked.map((m) => (
          <g key={m.kind} class={`money-mark ${m.kind}`}>
            <line x1={x(m.n)} x2={x(m.n)} y1={PAD.t} y2={H - PAD.b} />
            <circle cx={x(m.n)} cy={y(m.v)} r={4} />
          </g>
        ))}
        <text class="axis-name" x={0} y={10}>{up}</text>
        <text class="axis-name end" x={W} y={H - 5}>{along}</text>
      </svg>
      <figcaption>{marked.map((m) => <span key={m.kind} class={`key money-key ${m.kind}`}>{m.says}</span>)}</figcaption>
    </figure>
  );
}

/** Where the drawn line runs at a number of pieces. */
export function valueAt(points: readonly MoneyPoint[], n: number): number {
  const after = points.find((q) => q.n >= n) ?? points.at(-1);
  const before = points.findLast((q) => q.n <= n) ?? after;
  if (!after || !before) return 0;
  return after.n === before.n ? after.v : before.v + ((after.v - before.v) * (n - before.n)) / (after.n - before.n);
}
