import type { Check, Design } from '../engine/wire.gen';
import { Choice, Section, Why } from '../widgets/basic';
import { CardCheck } from '../widgets/CardCheck';
import { LengthField } from '../widgets/LengthField';
import { both } from '../words/length';
import { sightSays } from '../words/words';

export interface SightProps {
  check: Check | undefined;
  design: Design;
  sure: boolean;
  perMM: number;
  onSize: (mm: number) => void;
  onBy: (by: Design['size']['by']) => void;
  onMatched: (cssWidth: number) => void;
}

const BY: readonly { value: Design['size']['by']; label: string }[] = [
  { value: 'longest', label: 'longest side' },
  { value: 'width', label: 'width' },
  { value: 'height', label: 'height' },
  { value: 'mean', label: 'mean of both' },
];

export function SightPanel(p: SightProps) {
  const c = p.check;
  const holds = c?.holdsFrom ?? 0;
  return (
    <Section id="sight" title="Sight" says={sightSays(c, p.sure)} alarm={!p.sure}>
      <div class="two">
        <LengthField label="Size" mm={p.design.size.mm} least={5} most={150} onLength={p.onSize} />
        {holds > 0 && holds > p.design.size.mm ? (
          <button type="button" class="plain" onClick={() => p.onSize(Math.ceil(holds * 10) / 10)}>
            Take {both(Math.ceil(holds * 10) / 10)}, where everything holds
          </button>
        ) : null}
      </div>
      <Choice legend="Measured by" value={p.design.size.by} options={BY} onPick={p.onBy} />
      {c ? (
        <dl class="measures">
          <dt>width</dt><dd>{both(c.w)}</dd>
          <dt>height</dt><dd>{both(c.h)}</dd>
          <dt>longest side</dt><dd>{both(c.longest)}</dd>
          <dt>mean of both</dt><dd>{both(c.mean)}</dd>
        </dl>
      ) : null}
      <CardCheck perMM={p.perMM} sure={p.sure} onMatched={p.onMatched} />
      <Why>
        <p>Browsers do not know how large a screen’s pixels are. A bank card does: it is 85.60 × 53.98 mm everywhere (ISO/IEC 7810, ID-1). The match is kept on this device for this screen, as device pixels in a millimetre; page zoom and pinch are allowed for. On another screen the page says “guess” again.</p>
      </Why>
    </Section>
  );
}
