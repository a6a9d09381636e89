// How large the pin is, and by which of its sides that is said.
import type { Check, Design } from '../engine/wire.gen';
import { Choice } from '../widgets/basic';
import { LengthField } from '../widgets/LengthField';
import { both } from '../words/words';

export interface SightSizeProps {
  check: Check | undefined;
  /** Sizes that are offered on the scale already, mm. */
  offered: readonly number[];
  design: Design;
  /** Sizes a pin may have, mm. */
  bounds: { least: number; most: number };
  onSize: (mm: number, words: string) => void;
  onBy: (by: Design['size']['by']) => void;
}

const BY: readonly { value: Design['size']['by']; label: string }[] = [
  { value: 'longest', label: 'longest side' },
  { value: 'width', label: 'width' },
  { value: 'height', label: 'height' },
  { value: 'mean', label: 'mean of both' },
];

export function SightSize(p: SightSizeProps) {
  const c = p.check;
  const grow = c && c.growTo.mm > 0 && !p.offered.includes(c.growTo.mm) ? c.growTo : undefined;
  const by = BY.find((b) => b.value === p.design.size.by)?.label ?? '';
  return (
    <div class="sight-size">
      <div class="two">
        <LengthField label="Size" mm={p.design.size.mm} {...p.bounds} onLength={p.onSize} />
        {grow ? (
          <button type="button" class="plain" onClick={() => p.onSize(grow.mm, grow.inMM)}>
            Take {both(grow)}, where everything holds
          </button>
        ) : null}
      </div>
      <details class="more">
        <summary>measured by the {by}</summary>
        <Choice legend="Measured by" value={p.design.size.by} options={BY} onPick={p.onBy} />
        {c ? (
          <dl class="measures">
            <dt>width</dt><dd>{both(c.shown.w)}</dd>
            <dt>height</dt><dd>{both(c.shown.h)}</dd>
            <dt>longest side</dt><dd>{both(c.shown.longest)}</dd>
            <dt>mean of both</dt><dd>{both(c.shown.mean)}</dd>
          </dl>
        ) : null}
      </details>
    </div>
  );
}
