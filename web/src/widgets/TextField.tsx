// Fields that are typed into and take effect on Enter or on leaving; what
// cannot be read is said, and the value before stays.
import { useEffect, useId, useRef, useState } from 'preact/hooks';

export interface TextFieldProps {
  label: string;
  value: string;
  /** Returns a complaint in words, or nothing when the value was taken. */
  onSet: (text: string) => string | undefined;
  unit?: string;
  hideLabel?: boolean;
  numeric?: boolean;
  class?: string;
  autofocus?: boolean;
}

export function TextField(p: TextFieldProps) {
  const id = useId();
  const [text, setText] = useState(p.value);
  const [complaint, setComplaint] = useState<string>();
  // What is half typed outlives an answer that comes in meanwhile.
  const typing = useRef(false);
  useEffect(() => {
    if (typing.current) return;
    setText(p.value);
    setComplaint(undefined);
  }, [p.value]);

  const commit = () => {
    typing.current = false;
    if (text === p.value) return setComplaint(undefined);
    const c = p.onSet(text);
    setComplaint(c);
  };
  const key = (e: KeyboardEvent) => {
    if (e.key === 'Enter') commit();
    if (e.key === 'Escape') {
      typing.current = false;
      setText(p.value);
      setComplaint(undefined);
    }
  };
  return (
    <span class={`text-field ${p.class ?? ''}`}>
      <label for={id} class={p.hideLabel ? 'unseen' : 'field-label'}>{p.label}</label>
      <span class="text-field-row">
        <input
          id={id}
          type="text"
          inputMode={p.numeric ? 'decimal' : undefined}
          value={text}
          autofocus={p.autofocus}
          aria-invalid={complaint ? true : undefined}
          aria-describedby={complaint ? `${id}-c` : undefined}
          onInput={(e) => {
            typing.current = true;
            setText(e.currentTarget.value);
          }}
          onBlur={commit}
          onKeyDown={key}
        />
        {p.unit ? <span class="unit">{p.unit}</span> : null}
      </span>
      {complaint ? <span class="complaint" id={`${id}-c`} role="alert">{complaint}</span> : null}
    </span>
  );
}

/** A whole number between two bounds. */
export function CountField(p: Omit<TextFieldProps, 'value' | 'onSet'> & { value: number; least: number; most: number; onCount: (n: number) => void }) {
  const set = (text: string) => {
    const n = Number(text.trim());
    if (!Number.isInteger(n) || n < p.least || n > p.most) return `Give a whole number from ${p.least} to ${p.most}.`;
    p.onCount(n);
    return undefined;
  };
  return <TextField {...p} value={String(p.value)} onSet={set} numeric />;
}
