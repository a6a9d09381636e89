// What can be done with one area alone.
import { useState } from 'preact/hooks';
import type { Flat, Gap, RGB8, Role } from '../engine/wire.gen';
import type { Under } from '../state/hands';
import type { LineKind } from '../state/line';
import { Choice } from '../widgets/basic';
import { gapSays } from '../words/hands';
import { mm } from '../words/length';
import { ROLE_WORDS } from '../words/words';
import { LineButtons } from './LineButtons';
import { Swatches, type Colours } from './Swatches';

/** Each act is told whether it stops at the gap, which a line then closes. */
export interface AreaActs {
  onFill: (rgb: RGB8, name: string, side: boolean) => void;
  onRole: (role: Role, side: boolean) => void;
  onSplit: (side: boolean) => void;
  onClose: () => void;
  onLine: (kind: LineKind) => void;
}

interface Props extends Colours, AreaActs {
  flat: Flat;
  under: Under;
  pieces: number;
  /** It came as lines alone: where they do not close, that is a slip of the pen. */
  lineDrawing: boolean;
}

const ROLES = ['enamel', 'metal', 'cutout', 'printed'] as const;

export function AreaPart({ flat, under, pieces, lineDrawing, enamels, starting, most, ...acts }: Props) {
  const { gap } = under;
  // A drawing that came with its colours has them on both sides on purpose.
  const [side, setSide] = useState(lineDrawing && gap !== undefined);
  const metal = flat.role === 'metal';
  return (
    <section class="this-area" aria-label="This area alone">
      <p class="facts">This {metal ? 'piece' : 'area'}: {under.area.toFixed(under.area < 10 ? 2 : 0)} mm², {mm(under.width, 2)} wide here{under.built ? ', built by a repair' : ''}</p>
      {gap ? <GapPart gap={gap} side={side} onSide={setSide} onClose={acts.onClose} /> : null}
      {metal ? null : <Swatches {...{ enamels, starting, most }} legend="Fill this area with" onPick={(rgb, name) => acts.onFill(rgb, name, side)} />}
      {pieces > 1 || gap ? (
        <fieldset class="make-it">
          <legend>{metal ? 'make it' : 'or make it'}</legend>
          <div class="chips-row">
            {ROLES.filter((r) => r !== flat.role).map((r) => (
              <button key={r} type="button" class="chip" onClick={() => acts.onRole(r, side)}>{ROLE_WORDS[r]}</button>
            ))}
            {most === undefined ? <button type="button" class="chip" onClick={() => acts.onSplit(side)}>a colour of its own</button> : null}
          </div>
        </fieldset>
      ) : null}
      <LineButtons metal={metal} onLine={acts.onLine} />
    </section>
  );
}

function GapPart({ gap, side, onSide, onClose }: { gap: Gap; side: boolean; onSide: (side: boolean) => void; onClose: () => void }) {
  return (
    <div class="gap-note">
      <p>{gapSays(gap)} <button type="button" class="link" onClick={onClose}>Only close the gap</button></p>
      <Choice
        legend="change" value={side ? 'side' : 'all'} onPick={(v) => onSide(v === 'side')}
        options={[{ value: 'side', label: 'this side, closing the gap' }, { value: 'all', label: 'both sides' }]}
      />
    </div>
  );
}
