// Background behind a line that does not close: it is filled once the gap is.
import type { Gap, RGB8 } from '../engine/wire.gen';
import type { LineKind } from '../state/line';
import { gapSays } from '../words/hands';
import { LineButtons } from './LineButtons';
import { Swatches, type Colours } from './Swatches';

interface Props extends Colours {
  gap: Gap;
  onFill: (rgb: RGB8, name: string) => void;
  onLine: (kind: LineKind) => void;
}

export function OpenCard({ gap, onFill, onLine, ...colours }: Props) {
  return (
    <div class="card-body">
      <p class="gap-note">{gapSays(gap)}</p>
      <Swatches {...colours} legend="Close the gap with a line, and fill with" onPick={onFill} />
      <LineButtons metal={false} onLine={onLine} />
    </div>
  );
}
