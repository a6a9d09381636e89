// A pin drawn in several parts: what they are, and how they hang.
import type { Hanging, HangingEye, HeldParts, Join, PartsChoice } from '../engine/wire.gen';
import type { EyeRef } from '../state/parts';
import { Choice, Why } from '../widgets/basic';
import { LengthField } from '../widgets/LengthField';
import { CountField } from '../widgets/TextField';
import { END_WORDS, placeWords } from '../words/parts';
import { capital } from '../words/words';

/** Rings that are sold for this, mm, and links that still make a pin (this tool's bounds). */
const RING = { least: 2, most: 15 };
const MOST_LINKS = 20;

interface Props {
  parts: HeldParts;
  busy: boolean;
  onChoose: (c: PartsChoice) => void;
  onJoin: (join: number, change: Partial<Join>, what: string) => void;
}

export function PartsFields({ parts, busy, onChoose, onJoin }: Props) {
  const { joins } = parts;
  return (
    <section class="parts" aria-busy={busy || undefined} aria-label="Parts">
      <Choice<PartsChoice>
        legend="Parts" value={parts.choice} onPick={onChoose}
        options={[
          { value: 'dangle', label: 'a dangle', hint: 'The parts hang from each other by rings and chain.' },
          { value: 'one', label: 'one piece', hint: 'A bridge of metal joins them; it is listed under the repairs.' },
        ]}
      />
      <p class={parts.loose > 0 || parts.choice === '' ? 'parts-says warn' : 'parts-says'} role="status">{parts.says}</p>
      {joins.length > 0 ? (
        <>
          <ul class="joins">{joins.map((j, i) => <Chain key={i} hanging={j} no={i} all={joins.length} onJoin={onJoin} />)}</ul>
          {joins.some((j) => !j.upper.drawn || !j.lower.drawn) ? (
            <>
              <p class="hint">Drag an eye on the pin, or move it with the arrow keys.</p>
              <button type="button" class="plain" disabled={busy} onClick={() => onChoose('dangle')}>Put the eyes where the tool would</button>
            </>
          ) : null}
          <Why>
            <p>An eye is a hole for a jump ring with metal all round it; both widths are among what the maker can hold. It is put straight above the middle of what hangs, where there is room, so that it hangs straight.</p>
            <p>A chain pulls tight: each ring and each link reaches across the inside of its wire. Wire of 0.7 mm and links 2.5 mm long inside are common practice, with no published source; ask your maker for theirs.</p>
          </Why>
        </>
      ) : null}
    </section>
  );
}

function Chain({ hanging: h, no, all, onJoin }: Pick<Props, 'onJoin'> & { hanging: Hanging; no: number; all: number }) {
  const name = all > 1 ? `Chain ${no + 1}` : 'The chain';
  return (
    <li aria-label={name}>
      {all > 1 ? <h4>{name}</h4> : null}
      <dl>
        {(['upper', 'lower'] as const).map((end) => <Eye key={end} end={end} eye={h[end]} />)}
      </dl>
      <div class="two">
        <LengthField label="ring, outer width" mm={h.ring.mm} {...RING} onLength={(ring, words) => onJoin(no, { ring }, `${name}: rings of ${words}`)} />
        <CountField label="links between" value={h.links} least={0} most={MOST_LINKS} onCount={(links) => onJoin(no, { links }, `${name}: ${links === 0 ? 'one ring' : `${links} links`}`)} />
      </div>
      <p class="hangs">{h.says}{h.links === 0 ? ' One ring joins the two.' : ''}</p>
      {h.problem ? <p class="warn">{h.problem}</p> : null}
    </li>
  );
}

function Eye({ end, eye }: { end: EyeRef['end']; eye: HangingEye }) {
  return (
    <div>
      <dt>{capital(END_WORDS[end])}{eye.drawn ? ', as drawn' : ''}</dt>
      <dd>{placeWords(eye)}{eye.problem ? <span class="warn"> {eye.problem}</span> : null}</dd>
    </div>
  );
}

