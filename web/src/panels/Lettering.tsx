// Capitals marked by hand, each with how it holds at this size.
import type { LetterMark, Lettered } from '../engine/wire.gen';
import { toldOf, withoutMark } from '../state/lettering';
import { capitalName, capitalSays, MARKING } from '../words/lettering';
import { VERDICT } from '../words/words';

interface Props {
  marks: readonly LetterMark[];
  told: readonly Lettered[];
  onMark: () => void;
  onMarks: (change: (all: readonly LetterMark[]) => LetterMark[], what: string) => void;
  /** Shows one on the pin. */
  onPoint: (mark: LetterMark | undefined) => void;
}

export function Lettering({ marks, told, onMark, ...p }: Props) {
  return (
    <fieldset class="lettering">
      <legend>Lettering</legend>
      <p class="hint">Rows of letters are looked for by themselves. Mark a capital, and you are told whether it is high enough.</p>
      <ul aria-live="polite">{marks.map((mark, i) => <Capital key={i} {...p} mark={mark} told={toldOf(told, mark)} name={capitalName(i + 1)} />)}</ul>
      <button type="button" class="plain" onClick={onMark}>{MARKING.act}</button>
    </fieldset>
  );
}

function Capital({ mark, told, name, onMarks, onPoint }: Pick<Props, 'onMarks' | 'onPoint'> & { mark: LetterMark; told: Lettered | undefined; name: string }) {
  const remove = () => {
    onPoint(undefined);
    onMarks((all) => withoutMark(all, mark), `Took the mark of ${name.toLowerCase()} out`);
  };
  const [on, off] = [() => onPoint(mark), () => onPoint(undefined)];
  const asked = told && told.least > 0 ? told.verdict : undefined;
  return (
    <li class={asked} onPointerEnter={on} onPointerLeave={off} onFocusCapture={on} onBlurCapture={off}>
      <span class="verdict-mark" aria-hidden="true">{asked ? VERDICT[asked].mark : '–'}</span>
      <span><b>{name}</b><br />{told ? capitalSays(told) : 'measuring …'}</span>
      <button type="button" class="plain" onClick={remove}>Remove<span class="unseen"> {name.toLowerCase()}</span></button>
    </li>
  );
}
