// What can be done with the version, or the design, that lies on the sheet; and
// the ways a further design comes in.
import { useEffect, useRef } from 'preact/hooks';
import type { ComponentChildren } from 'preact';
import type { Design, Plating, Version } from '../engine/wire.gen';
import { KINDS } from '../widgets/Doors';
import { CountField, TextField } from '../widgets/TextField';

/** Which card is open. */
export type Opening = 'version' | 'design' | 'add' | undefined;

type Demo = 'lighthouse' | 'harbour' | 'buoy';

interface Props {
  open: Opening;
  onClose: () => void;
  design: Design;
  version: Version;
  platings: readonly Plating[];
  /** How many designs the order has. */
  designs: number;
  onVersion: (change: Partial<Version>, what: string) => void;
  onDesign: (change: Partial<Design>, what: string) => void;
  onQuantity: (n: number) => void;
  onCopyVersion: () => void;
  onCopyDesign: () => void;
  onNoVersion: () => void;
  onNoDesign: () => void;
  onFiles: (files: FileList | null) => void;
  onPaste: () => void;
  onDemo: (demo: Demo) => void;
}

export function DesignCards(p: Props) {
  if (p.open === 'version') return <Card title="This version" onClose={p.onClose}><OfVersion {...p} /></Card>;
  if (p.open === 'design') return <Card title="This design" onClose={p.onClose}><OfDesign {...p} /></Card>;
  if (p.open === 'add') return <Card title="A further design in this order" onClose={p.onClose}><More {...p} /></Card>;
  return null;
}

function Card({ title, onClose, children }: { title: string; onClose: () => void; children: ComponentChildren }) {
  const ref = useRef<HTMLElement>(null);
  useEffect(() => {
    const key = (e: KeyboardEvent) => { if (e.key === 'Escape') onClose(); };
    addEventListener('keydown', key);
    return () => removeEventListener('keydown', key);
  }, [onClose]);
  useEffect(() => ref.current?.focus({ preventScroll: true }), [title]);
  return (
    <section ref={ref} class="strip-card" aria-label={title} tabIndex={-1}>
      <header><h2>{title}</h2><button type="button" class="close" onClick={onClose} aria-label="Close">✕</button></header>
      {children}
    </section>
  );
}

/** Takes a name, without the blanks about it. */
const named = (onName: (name: string) => void, empty: string) => (text: string) => {
  if (!text.trim()) return empty;
  onName(text.trim());
  return undefined;
};

function OfVersion(p: Props) {
  const v = p.version;
  return (
    <>
      <div class="strip-fields">
        <TextField label="name" value={v.name} onSet={named((name) => p.onVersion({ name }, `Called ${name}`), 'A version wants a name.')} />
        <label class="field">
          <span class="field-label">plating</span>
          <select value={v.plating} onChange={(e) => p.onVersion({ plating: e.currentTarget.value }, `Plating ${e.currentTarget.value}`)}>
            {p.platings.map((x) => <option key={x.id} value={x.id}>{x.name}</option>)}
          </select>
        </label>
        <CountField label="quantity" value={v.quantity} least={1} most={100000} unit="pins" onCount={p.onQuantity} />
      </div>
      <p class="hint">Versions share the design’s die. {p.design.versions.length > 1 ? 'A colour you change on the sheet is changed in this version only.' : 'With a second version, each keeps its own colours.'}</p>
      <p class="row-acts">
        <button type="button" class="plain" onClick={p.onCopyVersion}>Copy it</button>
        {p.design.versions.length > 1 ? <button type="button" class="plain" onClick={p.onNoVersion}>Take it out</button> : null}
      </p>
    </>
  );
}

function OfDesign(p: Props) {
  const d = p.design;
  return (
    <>
      <div class="strip-fields">
        <TextField label="name" value={d.name} onSet={named((name) => p.onDesign({ name }, `Named ${name}`), 'A pin wants a name.')} />
      </div>
      <p class="hint">A copy is a design of its own, with a die of its own: for another size or another shape. For other colours or plating, add a version.</p>
      <p class="row-acts">
        <button type="button" class="plain" onClick={p.onCopyDesign}>Copy it</button>
        {p.designs > 1 ? <button type="button" class="plain" onClick={p.onNoDesign}>Take it out</button> : null}
      </p>
    </>
  );
}

function More(p: Props) {
  const file = useRef<HTMLInputElement>(null);
  return (
    <>
      <p class="hint">It is ordered and paid for together with the others, and gets a die of its own.</p>
      <input
        ref={file} class="unseen" type="file" multiple accept={KINDS} tabIndex={-1} aria-label="File of a further design"
        onChange={(e) => { p.onFiles(e.currentTarget.files); e.currentTarget.value = ''; }}
      />
      <p class="row-acts">
        <button type="button" class="solid" onClick={() => file.current?.click()}>Choose its drawing</button>
        <button type="button" class="plain" onClick={p.onPaste}>Paste it</button>
      </p>
      <p class="quiet">
        or an example:{' '}
        {(['lighthouse', 'harbour', 'buoy'] as const).map((d, i) => <span key={d}>{i > 0 ? ', ' : ''}<button type="button" class="link" onClick={() => p.onDemo(d)}>{d}</button></span>)}
      </p>
    </>
  );
}
