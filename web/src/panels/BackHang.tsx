// How the pin hangs, and the constants of cloth and clutch behind that.
import type { Advice, BackUsual, Hold, Range } from '../engine/wire.gen';
import { Why } from '../widgets/basic';
import { RangeField } from '../widgets/RangeField';
import type { OnBack } from './BackPanel';

interface Props {
  back: Advice;
  /** The person's own constants, when there are any. */
  hold: Hold | undefined;
  usual: BackUsual | undefined;
  onBack: OnBack;
}

const CONSTANTS: readonly { key: keyof Hold; label: string; unit: string }[] = [
  { key: 'press', label: 'force of the clutch on the cloth', unit: 'N' },
  { key: 'friction', label: 'friction on cloth', unit: '' },
  { key: 'stiffness', label: 'stiffness of cloth', unit: 'N mm/rad' },
  { key: 'cloth', label: 'thickness of cloth', unit: 'mm' },
];

export function BackHang({ back, hold, usual, onBack }: Props) {
  const now = hold ?? usual?.hold;
  const set = (key: keyof Hold, end: Partial<Range>) => {
    onBack((b) => {
      const was = b.hold ?? usual?.hold;
      return was ? { hold: { ...was, [key]: { ...was[key], ...end } } } : {};
    }, 'Changed what is known of cloth and clutch');
  };
  return (
    <>
      <h3>How it hangs</h3>
      <ul class="notes">{back.hangSays.map((w) => <li key={w}>{w}</li>)}</ul>
      <Why ask="why? The model and its constants">
        {back.model.map((w) => <p key={w}>{w}</p>)}
        {now ? (
          <>
            <div class="range-grid">
              {CONSTANTS.map((c) => <RangeField key={c.key} label={c.label} unit={c.unit} range={now[c.key]} onRange={(end) => set(c.key, end)} />)}
            </div>
            {hold ? <button type="button" class="plain" onClick={() => onBack(() => ({ hold: undefined }), 'Usual cloth and clutch')}>Back to the usual figures</button> : null}
          </>
        ) : null}
      </Why>
    </>
  );
}
