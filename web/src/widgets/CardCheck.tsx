// A bank card drawn on the screen, dragged until it matches the one in the hand.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Card } from '../engine/wire.gen';

interface Props {
  card: Card;
  /** CSS px for one mm, as it is taken now. */
  perMM: number;
  sure: boolean;
  /** Says what is wrong with a match that cannot be. */
  onMatched: (cssWidth: number) => Promise<string | undefined>;
}

const LEAST = 120;
const MOST = 1400;

export function CardCheck({ card, perMM, sure, onMatched }: Props) {
  const [open, setOpen] = useState(false);
  const [w, setW] = useState(perMM * card.w);
  const [complaint, setComplaint] = useState<string>();
  const grab = useRef<{ x: number; w: number }>(undefined);
  useEffect(() => setW(perMM * card.w), [perMM]);
  const match = async () => {
    const wrong = await onMatched(w);
    setComplaint(wrong);
    if (!wrong) setOpen(false);
  };
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
          style={{ width: `${w}px`, height: `${(w * card.h) / card.w}px` }}
          onPointerMove={(e) => {
            if (grab.current) setW(clamp(grab.current.w + e.clientX - grab.current.x));
          }}
          onPointerUp={() => (grab.current = undefined)}
          onPointerCancel={() => (grab.current = undefined)}
        >
          <span class="card-words">{card.words}</span>
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
          aria-valuetext={`${w.toFixed(1)} px`}
          onInput={(e) => setW(clamp(Number(e.currentTarget.value)))}
        />
      </label>
      {complaint ? <p class="warn" role="alert">{complaint}</p> : null}
      <div class="two">
        <button type="button" class="solid" onClick={() => void match()}>They match</button>
        <button type="button" class="plain" onClick={() => setOpen(false)}>Not now</button>
      </div>
    </div>
  );
}
