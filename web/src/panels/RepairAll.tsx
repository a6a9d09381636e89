// Everything repaired at once: looked at first, made only when it is wished.
import { useState } from 'preact/hooks';
import type { Flats, MendAll } from '../engine/wire.gen';
import type { Preview, Sized } from '../state/mend';
import { middleOf, repairsOf } from '../state/repairs';
import { Canvas } from '../widgets/Canvas';
import { Choice } from '../widgets/basic';
import { kindWords } from '../words/findings';
import { outcomeSays } from '../words/repairs';
import { plural } from '../words/words';

export interface RepairAllProps {
  /** Places that fail. */
  places: number;
  busy: boolean;
  preview: Pick<Preview, 'answer' | 'before' | 'after'> | undefined;
  raster: Pick<Flats, 'w' | 'h'> | undefined;
  sized: Pick<Sized, 'share' | 'size' | 'running' | 'search'> | undefined;
  onTry: () => void;
  onMake: () => void;
  onLeave: () => void;
  onSeek: () => void;
  onStop: () => void;
  onSize: (mm: number) => void;
}

export function RepairAll(p: RepairAllProps) {
  return (
    <div class="repair-all">
      {p.preview ? <Outcome {...p} {...p.preview} /> : <Ask {...p} />}
      <Smallest {...p} />
    </div>
  );
}

function Ask({ places, busy, onTry }: RepairAllProps) {
  if (places === 0) return null;
  return (
    <>
      <button type="button" class="solid" aria-busy={busy || undefined} disabled={busy} onClick={onTry}>
        {places === 1 ? 'Repair the place that fails' : `Repair all ${places} places`} …
      </button>
      <p class="hint">You see it before and after first; nothing is changed until you say so.</p>
    </>
  );
}

function Outcome({ answer, before, after, raster, onMake, onLeave }: RepairAllProps & Pick<Preview, 'answer' | 'before' | 'after'>) {
  const some = answer.recipes.length > 0;
  return (
    <section class="outcome" aria-label="All repaired, to look at">
      <p role="status"><b>{outcomeSays(answer)}</b></p>
      {before && after && raster ? <Compare answer={answer} before={before} after={after} raster={raster} /> : null}
      <LeftOver answer={answer} />
      <div class="two">
        {some ? <button type="button" class="solid" onClick={onMake}>{answer.recipes.length === 1 ? 'Make this repair' : 'Make these repairs'}</button> : null}
        <button type="button" class="plain" onClick={onLeave}>{some ? 'Leave it as it is' : 'Close'}</button>
      </div>
    </section>
  );
}

type Shot = NonNullable<Preview['before']>;

/** One picture in place of the other, so that a small change is seen to move. */
function Compare({ answer, before, after, raster }: { answer: MendAll; before: Shot; after: Shot; raster: Pick<Flats, 'w' | 'h'> }) {
  const [which, setWhich] = useState<'before' | 'after'>('after');
  const shot = which === 'before' ? before : after;
  const { w, h, scale, dx, dy } = shot.picture;
  const rings = repairsOf(answer.recipes).flatMap(({ recipes: [r] }) => {
    const m = r && middleOf(r);
    return m ? [{ x: m[0] * raster.w * scale + dx, y: m[1] * raster.h * scale + dy }] : [];
  });
  return (
    <>
      <figure class="compare" style={{ aspectRatio: `${w} / ${h}` }}>
        <Canvas shot={shot} label={which === 'before' ? 'The pin as it is' : 'The pin repaired'} />
        <svg viewBox={`0 0 ${w} ${h}`} aria-hidden="true">{rings.map((q, i) => <circle key={i} cx={q.x} cy={q.y} r={0.03 * Math.max(w, h)} />)}</svg>
      </figure>
      <Choice
        legend={`Ringed: ${plural(rings.length, 'repair')}`} value={which} onPick={setWhich}
        options={[{ value: 'before', label: 'as it is' }, { value: 'after', label: 'repaired' }]}
      />
    </>
  );
}

function LeftOver({ answer }: { answer: MendAll }) {
  if (answer.left.length === 0) return null;
  return (
    <>
      <h4>{answer.left.length === 1 ? 'One place needs you' : `${answer.left.length} places need you`}</h4>
      <ul class="left-over">
        {answer.left.map((l, i) => <li key={i}><b>{kindWords(l.finding)}.</b> {l.why}</li>)}
      </ul>
    </>
  );
}

function Smallest({ sized, onSeek, onStop, onSize }: RepairAllProps) {
  if (!sized || (!sized.running && !sized.search.done)) {
    return <button type="button" class="link" onClick={onSeek}>Find the smallest size that holds as repaired</button>;
  }
  if (sized.running) {
    return (
      <p class="seeking">
        <label>Trying sizes, each repaired <progress max={1} value={sized.share} /></label>
        <button type="button" class="link" onClick={onStop}>stop</button>
      </p>
    );
  }
  const { size } = sized;
  return size
    ? <p role="status">As repaired, everything holds from <b>{size.inMM}</b>, to half a millimetre. <button type="button" class="link" onClick={() => onSize(size.mm)}>Make the pin {size.inMM}</button></p>
    : <p role="status">No size was found at which repairs alone make everything hold.</p>;
}
