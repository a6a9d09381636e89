// Width and height as dimension lines; their arrowheads are dragged, their
// numbers typed.
import { useRef, useState } from 'preact/hooks';
import { LengthField } from '../widgets/LengthField';
import type { Length } from '../engine/wire.gen';
import { mm } from '../words/length';
import type { Box } from './place';

interface Props {
  /** The silhouette on the sheet, px. */
  pin: Box;
  w: Length;
  h: Length;
  /** What the pin is dragged to, over what it is. */
  factor: number;
  /** Sizes that can be typed, mm. */
  bounds: { least: number; most: number };
  /** The height line stands this far left of the pin, the width line this far below, px. */
  off: number;
  onDrag: (factor: number) => void;
  onDrop: () => void;
  onSize: (side: Side, mm: number) => void;
}

export type Side = 'w' | 'h';

/** One press of an arrow key changes the size by this share of a millimetre. */
const NUDGE = 0.5;

export function Dimensions(p: Props) {
  const [typing, setTyping] = useState<Side>();
  const { pin, off } = p;
  const y = pin.y + pin.h + off;
  const x = pin.x - off;
  return (
    <>
      <svg class="dims" aria-hidden="true">
        <path class="ext" d={`M${pin.x} ${pin.y + pin.h + 4}V${y + 8}M${pin.x + pin.w} ${pin.y + pin.h + 4}V${y + 8}`} />
        <path class="ext" d={`M${pin.x - 4} ${pin.y}H${x - 8}M${pin.x - 4} ${pin.y + pin.h}H${x - 8}`} />
        <path class="dim" d={`M${pin.x} ${y}H${pin.x + pin.w}M${x} ${pin.y}V${pin.y + pin.h}`} />
        <path class="arrow" d={`M${pin.x} ${y}l10 -3.5v7zM${pin.x + pin.w} ${y}l-10 -3.5v7z`} />
        <path class="arrow" d={`M${x} ${pin.y}l-3.5 10h7zM${x} ${pin.y + pin.h}l-3.5 -10h7z`} />
      </svg>
      <Grip {...p} side="w" sign={-1} x={pin.x} y={y} />
      <Grip {...p} side="w" sign={1} x={pin.x + pin.w} y={y} />
      <Grip {...p} side="h" sign={-1} x={x} y={pin.y} />
      <Grip {...p} side="h" sign={1} x={x} y={pin.y + pin.h} />
      <Label {...p} side="w" x={pin.x + pin.w / 2} y={y} typing={typing === 'w'} setTyping={setTyping} />
      <Label {...p} side="h" x={x} y={pin.y + pin.h / 2} typing={typing === 'h'} setTyping={setTyping} />
    </>
  );
}

const NAMES = { w: 'Width', h: 'Height' } as const;

interface LabelProps extends Props {
  side: Side;
  x: number;
  y: number;
  typing: boolean;
  setTyping: (s: Side | undefined) => void;
}

/** What is dragged is shown as it is drawn: the engine's numbers, stretched. */
function dragged(l: Length, factor: number) {
  return { mm: l.mm * factor, inMM: mm(l.mm * factor), inInches: `${(l.inches * factor).toFixed(2)} in` };
}

function Label(p: LabelProps) {
  const { side, typing, setTyping } = p;
  const size = dragged(p[side], p.factor);
  return (
    <div class={`dim-label ${side}`} style={{ left: `${p.x}px`, top: `${p.y}px` }}>
      {typing ? (
        <div class="dim-typing">
          <LengthField
            label={NAMES[side]} mm={size.mm} {...p.bounds} hideLabel autofocus
            onLength={(v) => p.onSize(side, v)} onDone={() => setTyping(undefined)}
          />
        </div>
      ) : (
        <button type="button" onClick={() => setTyping(side)} aria-label={`${NAMES[side]} ${size.inMM}, ${size.inInches}: type another`}>
          <b>{size.inMM}</b> <span>{size.inInches}</span>
        </button>
      )}
    </div>
  );
}

type GripProps = Props & { side: Side; sign: 1 | -1; x: number; y: number };

function Grip(p: GripProps) {
  const { side, sign, x, y, pin, onDrag, onDrop } = p;
  const from = useRef<{ at: number; half: number }>(undefined);
  const size = dragged(p[side], p.factor);
  const along = (e: PointerEvent) => (side === 'w' ? e.clientX : e.clientY);
  const key = (e: KeyboardEvent) => {
    const step = { ArrowRight: NUDGE, ArrowUp: NUDGE, ArrowLeft: -NUDGE, ArrowDown: -NUDGE }[e.key];
    if (step === undefined) return;
    e.preventDefault();
    onDrag((size.mm + step) / size.mm);
    onDrop();
  };
  return (
    <div
      class={`grip ${side}`}
      style={{ left: `${x}px`, top: `${y}px` }}
      role="slider"
      tabIndex={sign === 1 ? 0 : -1}
      aria-label={`${NAMES[side]} of the pin`}
      aria-hidden={sign === 1 ? undefined : true}
      aria-valuenow={Math.round(size.mm * 10) / 10}
      aria-valuemin={p.bounds.least}
      aria-valuemax={p.bounds.most}
      aria-valuetext={`${size.inMM}, ${size.inInches}`}
      onKeyDown={key}
      onPointerDown={(e) => {
        e.currentTarget.setPointerCapture(e.pointerId);
        from.current = { at: along(e), half: (side === 'w' ? pin.w : pin.h) / 2 };
        e.preventDefault();
      }}
      onPointerMove={(e) => {
        const f = from.current;
        if (f) onDrag(Math.max(0.1, (f.half + sign * (along(e) - f.at)) / f.half));
      }}
      onPointerUp={() => {
        if (from.current) onDrop();
        from.current = undefined;
      }}
      onPointerCancel={() => {
        from.current = undefined;
        onDrop();
      }}
    />
  );
}
