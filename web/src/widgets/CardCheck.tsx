// A bank card drawn on the screen, dragged until it matches the one in the hand.
import { useEffect, useRef, useState } from 'preact/hooks';
import { CARD } from '../state/truesize';

interface Props {
  perMM: number;
  sure: boolean;
  onMatched: (cssWidth: number) => void;
}

const LEAST = 120;
const MOST = 1400;

export function CardCheck({ perMM, sure, onMatched }: Props) {
  const [open, setOpen] = useState(false);
  const [w, setW] = useState(perMM * CARD.w);
  const grab = useRef<{ x: number; w: number }>(undefined);
  useEffect(() => setW(perMM * CARD.w), [perMM]);
  const clamp = (v: number) => Math.min(MOST, Math.max(LEAST, v));
  if (!open) {
    return (
      <button type="button" class="plain" onClick={() => setOpen(true)}>
        {sure ? 'Check again against a bank card' : 'Check true size with a bank card'}
      </button>
    );
  }
  return (
    <div class="card-check">
      <p>Lay a bank card on the screen, its top left corner on the drawn one, and drag the brass edge until both are the same width.</p>
      <div class="card-room">
        <div
          class="card"
          style={{ width: `${w}px`, height: `${(w * CARD.h) / CARD.w}px` }}
          onPointerMove={(e) => {
            if (grab.current) setW(clamp(grab.current.w + e.clientX - grab.current.x));
          }}
          onPointerUp={() => (grab.current = undefined)}
          onPointerCancel={() => (grab.current = undefined)}
        >
          <span class="card-words">85.60 × 53.98 mm</span>
          <div
            class="card-edge"
            onPointerDown={(e) => {
              e.currentTarget.parentElement?.setPointerCapture(e.pointerId);
              grab.current = { x: e.clientX, w };
              e.preventDefault();
            }}
          />
        </div>
      </div>
      <label class="field">
        <span class="field-label">Card width on the screen</span>
        <input
          type="range"
          min={LEAST}
          max={MOST}
          step={0.5}
          value={w}
          onInput={(e) => setW(clamp(Number(e.currentTarget.value)))}
        />
      </label>
      <div class="two">
        <button type="button" class="solid" onClick={() => { onMatched(w); setOpen(false); }}>They match</button>
        <button type="button" class="plain" onClick={() => setOpen(false)}>Not now</button>
      </div>
    </div>
  );
}
