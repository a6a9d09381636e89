// Proof and pin over each other: one is seen, the other while it is held, or both
// in turn.
import { useEffect, useState } from 'preact/hooks';
import type { Deviation } from '../engine/wire.gen';
import type { Shot } from '../state/store';
import { Canvas } from '../widgets/Canvas';
import { hasPlace, KIND } from '../words/proof';

export interface OverProps {
  shown: Shot;
  asked: Shot;
  differences: readonly Deviation[];
  picked: number | undefined;
  onPick: (number: number | undefined) => void;
}

/** Each picture in turn for so long, ms: slow enough to be no flicker. */
const TURN = 700;

/** How much larger a place is shown that is walked to. */
const CLOSE = 3;

export function ProofOver(p: OverProps) {
  const [blinking, setBlinking] = useState(false);
  const [held, setHeld] = useState(false);
  const blink = useBlink(blinking);
  const other = held || blink;
  const { w, h } = p.shown.picture;
  const place = (d: Deviation) => ({ x: (d.x * p.shown.picture.scale + p.shown.picture.dx) / w, y: (d.y * p.shown.picture.scale + p.shown.picture.dy) / h });
  const near = p.differences.find((d) => d.number === p.picked && hasPlace(d) && !d.behind);
  const at = near && place(near);
  const zoom = at ? { transformOrigin: `${at.x * 100}% ${at.y * 100}%`, transform: `scale(${CLOSE})` } : {};
  const hold = (on: boolean) => () => setHeld(on);
  return (
    <figure class="proof-over">
      <div class="proof-frame" style={{ aspectRatio: `${w} / ${h}` }}>
        <div class="proof-zoom" style={zoom}>
          <Canvas shot={p.shown} label="The proof, laid like the pin" class={other ? 'under' : ''} />
          <Canvas shot={p.asked} label="The pin as you asked for it" class={other ? '' : 'under'} />
          <svg viewBox={`0 0 ${w} ${h}`} aria-hidden="true">
            {p.differences.filter((d) => hasPlace(d) && !d.behind).map((d) => <Trace key={d.number} d={d} shot={p.shown} picked={d.number === p.picked} />)}
          </svg>
        </div>
        <ol class="flags" aria-label="What differs, on the pin">
          {p.differences.filter((d) => hasPlace(d) && !d.behind && (!near || d === near)).map((d) => {
            const q = place(d);
            return (
              <li key={d.number} class={`${d.verdict}${d.number === p.picked ? ' picked' : ''}`} style={{ left: `${q.x * 100}%`, top: `${q.y * 100}%` }}>
                <button type="button" aria-label={`${d.number}: ${KIND[d.kind]}`} onClick={() => p.onPick(d.number === p.picked ? undefined : d.number)}><span>{d.number}</span></button>
              </li>
            );
          })}
        </ol>
        <span class="proof-which">{other ? 'as you asked' : 'the proof'}</span>
      </div>
      <figcaption class="row-acts">
        <button
          type="button" class="plain" aria-pressed={held}
          onPointerDown={hold(true)} onPointerUp={hold(false)} onPointerLeave={hold(false)} onPointerCancel={hold(false)}
          onKeyDown={(e) => { if (e.key === ' ' || e.key === 'Enter') { e.preventDefault(); setHeld(true); } }} onKeyUp={hold(false)} onBlur={hold(false)}
          onContextMenu={(e) => e.preventDefault()}
        >Hold to see what you asked for</button>
        <button type="button" class="plain" aria-pressed={blinking} onClick={() => setBlinking(!blinking)}>{blinking ? 'Stop blinking' : 'Blink'}</button>
        {near ? <button type="button" class="plain" onClick={() => p.onPick(undefined)}>Show all of it</button> : null}
      </figcaption>
    </figure>
  );
}

function useBlink(on: boolean): boolean {
  const [other, setOther] = useState(false);
  useEffect(() => {
    if (!on) return setOther(false);
    const timer = setInterval(() => setOther((o) => !o), TURN);
    return () => clearInterval(timer);
  }, [on]);
  return other;
}

/** Where it lies: along its path, or its box. */
function Trace({ d, shot, picked }: { d: Deviation; shot: Shot; picked: boolean }) {
  const { scale, dx, dy } = shot.picture;
  const path = d.path ?? [];
  let line = '';
  for (let i = 0; i + 1 < path.length; i += 2) line += `${i === 0 ? 'M' : 'L'}${((path[i] ?? 0) * scale + dx).toFixed(1)} ${((path[i + 1] ?? 0) * scale + dy).toFixed(1)}`;
  // A colour that differs everywhere has no box of its own.
  if (!line && d.whole) return null;
  if (!line) {
    const [x0, y0, x1, y1] = d.box.map((v, i) => v * scale + (i % 2 === 0 ? dx : dy)) as [number, number, number, number];
    line = `M${x0} ${y0}H${x1}V${y1}H${x0}Z`;
  }
  return <g class={picked ? 'trace picked' : 'trace'}><path class="halo" d={line} /><path d={line} /></g>;
}
