// The repairs that were made, one by one.
import type { Recipe } from '../engine/wire.gen';
import { isRepair, repairsOf, type Named } from '../state/repairs';
import { repairName } from '../words/repairs';
import { plural } from '../words/words';
import type { MetalProps } from './MetalPanel';

type Props = Pick<MetalProps, 'onRecipes' | 'onPoint'>;

export function RepairList({ recipes, ...p }: Props & { recipes: readonly Recipe[] }) {
  const all = repairsOf(recipes);
  if (all.length === 0) return null;
  const remove = () => {
    p.onPoint(undefined);
    p.onRecipes((now) => now.filter((r) => !isRepair(r)), `Took ${plural(all.length, 'repair')} out`);
  };
  return (
    <fieldset class="hand-lines repairs">
      <legend>Repairs</legend>
      <p class="hint">At another size each does only what is needed there.</p>
      <ul>{all.map((n) => <Repair key={n.index} {...n} {...p} />)}</ul>
      {all.length > 1 ? <button type="button" class="plain" onClick={remove}>Take all {all.length} out</button> : null}
    </fieldset>
  );
}

function Repair({ kind, recipes, index, no, onRecipes, onPoint }: Props & Named) {
  const name = repairName({ kind, no });
  const remove = () => {
    onPoint(undefined);
    onRecipes((all) => all.filter((r) => !recipes.includes(r)), `Took a repair out: ${name.toLowerCase()}`);
  };
  return (
    <li onPointerEnter={() => onPoint(index)} onPointerLeave={() => onPoint(undefined)} onFocusCapture={() => onPoint(index)} onBlurCapture={() => onPoint(undefined)}>
      <span class="line-name">{name}</span>
      <button type="button" class="plain" onClick={remove}>Remove<span class="unseen"> {name.toLowerCase()}</span></button>
    </li>
  );
}
