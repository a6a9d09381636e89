// The message to a maker, as it will be pasted; the gaps are for the person.
import { useState } from 'preact/hooks';
import type { Inquiry, PapersPlan } from '../engine/wire.gen';
import { Choice } from '../widgets/basic';
import { TextField } from '../widgets/TextField';

interface Props {
  inquiry: Inquiry | undefined;
  plan: PapersPlan;
  today: string;
  onPlan: (change: Partial<PapersPlan>, what: string) => void;
  onCopy: (text: string) => Promise<string>;
}

export function PapersMessage({ inquiry, plan, today, onPlan, onCopy }: Props) {
  const [done, say] = useState('');
  if (!inquiry) return <p class="hint">The message is being written …</p>;
  return (
    <>
      <Lengths plan={plan} onPlan={onPlan} />
      <label class="field need-by"><span class="field-label">wanted by</span>
        <input type="date" value={plan.needBy ?? ''} min={today} onChange={(e) => onPlan({ needBy: e.currentTarget.value }, 'Day the pins are wanted')} />
      </label>
      <TextField label="a sentence of your own to the maker" value={plan.note ?? ''} onSet={(note) => () => onPlan({ note }, 'A sentence to the maker')} />
      <p><strong>{inquiry.subject}</strong></p>
      <pre class="message" tabIndex={0} aria-label="Message to the maker">{marked(inquiry)}</pre>
      <p class="row-acts">
        <button type="button" class="solid" onClick={() => void onCopy(inquiry.body).then(say)}>Copy the message</button>
        <button type="button" class="plain" onClick={() => void onCopy(inquiry.subject).then(say)}>Copy its subject</button>
      </p>
      <p class="hint" role="status">{done}</p>
    </>
  );
}

type Chosen = Pick<Props, 'plan' | 'onPlan'>;

function Lengths({ plan, onPlan }: Chosen) {
  return (
    <Choice legend="Lengths in" value={plan.units || 'mm'} options={[{ value: 'mm', label: 'millimetres' }, { value: 'in', label: 'inches' }]}
      onPick={(v) => onPlan({ units: v === 'in' ? 'in' : '' }, v === 'in' ? 'Papers in inches' : 'Papers in millimetres')} />
  );
}

/** What all papers have in common. */
export function PaperUnits({ plan, onPlan }: Chosen) {
  return (
    <>
      <Choice legend="Printed on" value={plan.paper ?? 'a4'} options={[{ value: 'a4', label: 'A4' }, { value: 'letter', label: 'Letter' }]}
        onPick={(paper) => onPlan({ paper }, paper === 'letter' ? 'Papers on Letter' : 'Papers on A4')} />
      <Lengths plan={plan} onPlan={onPlan} />
    </>
  );
}

/** The body with its gaps marked. */
function marked({ body, gaps }: Inquiry) {
  let parts: (string | { gap: string })[] = [body];
  for (const gap of gaps) {
    parts = parts.flatMap((p) => (typeof p === 'string' ? p.split(gap).flatMap((t, i) => (i === 0 ? [t] : [{ gap }, t])) : [p]));
  }
  return parts.map((p, i) => (typeof p === 'string' ? p : <mark key={i}>{p.gap}</mark>));
}
