// What sets one fill, or one metal, apart from the plain one.
import type { Finish, Role } from '../engine/wire.gen';
import { FINISH_MEANS, FINISH_WORDS } from '../words/finish';
import { Choice } from './basic';

interface Props {
  role: Role;
  finishes: readonly Finish[];
  value: Finish;
  onPick: (f: Finish) => void;
}

export function FinishChoice({ role, finishes, value, onPick }: Props) {
  if (finishes.length < 2) return null;
  const options = finishes.map((f) => ({ value: f, label: f === '' ? (role === 'metal' ? 'smooth' : 'plain') : FINISH_WORDS[f], hint: FINISH_MEANS[f] }));
  return <Choice legend={role === 'metal' ? 'metal' : 'fill'} value={finishes.includes(value) ? value : ''} options={options} onPick={onPick} />;
}
