import type { ComponentChildren } from 'preact';
import type { Check, Design, LetterMark, Limits, Plating, Recipe } from '../engine/wire.gen';
import { withBuilt } from '../state/hands';
import type { LineDraft } from '../state/line';
import { Choice, Section } from '../widgets/basic';
import { tone } from '../widgets/look';
import { WidthField } from '../widgets/WidthField';
import { metalSays } from '../words/words';
import { HandLines } from './HandLines';
import { Lettering } from './Lettering';
import { LimitsTable } from './LimitsTable';
import { RepairList } from './RepairList';
import { SaveCurves } from './SaveCurves';
import { TroubleSpots } from './TroubleSpots';

export interface MetalProps {
  design: Design;
  platings: readonly Plating[];
  plating: string;
  check: Check | undefined;
  /** Everything repaired at once. */
  repairs?: ComponentChildren;
  /** What the parts are, of a pin drawn in several. */
  parts?: ComponentChildren;
  onPlating: (id: string) => void;
  onMaking: (m: Design['making']) => void;
  onFill: (f: Design['fill']) => void;
  /** Changes as things then are: another field may have been read since. */
  onLimits: (change: Partial<Limits>) => void;
  onUsualLimits: () => void;
  onRecipes: (change: (all: readonly Recipe[]) => Recipe[], what: string) => void;
  /** Begins a line by hand, or the mark of a capital. */
  onLine: (kind: LineDraft['kind']) => void;
  /** Which recipe is pointed at, to be shown on the pin. */
  onPoint: (index: number | undefined) => void;
  /** Changes the marked capitals, and shows one of them on the pin. */
  onMarks: (change: (all: readonly LetterMark[]) => LetterMark[], what: string) => void;
  onLetter: (mark: LetterMark | undefined) => void;
  onFinding: (index: number) => void;
}

export function MetalPanel(p: MetalProps) {
  const plating = p.platings.find((x) => x.id === p.plating);
  const findings = p.check?.findings ?? [];
  const bad = findings.some((f) => f.verdict !== 'holds');
  return (
    <Section id="metal" title="Metal" says={metalSays(p.design, plating, findings)} alarm={bad}>
      <TroubleSpots check={p.check} onFinding={p.onFinding} />
      {p.repairs}
      {p.parts}
      <Platings {...p} />
      {plating?.softOnly && p.design.fill === 'hard' ? (
        <p class="warn">As a rule {plating.name} goes with soft enamel only; ask your maker before choosing hard.</p>
      ) : null}
      <Choice
        legend="How the metal is made"
        value={p.design.making}
        onPick={p.onMaking}
        options={[
          { value: 'struck', label: 'struck', hint: 'A steel die is pressed into sheet metal: the finest lines.' },
          { value: 'cast', label: 'cast', hint: 'Poured zinc alloy: free cut-outs and odd outlines, coarser lines.' },
        ]}
      />
      <Choice
        legend="How it is filled"
        value={p.design.fill}
        onPick={p.onFill}
        options={[
          { value: 'soft', label: 'soft enamel', hint: 'The colour lies below the metal lines; they can be felt.' },
          { value: 'hard', label: 'hard enamel', hint: 'Ground and polished flush, like jewellery; lines need more width.' },
          { value: 'none', label: 'no fill', hint: 'Bare metal relief.' },
        ]}
      />
      <Recipes recipes={p.design.recipes} onRecipes={p.onRecipes} />
      <HandLines recipes={p.design.recipes} onRecipes={p.onRecipes} onLine={p.onLine} onPoint={p.onPoint} />
      <Lettering marks={p.design.lettering ?? []} told={p.check?.lettering ?? []} onMark={() => p.onLine('capital')} onMarks={p.onMarks} onPoint={p.onLetter} />
      <RepairList recipes={p.design.recipes} onRecipes={p.onRecipes} onPoint={p.onPoint} />
      <SaveCurves />
      <LimitsTable limits={p.design.limits} onLimits={p.onLimits} onUsual={p.onUsualLimits} />
    </Section>
  );
}

function Platings(p: MetalProps) {
  return (
    <fieldset class="platings">
      <legend>Plating</legend>
      <div class="plating-row">
        {p.platings.map((x) => (
          <label key={x.id}>
            <input type="radio" name="plating" value={x.id} checked={x.id === p.plating} onChange={() => p.onPlating(x.id)} />
            <span
              class="coin"
              aria-hidden="true"
              style={tone(x)}
            />
            <span class="plating-name">{x.name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

const BUILT = 'Changed the built metal';

const RECIPES: readonly { kind: Recipe['kind']; label: string; hint: string }[] = [
  { kind: 'outer-edge', label: 'Build an outer edge', hint: 'Metal along the outside where the drawing has none.' },
  { kind: 'build-lines', label: 'Build lines between colours', hint: 'Metal wherever two enamels touch.' },
];

function Recipes({ recipes, onRecipes }: Pick<MetalProps, 'onRecipes'> & { recipes: readonly Recipe[] }) {
  const build = (kind: Recipe['kind'], width: number) => onRecipes((all) => withBuilt(all, kind, width), BUILT);
  return (
    <fieldset class="recipes">
      <legend>Built metal</legend>
      {RECIPES.map((k) => {
        const has = recipes.find((r) => r.kind === k.kind);
        return (
          <div key={k.kind} class="recipe">
            <label class="tick">
              <input
                type="checkbox"
                checked={has !== undefined}
                onChange={(e) => (e.currentTarget.checked ? build(k.kind, 0) : onRecipes((all) => all.filter((r) => r.kind !== k.kind), BUILT))}
              />
              <span>{k.label}{has?.proposed ? <span class="waits">proposed</span> : null}<span class="hint"> {k.hint}</span></span>
            </label>
            {has ? <WidthField label="width, or “thinnest” for what the maker holds" width={has.width} least={0} onWidth={(w) => build(k.kind, w)} /> : null}
          </div>
        );
      })}
    </fieldset>
  );
}
