import type { Opened } from '../engine/wire.gen';
import type { Thumb } from '../state/thumbs';
import { Choice, Section, Swatch } from '../widgets/basic';
import { ThumbView } from '../widgets/ThumbView';

export interface DrawingProps {
  opened: Opened | undefined;
  thumb: Thumb | undefined;
  ground: Opened['ground'];
  fileName: string;
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
  const says = o ? `${p.fileName}: ${o.reason || o.groundNote}` : 'No drawing is open yet.';
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
        </>
      ) : null}
    </Section>
  );
}
