// Lettering on the back: what it says, how it is made, and whether there is room.
import type { Check, Stamp } from '../engine/wire.gen';
import { Choice } from '../widgets/basic';
import { LengthField } from '../widgets/LengthField';
import { TextField } from '../widgets/TextField';
import { mm } from '../words/length';
import type { OnBack } from './BackPanel';

interface Props {
  check: Check;
  stamp: Stamp | undefined;
  onBack: OnBack;
}

const EMPTY: Stamp = { lines: [], height: 0, raised: false };

/** Lines that can be typed. */
const LINES = [0, 1];

/** Bounds of the height of capitals, mm. */
const LOWEST = 0.5;
const HIGHEST = 20;

export function BackStamp({ check, stamp, onBack }: Props) {
  const now = stamp ?? EMPTY;
  const set = (change: (was: Stamp) => Partial<Stamp>, what: string) => onBack((b) => {
    const was = b.stamp ?? EMPTY;
    const next = { ...was, ...change(was) };
    return { stamp: next.lines.some((l) => l.trim() !== '') ? next : undefined };
  }, what);
  const line = (i: number, text: string) => () => set((was) => ({ lines: LINES.map((k) => (k === i ? text.trim() : was.lines[k] ?? '')) }), 'Lettering on the back');
  const found = check.stamp;
  return (
    <>
      <h3>Stamp on the back</h3>
      <div class="limit-grid back-lettering">
        {LINES.map((i) => <TextField key={i} label={i === 0 ? 'lettering, such as a name' : 'second line'} value={now.lines[i] ?? ''} onSet={(t) => line(i, t)} />)}
      </div>
      {stamp ? (
        <>
          <Choice legend="How it is made" value={now.raised ? 'raised' : 'cut'} onPick={(v) => set(() => ({ raised: v === 'raised' }), v === 'raised' ? 'Raised lettering' : 'Lettering cut in')}
            options={[{ value: 'cut', label: 'cut in' }, { value: 'raised', label: 'raised' }]} />
          <div class="limit-grid stamp-sizes">
            <LengthField label="height of capitals" mm={now.height || found?.height || found?.limit || LOWEST} least={LOWEST} most={HIGHEST}
              onLength={(height, words) => set(() => ({ height }), `Capitals ${words}`)} />
            <LengthField label="lowest your maker holds here" mm={now.least ?? found?.limit ?? LOWEST} least={LOWEST} most={HIGHEST}
              onLength={(least, words) => set(() => ({ least }), `Lowest capitals on the back ${words}`)} />
          </div>
          {now.height > 0 ? <button type="button" class="plain" onClick={() => set(() => ({ height: 0 }), 'As high as there is room')}>As high as there is room</button> : null}
        </>
      ) : <p class="hint">A shop’s name or year, cut with the die and paid once; its price stands under Order.</p>}
      {check.stampProblem ? <p class="warn">{check.stampProblem}</p> : null}
      {found ? <p class={found.verdict === 'holds' ? 'fine' : 'warn'}>{found.says} {found.largest > 0 ? `Its block is ${mm(found.w, 1)} by ${mm(found.h, 1)}.` : ''}</p> : null}
    </>
  );
}
