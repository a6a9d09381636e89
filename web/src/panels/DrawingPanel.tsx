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
  /** Every version of the drawing, the one on the sheet last. */
  revisions: readonly DrawingRef[];
  /** Where it differs from the one before it is marked on the pin. */
  marking: boolean;
  onMark: (on: boolean) => void;
  onBack: (ref: DrawingRef) => void;
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
function Revisions(p: DrawingProps) {
  const { revisions, onRevise, onBack } = p;
  const file = useRef<HTMLInputElement>(null);
  const now = revisions.at(-1);
  return (
    <div class="revisions">
      <input
        ref={file} class="unseen" type="file" multiple accept={KINDS} tabIndex={-1} aria-label="File of the new version"
        onChange={(e) => { onRevise(e.currentTarget.files); e.currentTarget.value = ''; }}
      />
      <button type="button" class="plain" onClick={() => file.current?.click()}>Bring a new version of this drawing</button>
      <p class="hint">It is laid on this one: colours, roles, names, codes and lines that you set carry over where they still fit.</p>
      {revisions.length > 1 ? (
        <ol class="versions" aria-label="Versions of the drawing">
          {[...revisions].sort((a, b) => a.revision - b.revision).map((r) => (
            <li key={r.id} aria-current={r === now ? 'true' : undefined}>
              <span>version {r.revision}: {r.fileName}</span>
              {r === now ? <span class="hint">on the sheet</span> : <button type="button" class="link" onClick={() => onBack(r)}>Put back<span class="unseen"> version {r.revision}</span></button>}
            </li>
          ))}
        </ol>
      ) : null}
      {now?.differs ? <Differs {...p} now={now} /> : null}
    </div>
  );
}

/** What differs from the version before, and what does not fit any more. */
function Differs({ revisions, now, marking, onMark }: DrawingProps & { now: DrawingRef }) {
  return (
    <div class="differs">
      <p>{now.differs}, since version {revisions.at(-2)?.revision}.</p>
      {now.places ? <button type="button" class="plain" aria-pressed={marking} onClick={() => onMark(!marking)}>{marking ? 'Hide where' : 'Show where'}</button> : null}
      {now.lost?.length ? (
        <>
          <p>What you had set and does not fit:</p>
          <ul class="notes">{now.lost.map((l) => <li key={l}>{l}</li>)}</ul>
        </>
      ) : null}
    </div>
  );
}
