import { useRef } from 'preact/hooks';
import type { DrawingRef, Opened } from '../engine/wire.gen';
import type { Thumb } from '../state/thumbs';
import { Choice, Section, Swatch } from '../widgets/basic';
import { KINDS } from '../widgets/Doors';
import { ThumbView } from '../widgets/ThumbView';

export interface DrawingProps {
  opened: Opened | undefined;
  thumb: Thumb | undefined;
  ground: Opened['ground'];
  /** Every revision of the drawing, newest last. */
  revisions: readonly DrawingRef[];
  onRevise: (files: FileList | null) => void;
  onGround: (g: Opened['ground']) => void;
}

const GROUNDS: readonly { value: Opened['ground']; label: string; hint: string }[] = [
  { value: 'auto', label: 'find it', hint: 'Transparency if there is any, else the paper, else none.' },
  { value: 'clear', label: 'transparent', hint: 'Only what is transparent in the file is background.' },
  { value: 'paper', label: 'paper', hint: 'The paper colour that reaches the edge of the file is background too.' },
  { value: 'none', label: 'none', hint: 'The whole file is drawing.' },
];

export function DrawingPanel(p: DrawingProps) {
  const o = p.opened;
  const says = o ? `${p.revisions.at(-1)?.fileName ?? ''}: ${o.reason || o.groundNote}` : 'No drawing is open yet.';
  return (
    <Section id="drawing" title="Drawing" says={says} picture={o ? <ThumbView thumb={p.thumb} /> : undefined}>
      {o ? (
        <>
          <Choice legend="Background" value={p.ground} options={GROUNDS} onPick={p.onGround} />
          <p>
            {o.groundNote} {o.ground === 'paper' ? <Swatch rgb={o.groundRGB} label="the paper colour" /> : null}
          </p>
          {o.lined && !o.layers ? (
            <p class="quiet">Lines on a layer of their own? Export lines and colours as two pictures of one size and bring both at once: then the metal is known, not guessed.</p>
          ) : null}
          <ul class="notes">{o.notes.map((n) => <li key={n}>{n}</li>)}</ul>
          <Revisions {...p} />
        </>
      ) : null}
    </Section>
  );
}

/** Artists repair their art in their own program and bring it again. */
function Revisions({ revisions, onRevise }: Pick<DrawingProps, 'revisions' | 'onRevise'>) {
  const file = useRef<HTMLInputElement>(null);
  return (
    <div class="revisions">
      <input
        ref={file} class="unseen" type="file" multiple accept={KINDS} tabIndex={-1} aria-label="File of the new version"
        onChange={(e) => { onRevise(e.currentTarget.files); e.currentTarget.value = ''; }}
      />
      <button type="button" class="plain" onClick={() => file.current?.click()}>Bring a new version of this drawing</button>
      <p class="hint">It is laid on this one: colours, roles, names, codes and lines that you set carry over where they still fit.</p>
      {revisions.length > 1 ? (
        <ol class="notes" aria-label="Versions of the drawing">
          {revisions.map((r, i) => <li key={r.id}>version {i + 1}: {r.fileName}{i === revisions.length - 1 ? ', on the sheet' : ', kept'}</li>)}
        </ol>
      ) : null}
    </div>
  );
}
