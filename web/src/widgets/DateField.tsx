// A day, chosen or typed. It takes effect once the year is whole; what is only
// half a day yet is said when the field is left, and stays.
import { useId, useState } from 'preact/hooks';

interface Props {
  label: string;
  hideLabel?: boolean;
  /** "2027-02-06", or empty for none. */
  value: string;
  /** What is wrong with the day as it stands. */
  fault?: string | undefined;
  hint?: string;
  onDay: (day: string) => void;
}

const HALF = 'This is not a whole day yet: it has a day, a month and a year.';

/** On the way to 2027 a field says 2, 20 and 202. */
const wholeYear = (day: string) => day === '' || Number(day.split('-')[0]) >= 1000;

export function DateField(p: Props) {
  const id = useId();
  const [typing, setTyping] = useState<string>();
  const [half, setHalf] = useState(false);
  const take = (day: string) => {
    setTyping(undefined);
    if (day !== p.value) p.onDay(day);
  };
  const input = (el: HTMLInputElement) => {
    setHalf(false);
    // Emptied is one thing; a part of it taken away to be typed anew another.
    if (wholeYear(el.value) && !el.validity.badInput) take(el.value);
    else setTyping(el.value);
  };
  const leave = (el: HTMLInputElement) => {
    setHalf(el.validity.badInput);
    if (!el.validity.badInput && typing !== undefined) take(el.value);
  };
  const complaint = half ? HALF : p.fault;
  const said = [complaint ? `${id}-c` : '', p.hint ? `${id}-h` : ''].filter(Boolean).join(' ');
  return (
    <span class="text-field date-field">
      <label for={id} class={p.hideLabel ? 'unseen' : 'field-label'}>{p.label}</label>
      <input
        id={id} type="date" value={typing ?? p.value} aria-invalid={complaint ? true : undefined} aria-describedby={said || undefined}
        onInput={(e) => input(e.currentTarget)} onBlur={(e) => leave(e.currentTarget)}
        onKeyDown={(e) => { if (e.key === 'Enter') leave(e.currentTarget); }}
      />
      {p.hint ? <span class="hint" id={`${id}-h`}>{p.hint}</span> : null}
      {complaint ? <span class="complaint" id={`${id}-c`} role="alert">{complaint}</span> : null}
    </span>
  );
}
