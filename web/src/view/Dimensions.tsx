// Width and height as dimension lines; their arrowheads are dragged, their
// numbers typed.
import { useRef, useState } from 'preact/hooks';
import { LengthField } from '../widgets/LengthField';
import { inches, mm } from '../words/length';
import type { Box } from './place';

interface Props {
  /** The silhouette on the sheet, px. */
  pin: Box;
  w: number;
  h: number;
  /** The height line stands this far left of the pin, the width line this far below, px. */
  off: number;
  onDrag: (factor: number) => void;
  onDrop: () => void;
  onWidth: (mm: number) => void;
  onHeight: (mm: number) => void;
}

type Side = 'w' | 'h';

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
      <Label side="w" value={p.w} x={pin.x + pin.w / 2} y={y} typing={typing === 'w'} setTyping={setTyping} onSet={p.onWidth} />
      <Label side="h" value={p.h} x={x} y={pin.y + pin.h / 2} typing={typing === 'h'} setTyping={setTyping} onSet={p.onHeight} />
    </>
  );
}

const NAMES = { w: 'Width', h: 'Height' } as const;

interface LabelProps {
  side: Side;
  value: number;
  x: number;
  y: number;
  typing: boolean;
  setTyping: (s: Side | undefined) => void;
  onSet: (mm: number) => void;
}

function Label({ side, value, x, y, typing, setTyping, onSet }: LabelProps) {
  return (
    <div class={`dim-label ${side}`} style={{ left: `${x}px`, top: `${y}px` }}>
      {typing ? (
        <div
          class="dim-typing"
          onKeyDown={(e) => (e.key === 'Escape' || e.key === 'Enter') && setTyping(undefined)}
          onFocusOut={() => setTyping(undefined)}
        >
          <LengthField label={NAMES[side]} mm={value} least={2} most={150} onLength={onSet} hideLabel autofocus />
        </div>
      ) : (
        <button type="button" onClick={() => setTyping(side)} aria-label={`${NAMES[side]} ${mm(value)}, ${inches(value)}: type another`}>
          <b>{mm(value)}</b> <span>{inches(value)}</span>
        </button>
      )}
    </div>
  );
}

type GripProps = Props & { side: Side; sign: 1 | -1; x: number; y: number };

function Grip({ side, sign, x, y, pin, w, h, onDrag, onDrop }: GripProps) {
  const from = useRef<{ at: number; half: number }>(undefined);
  const value = side === 'w' ? w : h;
  const along = (e: PointerEvent) => (side === 'w' ? e.clientX : e.clientY);
  const key = (e: KeyboardEvent) => {
    const step = { ArrowRight: NUDGE, ArrowUp: NUDGE, ArrowLeft: -NUDGE, ArrowDown: -NUDGE }[e.key];
    if (step === undefined) return;
    e.preventDefault();
    onDrag((value + step) / value);
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
      aria-valuenow={Math.round(value * 10) / 10}
      aria-valuemin={5}
      aria-valuemax={150}
      aria-valuetext={`${mm(value)}, ${inches(value)}`}
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
