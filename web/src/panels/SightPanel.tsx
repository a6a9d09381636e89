// Can anyone read it? Asked at the pin's real size, from where it is looked at.
import type { ComponentChildren } from 'preact';
import type { Glance, TrueSize } from '../engine/wire.gen';
import { Section, Why } from '../widgets/basic';
import { CardCheck } from '../widgets/CardCheck';
import { GlanceScale } from '../widgets/GlanceScale';
import { sightSays } from '../words/words';
import { SightDistances, type SightDistancesProps } from './SightDistances';
import { SightLook, type SightLookProps } from './SightLook';
import { SightNeighbours, type SightNeighboursProps } from './SightNeighbours';
import { SightPlatings, type SightPlatingsProps } from './SightPlatings';
import { SightSize, type SightSizeProps } from './SightSize';
import { SightThresholds, type SightThresholdsProps } from './SightThresholds';
import { SightUnread, type SightUnreadProps } from './SightUnread';

export interface SightProps {
  size: SightSizeProps;
  glance: Glance | undefined;
  glanceLate: boolean;
  /** From where it is looked at, in words. */
  where: string;
  /** Of the newest wish, mm and in words. */
  mm: number;
  sizeSays: string;
  onDrag: (mm: number) => void;
  onDrop: () => void;
  onOpen: (open: boolean) => void;
  trueSize: TrueSize | undefined;
  /** CSS px for one mm; both are missing until the engine has spoken. */
  perMM: number | undefined;
  onMatched: (cssWidth: number) => Promise<string | undefined>;
  /** Missing until the engine has said what is usual. */
  eye: {
    distances: SightDistancesProps;
    unread: SightUnreadProps;
    look: SightLookProps;
    neighbours: SightNeighboursProps;
    platings: SightPlatingsProps;
    thresholds: SightThresholdsProps;
  } | undefined;
}

export function SightPanel(p: SightProps) {
  const { glance, eye, trueSize } = p;
  return (
    <Section
      id="sight" title="Sight" says={glance ? glance.words : sightSays(p.size.check, trueSize)}
      alarm={glance ? !(glance.canMake && glance.canRead) : trueSize?.checked === false} onOpen={p.onOpen}
    >
      {glance ? <GlanceScale glance={glance} size={p.mm} sizeSays={p.sizeSays} where={p.where} late={p.glanceLate} onDrag={p.onDrag} onDrop={p.onDrop} onSize={p.size.onSize} /> : null}
      <SightSize {...p.size} />
      {eye ? <SightDistances {...eye.distances} /> : null}
      {eye ? <SightUnread {...eye.unread} /> : null}
      {eye ? <SightLook {...eye.look} /> : null}
      <TrueSizeCheck {...p} />
      {eye ? <Part><SightNeighbours {...eye.neighbours} /><SightPlatings {...eye.platings} /><SightThresholds {...eye.thresholds} /></Part> : null}
    </Section>
  );
}

const Part = ({ children }: { children: ComponentChildren }) => <div class="sight-part">{children}</div>;

function TrueSizeCheck({ trueSize, perMM, onMatched }: SightProps) {
  return (
    <div class="true-check">
      {trueSize && perMM ? <CardCheck card={trueSize.card} perMM={perMM} sure={trueSize.checked} onMatched={onMatched} /> : null}
      <Why ask="how true is true size?">
        <p>Browsers do not know how large a screen’s pixels are. A bank card does: it is {trueSize?.card.words ?? 'of one size'} everywhere (ISO/IEC 7810, ID-1). The match is kept on this device for this screen, as device pixels in a millimetre; page zoom and pinch are allowed for. On another screen the page says “guess” again.</p>
      </Why>
    </div>
  );
}
