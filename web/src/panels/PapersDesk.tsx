// The papers side by side: each small as it is, what it is for, and how to have it.
import type { ComponentChildren } from 'preact';

interface Props {
  title: string;
  thumb: ComponentChildren;
  /** What it is for. */
  says: string;
  acts: ComponentChildren;
  /** What it is made of, to be unfolded. */
  more?: ComponentChildren;
  moreWords?: string;
  id: string;
}

export function Paper({ title, thumb, says, acts, more, moreWords, id }: Props) {
  return (
    <li class="paper" id={id}>
      {thumb}
      <div class="paper-words">
        <h3>{title}</h3>
        <p>{says}</p>
        <div class="row-acts">{acts}</div>
      </div>
      {more ? (
        <details class="more paper-more">
          <summary>{moreWords}</summary>
          <div class="paper-body">{more}</div>
        </details>
      ) : null}
    </li>
  );
}

export function Act({ name, making, solid = false, children, onAct }: { name: string; making: string; solid?: boolean; children: ComponentChildren; onAct: () => void }) {
  return <button type="button" class={solid ? 'solid' : 'plain'} aria-busy={making === name || undefined} onClick={onAct}>{children}</button>;
}
