// What each colour buys: loss to the eye as a falling line, price as steps.
import type { Buy } from '../engine/wire.gen';

const W = 420;
const H = 190;
const PAD = { l: 40, r: 44, t: 24, b: 30 };

/** A small cross about a place. */
const cross = (x: number, y: number) => `M${x - 3.5} ${y - 3.5}l7 7m0 -7l-7 7`;

interface Props {
  rows: readonly Buy[];
  count: number;
  included: number;
  onPick: (count: number) => void;
}

export function BuysChart({ rows, count, included, onPick }: Props) {
  const most = Math.max(1, ...rows.map((r) => r.worst));
  const top = Math.max(...rows.map((r) => r.each), 1e-9) * 1.1;
  const step = (W - PAD.l - PAD.r) / Math.max(1, rows.length - 1);
  const x = (i: number) => PAD.l + i * step;
  const yLoss = (v: number) => H - PAD.b - (v / most) * (H - PAD.t - PAD.b);
  const yPrice = (v: number) => H - PAD.b - (v / top) * (H - PAD.t - PAD.b);
  const line = (f: (r: Buy) => number) => rows.map((r, i) => `${i ? 'L' : 'M'}${x(i)} ${yLoss(f(r))}`).join('');
  return (
    <figure class="chart">
      <svg viewBox={`0 0 ${W} ${H}`} role="img" aria-label="Loss to the eye and price a piece at each count of enamels; the table below has the numbers.">
        {rows.map((r, i) => (
          <g key={r.count} class={`col${r.count === count ? ' now' : ''}${r.seen?.unseen ? ' unseen-step' : ''}`} onClick={() => onPick(r.count)}>
            <rect class="hit" x={x(i) - step / 2} y={0} width={step} height={H} />
            <rect class="bar" x={x(i) - step * 0.28} width={step * 0.56} y={yPrice(r.each)} height={Math.max(0, H - PAD.b - yPrice(r.each))} />
            {r.seen?.unseen ? <path class="not-seen" d={cross(x(i), H - PAD.b - 9)} /> : null}
            <text class="tick" x={x(i)} y={H - PAD.b + 16}>{r.count}</text>
          </g>
        ))}
        <line class="axis" x1={PAD.l - step / 2} x2={W - PAD.r + step / 2} y1={H - PAD.b} y2={H - PAD.b} />
        {included > 0 && included < rows.length ? (
          <line class="included" x1={x(included - 1) + step / 2} x2={x(included - 1) + step / 2} y1={PAD.t - 4} y2={H - PAD.b + 4} />
        ) : null}
        <path class="worst" d={line((r) => r.worst)} />
        <path class="mean" d={line((r) => r.mean)} />
        {rows.map((r, i) => (
          <circle key={r.count} class={r.count === count ? 'dot now' : 'dot'} cx={x(i)} cy={yLoss(r.worst)} r={r.count === count ? 5 : 3} />
        ))}
        <text class="axis-name" x={0} y={10}>ΔE00 {most.toFixed(0)}</text>
        <text class="axis-name end" x={W} y={10}>{rows.find((r) => r.count === count)?.perPiece ?? ''} a piece</text>
      </svg>
      <figcaption>
        <span class="key worst">worst tenth</span> <span class="key mean">mean loss</span> <span class="key bar">price a piece</span>
        {rows.some((r) => r.seen?.unseen) ? <span class="key unseen-step">a step nobody could see</span> : null}
        {included > 0 ? <span class="key included">{included} in the price</span> : null}
      </figcaption>
    </figure>
  );
}
