// The platings as they suit this design, the best first, each with the colour
// that comes nearest to it.
import { useState } from 'preact/hooks';
import type { Plating, PlatingID, Ranked } from '../engine/wire.gen';
import { Swatch, Why } from '../widgets/basic';
import { tone } from '../widgets/look';
import { capital } from '../words/words';
import type { Names } from '../words/sight';

export interface SightPlatingsProps {
  ranked: readonly Ranked[];
  platings: readonly Plating[];
  names: Names;
  late: boolean;
  onPlating: (id: PlatingID) => void;
}

/** So many are seen at once, and the chosen one always. */
const FEW = 3;

export function SightPlatings(p: SightPlatingsProps) {
  const [all, setAll] = useState(false);
  const shown = p.ranked.filter((r, i) => all || i < FEW || r.chosen);
  if (p.ranked.length === 0) return null;
  return (
    <fieldset class={p.late ? 'ranked late-answer' : 'ranked'}>
      <legend>Platings for this design, the best told apart first</legend>
      {shown.map((r) => <Row key={r.plating} ranked={r} place={p.ranked.indexOf(r) + 1} of={p} />)}
      {shown.length < p.ranked.length ? <button type="button" class="plain" onClick={() => setAll(true)}>Show all {p.ranked.length}</button> : null}
      <Why><p>Ranked by how much of the length where enamel meets metal is told apart by colour, then by how many colours are told apart in dim light, then by the colour that comes nearest. What cannot go with the fill comes last.</p></Why>
    </fieldset>
  );
}

function Row({ ranked: r, place, of }: { ranked: Ranked; place: number; of: SightPlatingsProps }) {
  const { platings, names, onPlating } = of;
  const plating = platings.find((x) => x.id === r.plating);
  const nearest = names.flats.find((f) => f.id === r.decides);
  return (
    <label class={r.chosen ? 'ranked-row now' : 'ranked-row'}>
      <input type="radio" name="ranked" checked={r.chosen} onChange={() => onPlating(r.plating)} />
      <span class="ranked-place" aria-hidden="true">{place}</span>
      <span class="pair-chips" aria-hidden="true">
        <span class="swatch big metal" style={plating ? tone(plating) : undefined} />
        {nearest ? <Swatch rgb={nearest.rgb} big /> : null}
      </span>
      <span>
        <b>{capital(r.name)}</b>{r.chosen ? <span class="hint"> chosen</span> : null}
        <span class="ranked-words">{r.fail.length > 0 ? <span class="ranked-mark" aria-hidden="true">✕ </span> : <span class="ranked-mark fine" aria-hidden="true">✓ </span>}{r.words}{r.fits ? '' : '; goes with soft enamel only, as a rule'}</span>
      </span>
    </label>
  );
}
