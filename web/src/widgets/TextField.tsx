// Fields that are typed into and take effect on Enter or on leaving; what
// cannot be read is said, and the value before stays.
import { useId, useRef, useState } from 'preact/hooks';
import { Draft, type Reader } from '../state/draft';
import { typed } from '../state/typed';

export interface TextFieldProps {
  label: string;
  value: string;
  /** Says what becomes of a text, at once or when the engine has read it: a
   * complaint, how to take it, or nothing when it was taken. */
  onSet: Reader['onSet'];
  /** Told when the field is done with: taken, left as it was, or given up. */
  onDone?: () => void;
  unit?: string;
  hideLabel?: boolean;
  numeric?: boolean;
  class?: string;
  autofocus?: boolean;
  /** What is wrong with the value as it stands. */
  fault?: string | undefined;
  placeholder?: string | undefined;
}

export function TextField(p: TextFieldProps) {
  const id = useId();
  const { draft, latest } = useDraft(p);
  const complaint = draft.complaint ?? (draft.text === undefined ? p.fault : undefined);
  const key = (e: KeyboardEvent) => {
    if (e.key === 'Enter') void draft.commit(latest);
    if (e.key === 'Escape') draft.giveUp(latest());
  };
  return (
    <span class={`text-field ${p.class ?? ''}`} aria-busy={draft.busy || undefined}>
      <label for={id} class={p.hideLabel ? 'unseen' : 'field-label'}>{p.label}</label>
      <span class="text-field-row">
        <input
          id={id}
          type="text"
          inputMode={p.numeric ? 'decimal' : undefined}
          value={draft.text ?? p.value}
          autofocus={p.autofocus}
          placeholder={p.placeholder}
          aria-invalid={complaint ? true : undefined}
          aria-describedby={complaint ? `${id}-c` : undefined}
          onInput={(e) => draft.write(e.currentTarget.value)}
          onBlur={() => void draft.commit(latest)}
          onKeyDown={key}
        />
        {p.unit ? <span class="unit">{p.unit}</span> : null}
      </span>
      {complaint ? <span class="complaint" id={`${id}-c`} role="alert">{complaint}</span> : null}
    </span>
  );
}

/** One draft for the life of a field, and the field as it is now. */
function useDraft(p: TextFieldProps) {
  const [, again] = useState(0);
  const latest = useRef(p);
  latest.current = p;
  const kept = useRef<Draft>(undefined);
  kept.current ??= new Draft(() => again((n) => n + 1));
  return { draft: kept.current, latest: () => latest.current };
}

/** A whole number between two bounds. */
export function CountField(p: Omit<TextFieldProps, 'value' | 'onSet'> & { value: number; least: number; most: number; onCount: (n: number) => void }) {
  const set = (text: string) =>
    typed({ text, as: 'count', beside: p.unit ?? '', least: p.least, most: p.most }, (t) => p.onCount(t.number));
  return <TextField {...p} value={String(p.value)} onSet={set} numeric />;
}
