// Colours to fill with: those of the drawing, a set that goes together, a free one.
import type { NamedColour, RGB8 } from '../engine/wire.gen';
import { hexOf, rgbOf } from '../state/project';
import { Swatch } from '../widgets/basic';

export interface Colours {
  /** The enamels of the drawing, as they are shown and as they are drawn. */
  enamels: readonly { name: string; rgb: RGB8; drawn: RGB8 }[];
  starting: readonly NamedColour[];
  /** The greatest number of enamels, when there is no room for another. */
  most: number | undefined;
}

interface Props extends Colours {
  legend: string;
  onPick: (rgb: RGB8, name: string) => void;
}

/** With so few colours in a drawing, more are wanted at once. */
const FEW = 2;

export function Swatches({ enamels, starting, most, legend, onPick }: Props) {
  const there = new Set(enamels.map((e) => hexOf(e.drawn)));
  const others = starting.filter((c) => !there.has(hexOf(c.rgb)));
  return (
    <fieldset class="fill-with">
      <legend>{legend}</legend>
      <div class="chips-row">
        {enamels.map((e) => (
          <button key={hexOf(e.drawn)} type="button" class="chip" onClick={() => onPick(e.drawn, e.name)}><Swatch rgb={e.rgb} /> {e.name}</button>
        ))}
        {most === undefined ? <FreeColour onPick={onPick} /> : null}
      </div>
      {most === undefined ? (
        <details class="starting" open={enamels.length <= FEW}>
          <summary>colours that go together</summary>
          <StartingSet colours={others} onPick={onPick} />
        </details>
      ) : <p class="hint">A pin here has at most {most} enamels.</p>}
    </fieldset>
  );
}

export function StartingSet({ colours, onPick }: { colours: readonly NamedColour[]; onPick: Props['onPick'] }) {
  return (
    <div class="starting-set">
      {colours.map((c) => (
        <button key={hexOf(c.rgb)} type="button" aria-label={c.name} title={c.name} onClick={() => onPick(c.rgb, c.name)}><Swatch rgb={c.rgb} /></button>
      ))}
    </div>
  );
}

/** Any colour, taken when the browser's own chooser is done with. */
function FreeColour({ onPick }: Pick<Props, 'onPick'>) {
  const pick = (hex: string) => {
    const rgb = rgbOf(hex);
    if (rgb) onPick(rgb, hex);
  };
  return (
    <label class="chip free">
      <input type="color" value="#7a9ab0" onChange={(e) => pick(e.currentTarget.value)} />
      <span>another …</span>
    </label>
  );
}
