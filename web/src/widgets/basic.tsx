// Small pieces that every panel uses.
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import type { RGB8 } from '../engine/wire.gen';
import { hexOf } from '../state/project';

/** A small-caps label over its control. */
export function Field({ label, hint, children }: { label: string; hint?: string; children: ComponentChildren }) {
  return (
    <label class="field">
      <span class="field-label">{label}</span>
      {children}
      {hint ? <span class="hint">{hint}</span> : null}
    </label>
  );
}

/** The science, for those who ask. */
export function Why({ children, ask = 'why?' }: { children: ComponentChildren; ask?: string }) {
  return (
    <details class="why">
      <summary>{ask}</summary>
      <div class="why-body">{children}</div>
    </details>
  );
}

export function Swatch({ rgb, big = false, label }: { rgb: RGB8; big?: boolean; label?: string }) {
  return (
    <span
      class={big ? 'swatch big' : 'swatch'}
      style={{ backgroundColor: hexOf(rgb) }}
      role={label ? 'img' : undefined}
      aria-label={label}
      aria-hidden={label ? undefined : true}
    />
  );
}

export interface Option<T extends string> {
  value: T;
  label: string;
  hint?: string;
}

/** One of a few: real radio buttons, drawn as engraved words on a rule. */
export function Choice<T extends string>(props: {
  legend: string;
  value: T;
  options: readonly Option<T>[];
  onPick: (v: T) => void;
}) {
  const name = useId();
  const hint = props.options.find((o) => o.value === props.value)?.hint;
  return (
    <fieldset class="choice">
      <legend>{props.legend}</legend>
      <div class="choice-row">
        {props.options.map((o) => (
          <label key={o.value}>
            <input
              type="radio"
              name={name}
              value={o.value}
              checked={o.value === props.value}
              onChange={() => props.onPick(o.value)}
            />
            <span>{o.label}</span>
          </label>
        ))}
      </div>
      {hint ? <p class="hint">{hint}</p> : null}
    </fieldset>
  );
}

/** A section of the column: its answer in a sentence, then reasons and controls. */
export function Section(props: {
  id: string;
  title: string;
  says: string;
  /** A small picture beside the sentence. */
  picture?: ComponentChildren;
  alarm?: boolean;
  open?: boolean;
  /** Told when it is opened or shut. */
  onOpen?: ((open: boolean) => void) | undefined;
  children: ComponentChildren;
}) {
  return (
    <details class="section" id={props.id} open={props.open} onToggle={(e) => props.onOpen?.(e.currentTarget.open)}>
      <summary class={props.picture ? 'pictured' : undefined}>
        <h2>{props.title}</h2>
        {props.picture}
        <span class={props.alarm ? 'says alarm' : 'says'}>{props.says}</span>
        <svg class="chevron" viewBox="0 0 12 12" aria-hidden="true"><path d="M2 4l4 4 4-4" /></svg>
      </summary>
      <div class="section-body">{props.children}</div>
    </details>
  );
}
