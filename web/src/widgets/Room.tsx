// A room of a section: its answer in a sentence, then reasons and controls.
import type { ComponentChildren } from 'preact';

export function Room(props: { id: string; title: string; says: string; alarm?: boolean; late?: boolean; children: ComponentChildren }) {
  return (
    <details class={props.late ? 'room late' : 'room'} id={props.id}>
      <summary>
        <h3>{props.title}</h3>
        <span class={props.alarm ? 'says alarm' : 'says'}>{props.says}</span>
        <svg class="chevron" viewBox="0 0 12 12" aria-hidden="true"><path d="M2 4l4 4 4-4" /></svg>
      </summary>
      <div class="room-body">{props.children}</div>
    </details>
  );
}
