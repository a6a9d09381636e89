// The stamp on the back: the artist's own mark, lettering, how it is made, and whether there is room.
import type { Check, Mark, Stamp } from '../engine/wire.gen';
import { Choice } from '../widgets/basic';
import { LengthField } from '../widgets/LengthField';
import { TextField } from '../widgets/TextField';
import { mm } from '../words/length';
import { BackMark } from './BackMark';
import type { OnBack } from './BackPanel';

interface Props {
  check: Check;
  stamp: Stamp | undefined;
  onBack: OnBack;
  /** Why the last picture of a mark was refused; '' when it was not. */
  markFault: string;
  onMarkFile: (file: File, take: (mark: Mark) => void) => void;
}

const EMPTY: Stamp = { lines: [], height: 0, raised: false };

/** Lines that can be typed. */
const LINES = [0, 1];

/** Bounds of the height of capitals, mm. */
const LOWEST = 0.5;
const HIGHEST = 20;

export function BackStamp({ check, stamp, onBack, markFault, onMarkFile }: Props) {
  const now = stamp ?? EMPTY;
  const set = (change: (was: Stamp) => { [K in keyof Stamp]?: Stamp[K] | undefined }, what: string) => onBack((b) => {
    const was = b.stamp ?? EMPTY;
    const next = { ...was, ...change(was) } as Stamp;
    return { stamp: next.mark || next.lines.some((l) => l.trim() !== '') ? next : undefined };
  }, what);
  const line = (i: number, text: string) => () => set((was) => ({ lines: LINES.map((k) => (k === i ? text.trim() : was.lines[k] ?? '')) }), 'Lettering on the back');
  const setMark = (change: Partial<Mark>, what: string) => set((was) => (was.mark ? { mark: { ...was.mark, ...change } } : {}), what);
  // Another picture keeps the measures that were set.
  const take = (mark: Mark) => set((was) => ({ mark: { ...was.mark, ...mark } }), 'Your mark on the back');
  const lettered = now.lines.some((l) => l.trim() !== '');
  const found = check.stamp;
  return (
    <>
      <h3>Stamp on the back</h3>
      <BackMark mark={now.mark} found={found?.mark} fault={markFault} onFile={(f) => onMarkFile(f, take)} onSet={setMark}
        onRemove={() => set(() => ({ mark: undefined }), 'No mark on the back')} />
      <div class="limit-grid back-lettering">
        {LINES.map((i) => <TextField key={i} label={i === 0 ? 'lettering, such as a name' : 'second line'} value={now.lines[i] ?? ''} onSet={(t) => line(i, t)} />)}
      </div>
      {stamp ? (
        <>
          <Choice legend="How it is made" value={now.raised ? 'raised' : 'cut'} onPick={(v) => set(() => ({ raised: v === 'raised' }), v === 'raised' ? 'Raised stamp' : 'Stamp cut in')}
            options={[{ value: 'cut', label: 'cut in' }, { value: 'raised', label: 'raised' }]} />
          {lettered ? <div class="limit-grid stamp-sizes">
            <LengthField label="height of capitals" mm={now.height || found?.height || found?.limit || LOWEST} least={LOWEST} most={HIGHEST}
              onLength={(height, words) => set(() => ({ height }), `Capitals ${words}`)} />
            <LengthField label="lowest your maker holds here" mm={now.least ?? found?.limit ?? LOWEST} least={LOWEST} most={HIGHEST}
              onLength={(least, words) => set(() => ({ least }), `Lowest capitals on the back ${words}`)} />
          </div> : null}
          {lettered && now.height > 0 ? <button type="button" class="plain" onClick={() => set(() => ({ height: 0 }), 'As high as there is room')}>As high as there is room</button> : null}
        </>
      ) : <p class="hint">Your mark, a shop’s name or a year, cut with the die and paid once; its price stands under Order.</p>}
      {check.stampProblem ? <p class="warn">{check.stampProblem}</p> : null}
      {found ? <p class={found.verdict === 'holds' ? 'fine' : 'warn'}>{found.says} {found.largest > 0 ? `Its block is ${mm(found.w, 1)} by ${mm(found.h, 1)}.` : ''}</p> : null}
    </>
  );
}
