import type { LineKind } from '../state/line';
import { LINE_WORDS } from '../words/hands';

interface Props {
  /** On metal there is something to erase. */
  metal: boolean;
  onLine: (kind: LineKind) => void;
}

/** Ways from a card into drawing a line by hand. */
export function LineButtons({ metal, onLine }: Props) {
  return (
    <div class="two">
      {metal ? <button type="button" class="plain" onClick={() => onLine('erase-line')}>{LINE_WORDS['erase-line'].from}</button> : null}
      <button type="button" class="plain" onClick={() => onLine('draw-line')}>{LINE_WORDS['draw-line'].from}</button>
    </div>
  );
}
