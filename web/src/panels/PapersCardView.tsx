// The card as it will be, with the pin on it: pin, words and picture are taken
// and moved on it.
import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import type { BackingCard, CardLaid, LaidCard } from '../engine/wire.gen';
import { hexOf } from '../state/project';
import type { PinPicture } from '../state/papers';
import { holding, letGoHeld, movedBy, type Held } from '../state/papersCard';
import { MOVES, pinOnCard, placedWords } from '../words/papers';

interface Props {
  answer: CardLaid;
  pin: PinPicture | undefined;
  /** Nothing can be taken: a small picture of it. */
  still?: boolean;
}

const STEP = 0.5;
const FINE = 0.1;

export function CardView({ answer, pin, still = false }: Props) {
  const { laid: l, card: c } = answer;
  const b = l.bleed;
  const view = `${-b} ${-b} ${l.w + 2 * b} ${l.h + 2 * b}`;
  return (
    <svg class="card-view" viewBox={view} role={still ? 'img' : 'group'} aria-label={still ? 'The backing card' : 'The backing card, as it will be printed'}>
      <rect class="card-bleed" x={-b} y={-b} width={l.w + 2 * b} height={l.h + 2 * b} fill={c.ground ? hexOf(c.ground) : '#ffffff'} />
      <Own card={c} still={still} />
      {l.texts.map((t, i) => <Words key={i} laid={l} card={c} index={i} box={t.box} d={t.d} x={t.x} y={t.y} still={still} />)}
      <Cut laid={l} corner={c.corner ?? 0} />
      <OnIt laid={l} pin={pin} still={still} />
      {still ? null : l.warnings.filter((w) => !w.note).map((w, i) => <rect key={i} class="card-warns" x={w.box[0] - 0.6} y={w.box[1] - 0.6} width={w.box[2] - w.box[0] + 1.2} height={w.box[3] - w.box[1] + 1.2} />)}
    </svg>
  );
}

/** What lies outside the cut is shaded: it is cut away. */
function Cut({ laid: l, corner }: { laid: LaidCard; corner: number }) {
  const b = l.bleed;
  const outer = `M${-b} ${-b}H${l.w + b}V${l.h + b}H${-b}Z`;
  const r = corner;
  const inner = `M${r} 0H${l.w - r}A${r} ${r} 0 0 1 ${l.w} ${r}V${l.h - r}A${r} ${r} 0 0 1 ${l.w - r} ${l.h}H${r}A${r} ${r} 0 0 1 0 ${l.h - r}V${r}A${r} ${r} 0 0 1 ${r} 0Z`;
  return (
    <g class="card-cut" pointer-events="none">
      <path class="card-off" fill-rule="evenodd" d={outer + inner} />
      <path class="card-edge" d={inner} />
      <rect class="card-safe" x={l.safe} y={l.safe} width={l.w - 2 * l.safe} height={l.h - 2 * l.safe} />
    </g>
  );
}

function OnIt({ laid: l, pin, still }: { laid: LaidCard; pin: PinPicture | undefined; still: boolean }) {
  const by = movedBy({ what: 'pin' });
  const k = pin ? 1 / pin.pxPerMM : 0;
  return (
    <>
      {l.hang ? <Hang laid={l} /> : null}
      <Taken held={{ what: 'pin' }} label={pinOnCard(l)} still={still}>
        <g transform={`translate(${l.pin.x + by.dx} ${l.pin.y + by.dy})`}>
          {pin ? <image href={pin.url} x={-pin.left * k} y={-pin.top * k} width={pin.w * k} height={pin.h * k} pointer-events="none" /> : null}
          <path class={pin ? 'pin-reach' : 'pin-aid'} d={l.outline} />
        </g>
      </Taken>
      <g class="card-holes" pointer-events="none" transform={`translate(${by.dx} ${by.dy})`}>
        {l.holes.map((h) => <g key={h.no}><circle cx={h.x} cy={h.y} r={h.across / 2} /><path d={`M${h.x - h.across / 2 - 0.8} ${h.y}h${h.across + 1.6}M${h.x} ${h.y - h.across / 2 - 0.8}v${h.across + 1.6}`} /></g>)}
      </g>
    </>
  );
}

function Hang({ laid: l }: { laid: LaidCard }) {
  const { w = 0, h = 0, down = 0 } = l.hang ?? {};
  return <rect class="card-hang" x={l.w / 2 - w / 2} y={down - h / 2} width={w} height={h} rx={Math.min(w, h) / 2} pointer-events="none" />;
}

function Words(p: { laid: LaidCard; card: BackingCard; index: number; box: readonly number[]; d: string; x: number; y: number; still: boolean }) {
  const own = p.card.texts?.[p.index];
  const by = movedBy({ what: 'text', index: p.index });
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = p.box;
  if (!own) return null;
  return (
    <Taken held={{ what: 'text', index: p.index }} label={`“${own.words}”, ${placedWords(own.x, own.y)}. ${MOVES}`} still={p.still}>
      <g transform={`translate(${by.dx} ${by.dy})`}>
        <rect class="card-reach" x={x0 - 1} y={y0 - 1} width={Math.max(0, x1 - x0) + 2} height={Math.max(0, y1 - y0) + 2} />
        <path transform={`translate(${p.x} ${p.y})`} d={p.d} fill={hexOf(own.rgb)} />
      </g>
    </Taken>
  );
}

function Own({ card: c, still }: { card: BackingCard; still: boolean }) {
  const p = c.picture;
  if (!p || !p.data) return null;
  const by = movedBy({ what: 'picture' });
  return (
    <Taken held={{ what: 'picture' }} label={`Your picture, ${placedWords(p.x, p.y)}. ${MOVES}`} still={still}>
      <image href={`data:${p.type};base64,${p.data}`} x={p.x + by.dx} y={p.y + by.dy} width={p.wide} height={(p.wide * p.h) / p.w} preserveAspectRatio="none" />
    </Taken>
  );
}

/** Something on the card that can be taken and moved. */
function Taken({ held, label, still, children }: { held: Held; label: string; still: boolean; children: ComponentChildren }) {
  const from = useRef<{ x: number; y: number; perPx: number }>(undefined);
  if (still) return <g>{children}</g>;
  const down = (e: PointerEvent & { currentTarget: SVGGElement }) => {
    const k = e.currentTarget.ownerSVGElement?.getScreenCTM()?.a;
    if (e.button !== 0 || !k) return;
    e.currentTarget.setPointerCapture(e.pointerId);
    from.current = { x: e.clientX, y: e.clientY, perPx: 1 / k };
  };
  const move = (e: PointerEvent) => {
    const f = from.current;
    if (f) holding.value = { held, dx: (e.clientX - f.x) * f.perPx, dy: (e.clientY - f.y) * f.perPx };
  };
  const up = () => { from.current = undefined; letGoHeld(); };
  const key = (e: KeyboardEvent) => {
    const step = e.shiftKey ? FINE : STEP;
    const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[e.key];
    if (!by || e.ctrlKey || e.metaKey || e.altKey) return;
    e.preventDefault();
    const at = movedBy(held);
    holding.value = { held, dx: at.dx + (by[0] ?? 0), dy: at.dy + (by[1] ?? 0) };
  };
  return (
    <g
      class="taken" tabIndex={0} role="button" aria-label={label}
      onPointerDown={down} onPointerMove={move} onPointerUp={up} onPointerCancel={() => { from.current = undefined; holding.value = undefined; }}
      onKeyDown={key} onKeyUp={(e) => { if (e.key.startsWith('Arrow')) letGoHeld(); }} onBlur={() => { if (!from.current) letGoHeld(); }}
    >
      {children}
    </g>
  );
}
