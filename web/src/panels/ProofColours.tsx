// Every colour as asked for beside what the proof shows of it.
import type { ColourShown, FlatCode } from '../engine/wire.gen';
import { hexOf } from '../state/project';
import { Swatch } from '../widgets/basic';
import { apartWords } from '../words/proof';

export function ProofColours({ colours, codes }: { colours: readonly ColourShown[]; codes: readonly FlatCode[] }) {
  if (colours.length === 0) return null;
  return (
    <div class="scroll" tabIndex={0} role="region" aria-label="Colours of the proof">
      <table class="proof-colours">
        <caption>Colour by colour, apart by CIEDE2000</caption>
        <thead><tr><th scope="col">Colour</th><th scope="col">Asked</th><th scope="col">Shown</th><th scope="col">Apart</th></tr></thead>
        <tbody>
          {colours.map((c) => {
            const code = codes.find((k) => k.flat === c.flat)?.code;
            return (
              <tr key={c.flat}>
                <th scope="row">{c.name}{code ? <span class="hint"> {code}</span> : null}</th>
                <td><Swatch rgb={c.asked} label={hexOf(c.asked)} /></td>
                {c.seen ? <><td><Swatch rgb={c.shown} label={hexOf(c.shown)} /></td><td>{apartWords(c.deltaE)} <span class="hint">{c.deltaE.toFixed(1)}</span></td></> : <td colSpan={2}>too small to tell</td>}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
