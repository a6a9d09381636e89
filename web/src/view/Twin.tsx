// The pin at its true size on this screen: beside the large one, or where there
// is no room for both, in its place when asked for.
import { useState } from 'preact/hooks';
import type { Check, TrueSize } from '../engine/wire.gen';
import type { Shot } from '../state/store';
import { Canvas } from '../widgets/Canvas';

interface Props {
  shot: Shot | undefined;
  check: Check | undefined;
  /** CSS px for one mm here; missing until the engine has spoken. */
  perMM: number | undefined;
  trueSize: TrueSize | undefined;
  /** While the size is dragged: asked-for size over the shown one. */
  factor: number;
  /** There is no room beside the large pin. */
  folded: boolean;
  onCheck: () => void;
}

export function Twin(p: Props) {
  const [open, setOpen] = useState(false);
  const { trueSize } = p;
  const way = p.folded ? (open ? ' folded open' : ' folded') : '';
  return (
    <figure class={`twin${way}`} aria-label="True-size twin">
      <Cloth {...p} />
      {trueSize ? (
        <figcaption>
          {p.folded ? <button type="button" class="fold" onClick={() => setOpen(!open)}>{open ? 'Back to the large one' : 'At true size'}</button> : <span class="small-caps">true size</span>}
          {p.folded && !open ? null : <button type="button" class="link" onClick={p.onCheck}>{trueSize.words}</button>}
        </figcaption>
      ) : null}
    </figure>
  );
}

/** Nothing is drawn until its size is known: a wrong twin is worse than none. */
function Cloth({ shot, check, perMM, factor }: Props) {
  const size = twinSize(shot, check, perMM, factor);
  if (!size || !perMM || !check) return null;
  return (
    <div class="twin-cloth" style={{ minWidth: `${size.w}px`, minHeight: `${size.h}px` }}>
      <div style={{ width: `${size.w}px`, height: `${size.h}px` }}>
        <Canvas shot={shot} label={`The pin at true size, ${check.shown.w.inMM} by ${check.shown.h.inMM}`} />
      </div>
      <Rule perMM={perMM} />
    </div>
  );
}

/** Size of the twin's picture, CSS px; `factor` is what it is dragged to. */
export function twinSize(shot: Shot | undefined, check: Check | undefined, perMM: number | undefined, factor: number) {
  if (!shot || !check || perMM === undefined) return undefined;
  // Picture px -> working px -> mm -> CSS px.
  const k = (perMM * factor) / (shot.picture.scale * check.scale);
  return { w: shot.picture.w * k, h: shot.picture.h * k };
}

function Rule({ perMM }: { perMM: number }) {
  const ticks = Array.from({ length: 11 }, (_, i) => `M${i * perMM} 0v${i % 5 === 0 ? 7 : 4}`).join('');
  return (
    <svg class="rule" width={10 * perMM + 1} height={9} aria-label="A rule of 10 mm" role="img">
      <path d={`M0 .5H${10 * perMM}${ticks}`} />
    </svg>
  );
}
