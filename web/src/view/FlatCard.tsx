// What can be done with one colour, and with the area of it that was touched.
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Edit, Flat, FlatCode, NamedColour, Plating, RGB8 } from '../engine/wire.gen';
import { hexOf, rgbOf } from '../state/project';
import { typed } from '../state/typed';
import { Tag } from '../widgets/CodeRows';
import { Choice, Swatch } from '../widgets/basic';
import { TextField } from '../widgets/TextField';
import { plural, ROLE_MEANS, ROLE_WORDS } from '../words/words';
import { StartingSet } from './Swatches';

interface Props {
  flat: Flat;
  /** What a maker's list calls it. */
  code?: FlatCode | undefined;
  others: readonly Flat[];
  starting: readonly NamedColour[];
  plating: Plating | undefined;
  pieces: number;
  /** What can set its fill, or its metal, apart. */
  finish?: ComponentChildren;
  /** What can be done with the one area that was touched. */
  area?: ComponentChildren;
  onEdit: (e: Edit, what: string, close?: boolean) => void;
}

const ROLES = (['enamel', 'metal', 'cutout', 'printed'] as const).map((r) => ({ value: r, label: ROLE_WORDS[r], hint: ROLE_MEANS[r] }));

export function FlatCard(p: Props) {
  if (!p.area) return <div class="card-body"><Whole {...p} /></div>;
  return (
    <div class="card-body">
      {p.area}
      <details class="whole">
        <summary>All of {p.flat.name} <span class="hint">{plural(p.pieces, p.flat.role === 'metal' ? 'piece' : 'area')}</span></summary>
        <div class="card-body"><Whole {...p} /></div>
      </details>
    </div>
  );
}

/** What concerns the colour wherever it is. */
function Whole(p: Props) {
  const f = p.flat;
  const [joining, setJoining] = useState(false);
  return (
    <>
      {f.role === 'metal' ? (
        <p class="facts">Drawn in <Swatch rgb={f.rgb} label="the colour drawn" />, it takes the plating{p.plating ? <>: <Swatch rgb={p.plating.mid} /> {p.plating.name}</> : null}.</p>
      ) : (
        <ColourRow flat={f} starting={p.starting} onEdit={p.onEdit} />
      )}
      <TextField label="name" value={f.name} onSet={(t) => { p.onEdit({ op: 'name', flat: f.id, name: t.trim() }, t.trim() ? `Renamed to ${t.trim()}` : 'Named plainly again'); return undefined; }} />
      {p.code ? <p class="facts">Ordered as <Tag code={p.code.code} written /> {p.code.named}</p> : null}
      <Choice legend="becomes" value={f.role} options={ROLES} onPick={(role) => p.onEdit({ op: 'role', flat: f.id, role }, `${f.name} is now ${ROLE_WORDS[role]}`)} />
      {p.finish}
      <label class="tick">
        <input type="checkbox" checked={f.locked} onChange={(e) => p.onEdit({ op: 'lock', flat: f.id, locked: e.currentTarget.checked }, e.currentTarget.checked ? `${f.name} is kept` : `${f.name} is free`)} />
        <span>Keep at every count of colours</span>
      </label>
      {joining ? <Joining {...p} /> : null}
      {!joining && p.others.length > 0 ? <div class="two"><button type="button" class="plain" onClick={() => setJoining(true)}>Join with …</button></div> : null}
    </>
  );
}

function Joining({ flat, others, onEdit }: Props) {
  return (
    <fieldset class="join">
      <legend>Join with</legend>
      {others.map((o) => (
        <button key={o.id} type="button" class="plain" onClick={() => onEdit({ op: 'join', flat: flat.id, with: o.id }, `Joined ${flat.name} with ${o.name}`, true)}>
          <Swatch rgb={o.rgb} /> {o.name}
        </button>
      ))}
    </fieldset>
  );
}

function ColourRow({ flat, starting, onEdit }: Pick<Props, 'flat' | 'starting' | 'onEdit'>) {
  const hex = hexOf(flat.rgb);
  const set = (rgb: RGB8 | undefined) => rgb && onEdit({ op: 'recolour', flat: flat.id, rgb }, `Recoloured ${flat.name}`);
  return (
    <>
      <div class="colour-row">
        <label>
          <span class="field-label">colour</span>
          <input type="color" value={hex} onChange={(e) => set(rgbOf(e.currentTarget.value))} />
        </label>
        <TextField label="as hex" value={hex} onSet={(text) => typed({ text, as: 'colour' }, (t) => set(t.rgb))} />
      </div>
      <details class="starting">
        <summary>colours that go together</summary>
        <StartingSet colours={starting} onPick={set} />
      </details>
    </>
  );
}
