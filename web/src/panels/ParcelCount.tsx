// Counting by thumb: one version in hand, three big targets, and the fault of a
// flawed piece named in their place. What changes its height stands below all
// that is tapped, so that nothing moves under the thumb.
import { useRef } from 'preact/hooks';
import type { Flaw, FlawKind, FlawedPiece, Parcel, TallyRow } from '../engine/wire.gen';
import type { Tapped } from '../state/parcel';
import { FLAW_KEYS, GRADE_WORDS, KEYS, lastSays, progressSays } from '../words/parcel';

export interface CountProps {
  parcel: Parcel;
  at: number;
  flaws: readonly Flaw[];
  says: string;
  /** The piece tapped last waits for the name of its fault. */
  naming: boolean;
  canUndo: boolean;
  last: FlawedPiece | undefined;
  photoFault: string;
  onVersion: (at: number) => void;
  onTap: (grade: Tapped) => void;
  onFlaw: (flaw: FlawKind) => void;
  onUndo: () => void;
  onComplete: (complete: boolean) => void;
  onPhoto: (file: File) => void;
}

const TARGETS: readonly Tapped[] = ['first', 'second', 'reject'];

export function ParcelCount(p: CountProps) {
  const row = p.parcel.rows[p.at];
  const box = useRef<HTMLDivElement>(null);
  const flawed = row?.flawed ?? [];
  const seconds = flawed.filter((f) => f.grade === 'second').length;
  const counts = { first: row?.firsts ?? 0, second: seconds, reject: flawed.length - seconds };
  if (!row) return null;
  // A target that gives way to another must not take the keyboard with it.
  const back = (act: () => void) => () => {
    act();
    box.current?.focus({ preventScroll: true });
  };
  return (
    <div class="counting" ref={box} tabIndex={-1} role="group" aria-label="Counting" onKeyDown={(e) => keys(e, p)}>
      {p.parcel.rows.length > 1 ? (
        <label class="field">
          <span class="field-label">In hand</span>
          <select value={String(p.at)} onChange={(e) => p.onVersion(Number(e.currentTarget.value))}>
            {p.parcel.rows.map((r, i) => <option key={r.design + r.version} value={String(i)}>{r.name}</option>)}
          </select>
        </label>
      ) : null}
      {p.naming ? <Naming flaws={p.flaws} onFlaw={(k) => back(() => p.onFlaw(k))()} /> : (
        <div class="targets">
          {TARGETS.map((g) => (
            <button key={g} type="button" class={`target ${g}`} onClick={back(() => p.onTap(g))}>
              <Mark grade={g} />
              <span>{GRADE_WORDS[g]} <b>{counts[g]}</b><kbd>{KEYS[g]}</kbd></span>
            </button>
          ))}
        </div>
      )}
      <Acts {...p} onUndo={back(p.onUndo)} />
      <p class="count-now" role="status">{progressSays(row.ordered, counts.first, counts.second, counts.reject)}</p>
      <p>{p.says}</p>
      <Last {...p} />
    </div>
  );
}

/** Each grade has a shape of its own beside its colour. */
function Mark({ grade }: { grade: Tapped }) {
  const d = { first: 'M4 13l5 5L20 6', second: 'M5 12h14', reject: 'M6 6l12 12M18 6L6 18' }[grade];
  return <svg viewBox="0 0 24 24" aria-hidden="true"><path d={d} /></svg>;
}

function Naming({ flaws, onFlaw }: { flaws: readonly Flaw[]; onFlaw: (k: FlawKind) => void }) {
  return (
    <div class="naming" role="group" aria-label="What is wrong with it">
      {flaws.map((f, i) => (
        <button key={f.kind} type="button" class={f.serious ? 'flaw serious' : 'flaw'} onClick={() => onFlaw(f.kind)}>
          {f.serious ? <span aria-hidden="true">! </span> : null}{f.name}<kbd>{FLAW_KEYS[i]}</kbd>
        </button>
      ))}
      <button type="button" class="flaw" onClick={() => onFlaw('')}>just go on<kbd>␣</kbd></button>
    </div>
  );
}

/** What else the thumb does; it stands still too. */
function Acts(p: CountProps) {
  const n = p.last?.photos?.length ?? 0;
  return (
    <div class="count-acts">
      <button type="button" class="plain" disabled={!p.canUndo} onClick={p.onUndo}>Take back<kbd>⌫</kbd></button>
      <button type="button" class="plain" aria-pressed={p.parcel.complete === true} onClick={() => p.onComplete(!p.parcel.complete)}>
        {p.parcel.complete ? '✓ All counted' : 'That was all'}
      </button>
      {p.last ? (
        <label class="plain photo-door">
          Photograph the flawed one{n > 0 ? ` (${n})` : ''}
          <input class="unseen" type="file" accept="image/*" capture="environment" onChange={(e) => {
            const file = e.currentTarget.files?.[0];
            e.currentTarget.value = '';
            if (file) p.onPhoto(file);
          }} />
        </label>
      ) : null}
    </div>
  );
}

/** The flawed piece that a photograph is of, and what to heed of it. */
function Last(p: CountProps) {
  const flaw = p.flaws.find((f) => f.kind === p.last?.flaw);
  return (
    <>
      {p.last ? <p class="hint">{lastSays(p.last.grade, flaw?.name ?? '')}</p> : null}
      {p.photoFault ? <p class="complaint" role="alert">{p.photoFault}</p> : null}
      {flaw?.caution ? <p class="warn">{flaw.caution}</p> : null}
    </>
  );
}

/** On a desk the keys do what the thumb does, while the counting has the focus. */
function keys(e: KeyboardEvent, p: CountProps): void {
  if (e.ctrlKey || e.metaKey || e.altKey || e.target instanceof HTMLSelectElement || e.target instanceof HTMLInputElement) return;
  const grade = TARGETS.find((g) => KEYS[g] === e.key);
  const flaw = p.flaws[FLAW_KEYS.indexOf(e.key.toLowerCase())];
  const onButton = e.target instanceof HTMLButtonElement;
  if (e.key === 'Backspace') p.onUndo();
  else if (p.naming && flaw) p.onFlaw(flaw.kind);
  else if (p.naming && (e.key === 'Escape' || (e.key === ' ' && !onButton))) p.onFlaw('');
  else if (grade) p.onTap(grade);
  else return;
  e.preventDefault();
}

export interface RowsProps {
  rows: readonly TallyRow[];
  all: TallyRow;
}

/** Every version with its faults and how it stands. */
export function ParcelRows({ rows, all }: RowsProps) {
  const lines = rows.length > 1 ? [...rows, all] : rows;
  return (
    <ul class="tally-rows">
      {lines.map((r, i) => (
        <li key={i}>
          <p><b>{r === all ? 'In all' : r.name}:</b> {r.counts}.</p>
          {r.flaws.length > 0 && r !== all ? <p class="hint">{r.flaws.map((f) => `${f.name} ${f.count}`).join(', ')}</p> : null}
          {r !== all && rows.length > 1 && r.graded > 0 ? <p class={`stand ${r.verdict.kind}`}>{r.verdict.says}</p> : null}
        </li>
      ))}
    </ul>
  );
}
