import type { Check, Design, TrueSize } from '../engine/wire.gen';
import { Choice, Section, Why } from '../widgets/basic';
import { CardCheck } from '../widgets/CardCheck';
import { LengthField } from '../widgets/LengthField';
import { both, sightSays } from '../words/words';

export interface SightProps {
  check: Check | undefined;
  design: Design;
  /** Sizes a pin may have, mm. */
  bounds: { least: number; most: number };
  trueSize: TrueSize | undefined;
  /** CSS px for one mm; both are missing until the engine has spoken. */
  perMM: number | undefined;
  onSize: (mm: number, words: string) => void;
  onBy: (by: Design['size']['by']) => void;
  onMatched: (cssWidth: number) => Promise<string | undefined>;
}

const BY: readonly { value: Design['size']['by']; label: string }[] = [
  { value: 'longest', label: 'longest side' },
  { value: 'width', label: 'width' },
  { value: 'height', label: 'height' },
  { value: 'mean', label: 'mean of both' },
];

export function SightPanel(p: SightProps) {
  const c = p.check;
  const grow = c && c.growTo.mm > 0 ? c.growTo : undefined;
  return (
    <Section id="sight" title="Sight" says={sightSays(c, p.trueSize)} alarm={p.trueSize?.checked === false}>
      <div class="two">
        <LengthField label="Size" mm={p.design.size.mm} {...p.bounds} onLength={p.onSize} />
        {grow ? (
          <button type="button" class="plain" onClick={() => p.onSize(grow.mm, grow.inMM)}>
            Take {both(grow)}, where everything holds
          </button>
        ) : null}
      </div>
      <Choice legend="Measured by" value={p.design.size.by} options={BY} onPick={p.onBy} />
      {c ? (
        <dl class="measures">
          <dt>width</dt><dd>{both(c.shown.w)}</dd>
          <dt>height</dt><dd>{both(c.shown.h)}</dd>
          <dt>longest side</dt><dd>{both(c.shown.longest)}</dd>
          <dt>mean of both</dt><dd>{both(c.shown.mean)}</dd>
        </dl>
      ) : null}
      {p.trueSize && p.perMM ? (
        <CardCheck card={p.trueSize.card} perMM={p.perMM} sure={p.trueSize.checked} onMatched={p.onMatched} />
      ) : null}
      <Why>
        <p>Browsers do not know how large a screen’s pixels are. A bank card does: it is {p.trueSize?.card.words ?? 'of one size'} everywhere (ISO/IEC 7810, ID-1). The match is kept on this device for this screen, as device pixels in a millimetre; page zoom and pinch are allowed for. On another screen the page says “guess” again.</p>
      </Why>
    </Section>
  );
}
