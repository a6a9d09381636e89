// The pin at its true size on this screen, always on show.
import type { Check } from '../engine/wire.gen';
import type { Shot } from '../state/store';
import { mm } from '../words/length';
import { Canvas } from './Canvas';

interface Props {
  shot: Shot | undefined;
  check: Check | undefined;
  /** CSS px for one mm here. */
  perMM: number;
  sure: boolean;
  /** While the size is dragged: asked-for size over the shown one. */
  factor: number;
  onCheck: () => void;
}

export function Twin({ shot, check, perMM, sure, factor, onCheck }: Props) {
  const size = shot && check ? twinSize(shot, check, perMM * factor) : undefined;
  return (
    <figure class="twin" aria-label="True-size twin">
      <div class="twin-cloth" style={size ? { minWidth: `${size.w}px`, minHeight: `${size.h}px` } : {}}>
        <div style={size ? { width: `${size.w}px`, height: `${size.h}px` } : {}}>
          <Canvas shot={shot} label={check ? `The pin at true size, ${mm(check.w)} by ${mm(check.h)}` : 'The pin at true size'} />
        </div>
        <Rule perMM={perMM} />
      </div>
      <figcaption>
        <span class="small-caps">true size</span>
        <button type="button" class="link" onClick={onCheck}>{sure ? 'checked here' : 'a guess until checked'}</button>
      </figcaption>
    </figure>
  );
}

export function twinSize(shot: Shot, check: Check, perMM: number): { w: number; h: number } {
  // Picture px -> working px -> mm -> CSS px.
  const k = perMM / (shot.picture.scale * check.scale);
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
