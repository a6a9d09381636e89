// The pin on cloth, as a lens sees it and as an eye sees it from where it is
// looked at: large, and at its true size on this screen.
import { useEffect, useRef } from 'preact/hooks';
import type { NamedColour, RGB8 } from '../engine/wire.gen';
import { trueSizeOf, type Looked } from '../state/eyeLook';
import { hexOf, rgbOf } from '../state/project';
import { Swatch, Why } from '../widgets/basic';
import { Canvas } from '../widgets/Canvas';
import { distance } from '../words/sight';

export interface SightLookProps {
  plain: Looked | undefined;
  eye: Looked | undefined;
  /** Either is of an earlier wish. */
  late: boolean;
  share: number | undefined;
  problem: string;
  /** CSS px for one mm here. */
  perMM: number | undefined;
  /** How this screen's true size is known. */
  sure: string;
  cloth: RGB8;
  cloths: readonly NamedColour[];
  /** What the frame of the larger picture takes, CSS px. */
  onSide: (css: number) => void;
  onCloth: (rgb: RGB8) => void;
}

export function SightLook(p: SightLookProps) {
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const el = frame.current;
    if (!el) return undefined;
    const watch = new ResizeObserver(() => p.onSide(el.clientWidth / 2));
    watch.observe(el);
    return () => watch.disconnect();
  }, []);
  return (
    <div class="look">
      <h3>How it looks from there</h3>
      <Cloths {...p} />
      <div class={p.late ? 'look-pair late-answer' : 'look-pair'} ref={frame}>
        <View of={p.plain} perMM={p.perMM} cloth={p.cloth} title="as a lens sees it" />
        <View of={p.eye} perMM={p.perMM} cloth={p.cloth} title={p.eye ? `as an eye sees it from ${distance(p.eye.gaze.viewing.distance)}` : 'as an eye sees it'} />
      </div>
      <p class="look-work" role="status">
        {p.share === undefined ? p.problem : <label>Drawing it <progress max={1} value={p.share > 0 ? p.share : undefined} /></label>}
      </p>
      <Why>
        <p>The second picture is what is left of the first once an eye at that distance has looked at it (S-CIELAB, Zhang and Wandell 1996: light and dark, red and green, blue and yellow are each blurred as far as the eye blurs them). Shown large, the loss can be seen; at true size and from the true distance your own eye does it, and the two should look alike.</p>
        <p>The pin is {p.eye?.size.inMM ?? ''} in these pictures; {p.sure}. Screen colours are a guide only.</p>
      </Why>
    </div>
  );
}

function View({ of, perMM, cloth, title }: { of: Looked | undefined; perMM: number | undefined; cloth: RGB8; title: string }) {
  const small = of && perMM ? trueSizeOf(of, perMM) : undefined;
  const ground = { backgroundColor: hexOf(of?.gaze.cloth ?? cloth) };
  return (
    <figure>
      <div class="look-large" style={ground}>{of ? <Canvas shot={of.shot} label={`The pin, ${title}, enlarged`} /> : null}</div>
      <div class="look-true" style={ground}>
        {of && small ? <div style={{ width: `${small.w}px`, height: `${small.h}px` }}><Canvas shot={of.shot} label={`The pin, ${title}, at true size`} /></div> : null}
      </div>
      <figcaption>{title}</figcaption>
    </figure>
  );
}

function Cloths({ cloth, cloths, onCloth }: SightLookProps) {
  const now = hexOf(cloth);
  const own = !cloths.some((c) => hexOf(c.rgb) === now);
  return (
    <fieldset class="cloths">
      <legend>Worn on</legend>
      <div class="chips-row">
        {cloths.map((c) => (
          <label key={c.name} class="chip">
            <input type="radio" name="cloth" checked={hexOf(c.rgb) === now} onChange={() => onCloth(c.rgb)} />
            <Swatch rgb={c.rgb} /> <span>{c.name}</span>
          </label>
        ))}
        <label class={own ? 'chip free now' : 'chip free'}>
          <input type="color" value={now} onChange={(e) => { const rgb = rgbOf(e.currentTarget.value); if (rgb) onCloth(rgb); }} />
          <span>another …</span>
        </label>
      </div>
    </fieldset>
  );
}
