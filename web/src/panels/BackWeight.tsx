// What the pin weighs, alone and packed, and what it is made and packed with.
import type { Advice, Depths, Packing, Range } from '../engine/wire.gen';
import { typed } from '../state/typed';
import { Choice } from '../widgets/basic';
import { LengthField } from '../widgets/LengthField';
import { RangeField } from '../widgets/RangeField';
import { TextField } from '../widgets/TextField';
import type { BackProps } from './BackPanel';

type Props = BackProps & { back: Advice };

/** Thickness of a base, mm: thinner bends at a touch, thicker is no pin. */
const THIN = 0.5;
const THICK = 10;

/** No card is larger than this, mm. */
const LARGEST_CARD = 1000;

export function BackWeight(p: Props) {
  return (
    <>
      <h3>Weight</h3>
      <ul class="notes">{p.back.massSays.map((w) => <li key={w}>{w}</li>)}</ul>
      <p class="hint">{p.back.form.says}</p>
      <details class="more">
        <summary>Metal, depths and packing</summary>
        <Choice
          legend="Metal under the plating"
          value={p.design.base}
          onPick={(base) => p.onMetal({ base }, `Made of ${base}`)}
          options={[
            { value: 'iron', label: 'iron' }, { value: 'brass', label: 'brass' }, { value: 'copper', label: 'copper' },
            { value: 'zinc', label: 'zinc alloy', hint: 'Cast pins are zinc alloy, as a rule.' },
          ]}
        />
        <LengthField label="thickness, back to top of the metal" mm={p.design.thickness} least={THIN} most={THICK}
          onLength={(thickness, words) => p.onMetal({ thickness }, `${words} thick`)} />
        <DepthFields {...p} />
        <PackingFields {...p} />
      </details>
    </>
  );
}

const DEPTHS: readonly { key: keyof Depths; label: string; unit: string }[] = [
  { key: 'recess', label: 'depth of colour areas', unit: 'mm' },
  { key: 'sunk', label: 'soft fill below the metal', unit: 'mm' },
  { key: 'resin', label: 'density of the fill', unit: 'g/cm³' },
];

function DepthFields({ design, usual, onBack }: Props) {
  const own = design.back?.depths;
  const now = own ?? usual?.depths;
  if (!now) return null;
  const set = (key: keyof Depths, end: Partial<Range>) => onBack((b) => {
    const was = b.depths ?? now;
    return { depths: { ...was, [key]: { ...was[key], ...end } } };
  }, 'Changed depths and fill');
  return (
    <>
      <div class="range-grid">
        {DEPTHS.map((c) => <RangeField key={c.key} label={c.label} unit={c.unit} range={now[c.key]} onRange={(end) => set(c.key, end)} />)}
      </div>
      {own ? <button type="button" class="plain" onClick={() => onBack(() => ({ depths: undefined }), 'Usual depths')}>Back to the usual depths</button> : null}
    </>
  );
}

function PackingFields({ design, usual, onBack }: Props) {
  const own = design.back?.packing;
  const now = own ?? usual?.packing;
  if (!now) return null;
  const set = (change: (was: Packing) => Partial<Packing>) => onBack((b) => {
    const was = b.packing ?? now;
    return { packing: { ...was, ...change(was) } };
  }, 'Changed the packing');
  const side = (key: 'cardW' | 'cardH', label: string) => (
    <LengthField label={label} mm={now[key]} least={1} most={LARGEST_CARD} onLength={(mm) => set(() => ({ [key]: mm }))} />
  );
  const board = (text: string) => typed({ text, as: 'amount', beside: 'g/m²' }, (t) => set(() => ({ cardGSM: Number(t.text) })));
  return (
    <>
      <div class="limit-grid">
        {side('cardW', 'card, width')}
        {side('cardH', 'card, height')}
        <TextField label="board, 0 for no card" unit="g/m²" value={String(now.cardGSM)} numeric onSet={board} />
        <LengthField label="thickness of the board" mm={now.cardThick} least={0.05} most={THICK} onLength={(cardThick) => set(() => ({ cardThick }))} />
      </div>
      <RangeField label="clear sleeve" unit="g" range={now.sleeve} onRange={(end) => set((was) => ({ sleeve: { ...was.sleeve, ...end } }))} />
      {own ? <button type="button" class="plain" onClick={() => onBack(() => ({ packing: undefined }), 'Usual packing')}>Back to the usual packing</button> : null}
    </>
  );
}
