// A rule in millimetres and inches: where a pin can be made, from where it can
// be read, and the size asked for. It is dragged, and its marks can be taken.
import type { Glance, SizeRange } from '../engine/wire.gen';
import { marksOf, scaleSays, snapped } from '../words/glance';
import { both } from '../words/words';

const W = 420;
const PAD = 10;
/** The face of the rule, and the two lanes on it. */
const FACE = { top: 22, foot: 132 };
const MADE = 66;
const READ = 94;
const HIGH = FACE.foot + 4;

const MM_PER_INCH = 25.4;

interface Props {
  glance: Glance;
  /** Of the pin now, mm: the newest wish, which the rest may still follow. */
  size: number;
  sizeSays: string;
  /** From where it is looked at. */
  where: string;
  late: boolean;
  onDrag: (mm: number) => void;
  onDrop: () => void;
  onSize: (mm: number, words: string) => void;
}

type X = (mm: number) => number;

export function GlanceScale(p: Props) {
  const { from, to } = p.glance;
  const x: X = (mm) => PAD + ((Math.min(to, Math.max(from, mm)) - from) / (to - from)) * (W - 2 * PAD);
  const marks = marksOf(p.glance);
  const point = (e: PointerEvent & { currentTarget: SVGSVGElement }) => {
    const box = e.currentTarget.getBoundingClientRect();
    const perPx = (to - from) / (box.width * (1 - (2 * PAD) / W));
    const mm = from + (e.clientX - box.x - (PAD * box.width) / W) * perPx;
    p.onDrag(snapped(Math.round(Math.min(to, Math.max(from, mm)) * 2) / 2, marks, NEAR * perPx));
  };
  return (
    <figure class={p.late ? 'glance late-answer' : 'glance'}>
      <svg
        viewBox={`0 0 ${W} ${HIGH}`} role="img" aria-label={scaleSays(p.glance, p.where)}
        onPointerDown={(e) => { e.currentTarget.setPointerCapture(e.pointerId); point(e); }}
        onPointerMove={(e) => { if (e.currentTarget.hasPointerCapture(e.pointerId)) point(e); }}
        onPointerUp={p.onDrop} onPointerCancel={p.onDrop}
      >
        <rect class="face" x={0.5} y={FACE.top} width={W - 1} height={FACE.foot - FACE.top} rx={4} />
        <Ticks from={from} to={to} x={x} />
        <Asked x={x(p.size)} says={p.sizeSays} />
        <Made ranges={p.glance.made} to={to} x={x} />
        <Read glance={p.glance} x={x} />
      </svg>
      {marks.length > 0 ? (
        <ul class="glance-marks" aria-label="Sizes to take">
          {marks.map((m) => (
            <li key={m.key} class={m.key.split(' ')[0]}>
              <button type="button" class="chip" onClick={() => p.onSize(m.at.mm, m.at.inMM)}>
                <span>{m.what} from <b>{both(m.at)}</b><span class="unseen">: make the pin so large</span></span>
              </button>
            </li>
          ))}
        </ul>
      ) : null}
    </figure>
  );
}

/** A touch so near a mark means it, px. */
const NEAR = 8;

/** Inches on the upper edge, millimetres on the lower, as on any rule. */
function Ticks({ from, to, x }: { from: number; to: number; x: X }) {
  const mms = Array.from({ length: Math.floor(to) - Math.ceil(from) + 1 }, (_, i) => Math.ceil(from) + i);
  const quarters = Array.from({ length: Math.floor((to / MM_PER_INCH) * 4) }, (_, i) => i + 1).filter((q) => (q * MM_PER_INCH) / 4 >= from);
  const long = (n: number, whole: number, half: number) => (n % whole === 0 ? 9 : n % half === 0 ? 6.5 : 4);
  const lower = mms.map((mm) => `M${x(mm).toFixed(1)} ${FACE.foot}v${-long(mm, 10, 5)}`).join('');
  const upper = quarters.map((q) => `M${x((q * MM_PER_INCH) / 4).toFixed(1)} ${FACE.top}v${long(q, 4, 2)}`).join('');
  const tens = mms.filter((mm) => mm % 10 === 0);
  const inches = quarters.filter((q) => q % 4 === 0);
  return (
    <g class="ticks">
      <path d={lower + upper} />
      {tens.map((mm) => <text key={mm} class={end(mm === from, mm === to)} x={x(mm) + side(mm === from, mm === to)} y={FACE.foot - 13}>{mm}{mm === to ? ' mm' : ''}</text>)}
      {inches.map((q) => <text key={q} x={x((q * MM_PER_INCH) / 4)} y={FACE.top + 20}>{q / 4}{q === inches.at(-1) ? ' in' : ''}</text>)}
    </g>
  );
}

const end = (first: boolean, last: boolean) => (first ? 'first' : last ? 'last' : undefined);
const side = (first: boolean, last: boolean) => (first ? -5 : last ? 5 : 0);

function Made({ ranges, to, x }: { ranges: readonly SizeRange[]; to: number; x: X }) {
  if (ranges.length === 0) return <Lane y={MADE} name="made" says="cannot be made as drawn" x={undefined} />;
  return (
    <g class="made">
      {ranges.map((r) => <line key={r.from.mm} x1={x(r.from.mm)} x2={x(r.to.mm > 0 ? r.to.mm : to)} y1={MADE} y2={MADE} />)}
      {ranges.map((r) => (r.from.mm <= to ? <path key={r.from.mm} class="start" d={`M${x(r.from.mm)} ${MADE - 7}v14`} /> : null))}
      <Lane y={MADE} name="made" says={`✓ made from ${ranges[0]?.from.inMM ?? ''}`} x={x(ranges[0]?.from.mm ?? 0)} />
    </g>
  );
}

function Read({ glance, x }: { glance: Glance; x: X }) {
  const { readFrom, to } = glance;
  if (readFrom.mm <= 0) return <Lane y={READ} name="read" says="not read wholly at any size" x={undefined} />;
  return (
    <g class="read">
      <line x1={x(readFrom.mm)} x2={x(to)} y1={READ} y2={READ} />
      <circle class="start" cx={x(readFrom.mm)} cy={READ} r={5} />
      <Lane y={READ} name="read" says={`read from ${readFrom.inMM}`} x={x(readFrom.mm)} />
    </g>
  );
}

/** A lane's words stand above its bar, on the side where there is room. */
function Lane({ y, name, says, x }: { y: number; name: string; says: string; x: number | undefined }) {
  const left = x === undefined || x < 0.62 * W;
  const at = x === undefined ? PAD + 4 : left ? x + 8 : x - 10;
  const above = x === undefined || left ? y - 8 : y + 4;
  return <text class={`lane-says ${name}${left ? '' : ' end'}${x === undefined ? ' none' : ''}`} x={at} y={x === undefined ? y + 4 : above}>{says}</text>;
}

function Asked({ x, says }: { x: number; says: string }) {
  const half = 3.6 * says.length;
  return (
    <g class="asked">
      <path d={`M${x} ${FACE.top - 4}V${FACE.foot}`} />
      <path class="head" d={`M${x - 5} ${FACE.top - 6}h10l-5 7z`} />
      <text x={Math.min(W - half, Math.max(half, x))} y={12}>{says}</text>
    </g>
  );
}
