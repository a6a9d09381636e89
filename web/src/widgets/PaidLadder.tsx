// The goals of a pre-sale along the number of paid pre-orders.
import { marks } from '../words/selling';

const W = 420;
const H = 80;
const PAD = { l: 8, r: 14 };
const BAR = 34;

interface Props {
  /** Paid pre-orders that each goal needs; below 0 where none do. */
  goals: readonly { name: string; paid: number }[];
  /** Pre-orders so far. */
  paid: number;
}

export function PaidLadder({ goals, paid }: Props) {
  const reached = goals.filter((g) => g.paid >= 0);
  const far = Math.max(1, paid, ...reached.map((g) => g.paid)) * 1.08;
  const x = (n: number) => PAD.l + (n / far) * (W - PAD.l - PAD.r);
  return (
    <figure class="chart paid-ladder">
      <svg viewBox={`0 0 ${W} ${H}`} role="img" aria-label={`${paid} pre-orders so far; ${reached.map((g) => `${g.name} needs ${g.paid}`).join(', ')}.`}>
        <rect class="ladder-bed" x={x(0)} y={BAR} width={x(far) - x(0)} height={8} />
        <rect class="ladder-paid" x={x(0)} y={BAR} width={x(paid) - x(0)} height={8} />
        {marks(0, far).map((n) => <text key={n} class="tick" x={x(n)} y={H - 20}>{n}</text>)}
        {goals.map((g, i) => (g.paid < 0 ? null : (
          <g key={i} class={paid >= g.paid ? 'rung met' : 'rung'}>
            <line x1={x(g.paid)} x2={x(g.paid)} y1={BAR - 8} y2={BAR + 8} />
            <circle cx={x(g.paid)} cy={BAR - 18} r={10} />
            <text x={x(g.paid)} y={BAR - 13.5}>{i + 1}</text>
          </g>
        )))}
        <text class="axis-name end" x={W} y={H - 5}>paid pre-orders</text>
      </svg>
    </figure>
  );
}
