// Lines drawn and erased by hand, one by one.
import type { Recipe } from '../engine/wire.gen';
import { NARROWEST_ERASER } from '../state/line';
import { WidthField } from '../widgets/WidthField';
import { handName, LINE_WORDS } from '../words/hands';
import type { MetalProps } from './MetalPanel';

type Props = Pick<MetalProps, 'onRecipes' | 'onLine' | 'onPoint'>;

interface Named {
  line: Recipe;
  /** Its place among the recipes. */
  index: number;
  name: string;
}

export function HandLines({ recipes, ...p }: Props & { recipes: readonly Recipe[] }) {
  const lines = named(recipes);
  return (
    <fieldset class="hand-lines">
      <legend>Lines by hand</legend>
      {lines.length > 0
        ? <ul>{lines.map((l) => <Line key={l.index} {...l} {...p} />)}</ul>
        : <p class="hint">Metal drawn where the drawing has none, or taken away where it has too much.</p>}
      <div class="two">
        <button type="button" class="plain" onClick={() => p.onLine('draw-line')}>{LINE_WORDS['draw-line'].act}</button>
        <button type="button" class="plain" onClick={() => p.onLine('erase-line')}>{LINE_WORDS['erase-line'].act}</button>
      </div>
    </fieldset>
  );
}

/** Drawn and erased lines are numbered apart, in the order they were made. */
function named(recipes: readonly Recipe[]): Named[] {
  const counts = { 'draw-line': 0, 'erase-line': 0 };
  return recipes.flatMap((line, index) => {
    const { kind } = line;
    return kind === 'draw-line' || kind === 'erase-line' ? [{ line, index, name: handName(kind, ++counts[kind]) }] : [];
  });
}

function Line({ line, index, name, onRecipes, onPoint }: Omit<Props, 'onLine'> & Named) {
  const resize = (width: number) => onRecipes((all) => all.map((r) => (r === line ? { ...r, width } : r)), `Changed the width of ${name.toLowerCase()}`);
  const remove = () => {
    onPoint(undefined);
    onRecipes((all) => all.filter((r) => r !== line), `Took ${name.toLowerCase()} out`);
  };
  return (
    <li onPointerEnter={() => onPoint(index)} onPointerLeave={() => onPoint(undefined)} onFocusCapture={() => onPoint(index)} onBlurCapture={() => onPoint(undefined)}>
      <span class="line-name">{name}</span>
      <WidthField label={`Width of ${name.toLowerCase()}`} hideLabel width={line.width} least={line.kind === 'erase-line' ? NARROWEST_ERASER : 0} onWidth={resize} />
      <button type="button" class="plain" onClick={remove}>Remove<span class="unseen"> {name.toLowerCase()}</span></button>
    </li>
  );
}
