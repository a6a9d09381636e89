// The backing card: what it looks like, and what can be chosen of it.
import { useRef } from 'preact/hooks';
import type { BackingCard, CardHang, CardKind, CardLaid, CardPaper, CardText } from '../engine/wire.gen';
import type { PinPicture } from '../state/papers';
import * as k from '../state/papersCard';
import { hexOf, rgbOf } from '../state/project';
import { Choice, Why } from '../widgets/basic';
import { KINDS } from '../widgets/Doors';
import { LengthField } from '../widgets/LengthField';
import { CountField, TextField } from '../widgets/TextField';
import { holesWords } from '../words/papers';
import { CardView } from './PapersCardView';

export interface CardProps {
  answer: CardLaid | undefined;
  pin: PinPicture | undefined;
  fault: string;
  making: string;
  onCard: (change: (c: BackingCard) => BackingCard, what: string) => void;
  onPicture: (file: File) => void;
  onSave: (pdf: boolean) => void;
}

export function PapersCard(p: CardProps) {
  const a = p.answer;
  if (!a) return <p class="hint">The card is being laid out …</p>;
  const { laid: l } = a;
  return (
    <div class="card-room">
      <div class="card-bench"><CardView answer={a} pin={p.pin} /></div>
      <p class="hint">Drag the pin, the words and your picture. The shaded rim is cut away; the dashed line is the safe margin.</p>
      <p>{holesWords(l)}</p>
      {l.warnings.length > 0 ? (
        <ul class="card-faults" aria-label="What would spoil in print">
          {l.warnings.map((w, i) => <li key={i} class={w.note ? 'note' : 'grave'}>{w.what}</li>)}
        </ul>
      ) : <p class="fine">✓ Nothing on it would spoil in print.</p>}
      <Sizes {...p} answer={a} />
      <Texts {...p} answer={a} />
      <Art {...p} answer={a} />
      <Holes {...p} answer={a} />
      <Print {...p} answer={a} />
      <p class="row-acts">
        <button type="button" class="solid" aria-busy={p.making === 'card pdf' || undefined} onClick={() => p.onSave(true)}>Save the card (PDF)</button>
        <button type="button" class="plain" aria-busy={p.making === 'card svg' || undefined} onClick={() => p.onSave(false)}>Save as SVG</button>
      </p>
      <Why>
        <p>The bank card is ID-1 of ISO/IEC 7810; A4 is of ISO 216. Bleed, safe margin, the size of holes and the board to leave round them are common practice, with no published source: a print shop may ask for others.</p>
        <p>Posts are given to a maker as seen from behind. Here the card is seen from the front, so left and right are turned, and the holes lie where the posts go through.</p>
      </Why>
    </div>
  );
}

type Known = CardProps & { answer: CardLaid };

function Sizes({ answer: { card: c, laid: l, kinds }, onCard }: Known) {
  const kind: CardKind = c.kind ?? '';
  const pick = (next: CardKind) => {
    const named = kinds.find((o) => o.kind === next);
    const [w, h] = named ? (c.across ? [named.w, named.h] : [named.h, named.w]) : [l.w, l.h];
    onCard((o) => ({ ...k.refitted(o, l.w, l.h, w, h), kind: next, ...(named ? {} : { w, h }) }), named ? `Card: ${named.name}` : 'Card of your own size');
  };
  const side = (change: Partial<BackingCard>, what: string) => onCard((o) => ({ ...k.refitted(o, l.w, l.h, change.w ?? l.w, change.h ?? l.h), ...change }), what);
  return (
    <div class="card-group">
      <Choice legend="Size of the card" value={kind} onPick={pick}
        options={[...kinds.map((o) => ({ value: o.kind, label: o.name })), { value: 'free' as const, label: 'your own size' }]} />
      {kind === 'free' ? (
        <div class="limit-grid">
          <LengthField label="width" mm={l.w} least={25} most={200} onLength={(w, words) => side({ w }, `Card ${words} wide`)} />
          <LengthField label="height" mm={l.h} least={25} most={200} onLength={(h, words) => side({ h }, `Card ${words} high`)} />
        </div>
      ) : (
        <Choice legend="It stands" value={c.across ? 'across' : 'up'} options={[{ value: 'up', label: 'upright' }, { value: 'across', label: 'lying' }]}
          onPick={(v) => onCard((o) => k.turnedCard(o, l.w, l.h, v === 'across', l.pinW, l.safe), v === 'across' ? 'The card lies' : 'The card stands')} />
      )}
      {c.pin ? <button type="button" class="plain" onClick={() => onCard((o) => k.without(o, 'pin'), 'Pin where the tool puts it')}>Put the pin where there is most room</button> : null}
    </div>
  );
}

function Colour({ label, rgb, onPick }: { label: string; rgb: string; onPick: (text: string) => void }) {
  return <label class="card-colour"><input type="color" value={rgb} onChange={(e) => onPick(e.currentTarget.value)} /> {label}</label>;
}

function Texts({ answer: { card: c, laid: l }, onCard }: Known) {
  const set = (i: number, change: Partial<CardText>, what: string) => onCard((o) => k.withText(o, i, (t) => ({ ...t, ...change })), what);
  return (
    <fieldset class="card-group">
      <legend>Words</legend>
      {(c.texts ?? []).map((t, i) => (
        <div class="card-text" key={i} role="group" aria-label={`Line ${i + 1}`}>
          <TextField label={`line ${i + 1}`} value={t.words} onSet={(words) => () => set(i, { words }, 'Words on the card')} />
          <CountField label="size" value={Math.round(t.points)} least={4} most={96} unit="pt" onCount={(points) => set(i, { points }, `Words of ${points} points`)} />
          <div class="card-text-acts">
            <Colour label="colour" rgb={hexOf(t.rgb)} onPick={(v) => { const rgb = rgbOf(v); if (rgb) set(i, { rgb }, 'Colour of the words'); }} />
            <label class="tick-box"><input type="checkbox" checked={t.strong ?? false} onChange={(e) => set(i, { strong: e.currentTarget.checked }, 'Weight of the words')} /> bold</label>
            <button type="button" class="link" onClick={() => onCard((o) => ({ ...o, texts: (o.texts ?? []).filter((_, j) => j !== i) }), 'Took a line off the card')}>take it off</button>
          </div>
        </div>
      ))}
      {(c.texts ?? []).length < 12 ? <button type="button" class="plain" onClick={() => onCard((o) => k.addText(o, l.w, l.h), 'A line on the card')}>Add a line</button> : null}
    </fieldset>
  );
}

function Art({ answer: { card: c, laid: l }, fault, onCard, onPicture }: Known) {
  const input = useRef<HTMLInputElement>(null);
  const p = c.picture;
  const set = (change: { x?: number; y?: number; wide?: number }, what: string) => onCard((o) => (o.picture ? { ...o, picture: { ...o.picture, ...change } } : o), what);
  return (
    <fieldset class="card-group">
      <legend>Ground and picture</legend>
      <div class="row-acts">
        <Colour label="colour of the card" rgb={c.ground ? hexOf(c.ground) : '#ffffff'} onPick={(v) => { const ground = rgbOf(v); if (ground) onCard((o) => ({ ...o, ground }), 'Colour of the card'); }} />
        {c.ground ? <button type="button" class="link" onClick={() => onCard((o) => k.without(o, 'ground'), 'Bare board')}>bare board</button> : null}
      </div>
      <input ref={input} class="unseen" type="file" accept={KINDS} tabIndex={-1} aria-label="Picture for the card" onChange={(e) => { const f = e.currentTarget.files?.[0]; if (f) onPicture(f); e.currentTarget.value = ''; }} />
      <p class="row-acts">
        <button type="button" class="plain" onClick={() => input.current?.click()}>{p ? 'Another picture' : 'Your picture on the card'}</button>
        {p ? <button type="button" class="plain" onClick={() => set(k.covering(p.w, p.h, l.w, l.h, l.bleed), 'Picture over the whole card')}>Over the whole card</button> : null}
        {p ? <button type="button" class="plain" onClick={() => set(k.small(l.w, l.safe), 'A small picture on the card')}>Small</button> : null}
        {p ? <button type="button" class="link" onClick={() => onCard((o) => k.without(o, 'picture'), 'Took the picture off the card')}>take it off</button> : null}
      </p>
      {p ? <LengthField label="its width" mm={p.wide} least={1} most={300} onLength={(wide, words) => set({ wide }, `Picture ${words} wide`)} /> : null}
      {fault ? <p class="warn" role="alert">{fault}</p> : null}
    </fieldset>
  );
}

function Holes({ answer: { card: c, laid: l, usual }, onCard }: Known) {
  const hang = (change: Partial<CardHang>, what: string) => onCard((o) => ({ ...o, hang: { ...o.hang, ...change } }), what);
  const kind = c.hang?.kind ?? '';
  return (
    <fieldset class="card-group">
      <legend>Holes</legend>
      <Choice legend="To hang by" value={kind} options={[{ value: '', label: 'none' }, { value: 'round', label: 'a round hole' }, { value: 'slot', label: 'a slot' }]}
        onPick={(v) => onCard((o) => ({ ...o, hang: v ? { kind: v } : {} }), v ? 'A hole to hang by' : 'No hole to hang by')} />
      <div class="limit-grid">
        {l.hang ? <LengthField label={kind === 'slot' ? 'width of the slot' : 'hole to hang by'} mm={l.hang.w ?? 0} least={1} most={60} onLength={(w, words) => hang({ w }, `Hole to hang by ${words}`)} /> : null}
        {l.hang && kind === 'slot' ? <LengthField label="its height" mm={l.hang.h ?? 0} least={1} most={30} onLength={(h, words) => hang({ h }, `Slot ${words} high`)} /> : null}
        {l.hang ? <LengthField label="its middle from the top" mm={l.hang.down ?? 0} least={1} most={60} onLength={(down, words) => hang({ down }, `Hole to hang by ${words} down`)} /> : null}
        {l.holes.length > 0 ? <LengthField label="holes for the posts" mm={c.hole || usual.hole} least={0.8} most={6} onLength={(hole, words) => onCard((o) => ({ ...o, hole }), `Holes of ${words}`)} /> : null}
      </div>
      <label class="tick-box"><input type="checkbox" checked={!c.noAid} onChange={(e) => { const noAid = !e.currentTarget.checked; onCard((o) => ({ ...o, noAid }), noAid ? 'No outline printed' : 'Outline printed'); }} /> print the pin’s outline lightly, to set it straight by</label>
    </fieldset>
  );
}

function Print({ answer: { card: c, laid: l, sheet, usual }, onCard }: Known) {
  const paper: CardPaper = c.sheet?.paper ?? '';
  return (
    <fieldset class="card-group">
      <legend>For the printer</legend>
      <Choice legend="Printed on" value={paper} options={[{ value: '', label: 'a sheet of its own, for a print shop' }, { value: 'a4', label: 'A4' }, { value: 'letter', label: 'Letter' }]}
        onPick={(v) => onCard((o) => ({ ...o, sheet: { ...o.sheet, paper: v } }), 'Another paper for the cards')} />
      <p>{sheet.says}</p>
      <div class="limit-grid">
        <LengthField label="bleed, past the cut" mm={l.bleed} least={0} most={12} onLength={(bleed, words) => onCard((o) => ({ ...o, bleed }), `Bleed ${words}`)} />
        <LengthField label="safe margin" mm={l.safe} least={0} most={12} onLength={(safe, words) => onCard((o) => ({ ...o, safe }), `Safe margin ${words}`)} />
        {paper ? <LengthField label="between two cards" mm={sheet.gutter} least={2 * l.bleed} most={24} onLength={(gutter, words) => onCard((o) => ({ ...o, sheet: { ...o.sheet, gutter } }), `Cards ${words} apart`)} /> : null}
      </div>
      <label class="tick-box"><input type="checkbox" checked={(c.corner ?? 0) > 0} onChange={(e) => { const corner = e.currentTarget.checked ? usual.corner : 0; onCard((o) => ({ ...o, corner }), corner ? 'Rounded corners' : 'Square corners'); }} /> corners rounded to {usual.corner} mm, as a bank card’s</label>
    </fieldset>
  );
}
