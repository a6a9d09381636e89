// Ideas that tell a pair apart and keep the design: each is looked at first.
import { useId } from 'preact/hooks';
import type { Idea } from '../engine/wire.gen';
import type { Trial } from '../state/eyeIdeas';
import { Canvas } from '../widgets/Canvas';
import { ideaDoes, shiftWords } from '../words/sight';

interface Props {
  ideas: readonly Idea[];
  trial: Trial | undefined;
  onTry: (idea: Idea) => void;
  onMake: (idea: Idea) => void;
}

export function SightIdeas({ ideas, trial, onTry, onMake }: Props) {
  const name = useId();
  if (ideas.length === 0) return null;
  const looked = ideas.find((i) => i === trial?.idea);
  return (
    <fieldset class="mends ideas">
      <legend>{ideas.length === 1 ? 'An idea' : `${ideas.length} ideas`}</legend>
      {ideas.map((i) => (
        <label key={i.words} class="tick">
          <input type="radio" name={name} checked={i === looked} onChange={() => onTry(i)} />
          <span>{i.words}</span>
        </label>
      ))}
      {looked && trial ? <Looked trial={trial} idea={looked} onMake={onMake} /> : null}
    </fieldset>
  );
}

function Looked({ trial, idea, onMake }: { trial: Trial; idea: Idea; onMake: Props['onMake'] }) {
  return (
    <>
      {trial.problem ? <p class="complaint" role="alert">{trial.problem}</p> : (
        <div class="mend-pair">
          <figure><Canvas shot={trial.before} label="The place as it is" /><figcaption>as it is</figcaption></figure>
          <figure aria-busy={trial.after === undefined}>
            {trial.after ? <Canvas shot={trial.after} label="The same place with the idea made" /> : <div class="drawing" role="status">Drawing it …</div>}
            <figcaption>like this</figcaption>
          </figure>
        </div>
      )}
      <p class="facts">{ideaDoes(idea)} {shiftWords(idea.shift)}</p>
      <button type="button" class="solid" onClick={() => onMake(idea)}>Do it so</button>
    </>
  );
}
