// Colours that meet, those that read as one first, and what would tell them apart.
import { useState } from 'preact/hooks';
import type { Flat, Idea, Neighbours, Pair, Thresholds } from '../engine/wire.gen';
import type { Trial } from '../state/eyeIdeas';
import { Swatch, Why } from '../widgets/basic';
import { tone } from '../widgets/look';
import { judged, meetWords, nameOf, readsAsOne, type Names } from '../words/sight';
import { capital } from '../words/words';
import { SightIdeas } from './SightIdeas';

export interface SightNeighboursProps {
  neighbours: Neighbours | undefined;
  names: Names;
  thresholds: Thresholds;
  late: boolean;
  trial: Trial | undefined;
  onWalk: (index: number) => void;
  onTry: (idea: Idea, pair: Pair) => void;
  onMake: (idea: Idea) => void;
}

/** Pairs that are told apart are seen when asked for. */
export function SightNeighbours(p: SightNeighboursProps) {
  const [all, setAll] = useState(false);
  const { neighbours } = p;
  if (!neighbours) return <p class="hint">The colours that meet are being compared …</p>;
  const { pairs } = neighbours;
  const bad = pairs.filter(readsAsOne).length;
  const shown = pairs.slice(0, all ? pairs.length : bad);
  return (
    <div class={p.late ? 'neighbours late-answer' : 'neighbours'}>
      <h3>Colours that meet</h3>
      <p>{bad === 0 ? <span class="fine" aria-hidden="true">✓ </span> : null}{capital(neighbours.words)}.</p>
      <ol class="pairs">
        {shown.map((q, i) => (
          <li key={`${q.kind} ${q.a} ${q.b}`}>
            <PairRow pair={q} names={p.names} onWalk={() => p.onWalk(i)} />
            <SightIdeas ideas={neighbours.ideas.filter((x) => x.pair === i)} trial={p.trial} onTry={(idea) => p.onTry(idea, q)} onMake={p.onMake} />
          </li>
        ))}
      </ol>
      {pairs.length > bad ? (
        <button type="button" class="plain" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'Hide those that are told apart' : `Show ${bad > 0 ? 'the other ' : 'all '}${pairs.length - bad}`}
        </button>
      ) : null}
      <Why>
        <p>By colour: two enamels are told apart from a CIEDE2000 of {p.thresholds.colour}, an enamel and the metal beside it from {p.thresholds.metal}, because a metal’s colour is never still: it is judged at its dark and its bright reflection, and must be told apart from both. Both figures are this tool’s choice.</p>
        <p>In dim light: by lightness alone, from a contrast of {p.thresholds.lightness} to 1, as WCAG 2 asks of graphics (1.4.11). That it stands in for dim light is this tool’s reading of it.</p>
        <p>Without red, green or blue: as eyes see it that miss the cone for long, middle or short waves (protanopia, deuteranopia, tritanopia), after Machado, Oliveira and Fernandes 2009 at full severity, worked on linear light. About one man in twelve sees red and green less well than most; most of them see more than this.</p>
        <p>A line between two colours helps: what is told of them is how they would read without it.</p>
      </Why>
    </div>
  );
}

/** Two colours, how they meet, and what each eye makes of them. */
export function PairRow({ pair, names, onWalk }: { pair: Pair; names: Names; onWalk?: () => void }) {
  const title = `${capital(nameOf(pair.a, names))} and ${nameOf(pair.b, names)}`;
  const head = (
    <>
      <span class="pair-chips" aria-hidden="true"><Chip id={pair.a} names={names} /><Chip id={pair.b} names={names} /></span>
      <span><b>{title}</b> <span class="hint">{meetWords(pair)}{onWalk ? <span class="unseen">. Show it on the pin</span> : null}</span></span>
    </>
  );
  return (
    <div class={readsAsOne(pair) ? 'meeting fails' : 'meeting holds'}>
      {onWalk ? <button type="button" class="pair-head" onClick={onWalk}>{head}</button> : <p class="pair-head">{head}</p>}
      <ul class="judged" aria-label={`${title} as each eye sees them`}>
        {judged(pair).map((j) => (
          <li key={j.by} class={j.apart ? 'holds' : 'fails'}><span class="verdict-mark" aria-hidden="true">{j.apart ? '✓' : '✕'}</span> <span aria-hidden="true">{j.by}</span><span class="unseen">{j.says}</span></li>
        ))}
      </ul>
    </div>
  );
}

function Chip({ id, names }: { id: number; names: Names }) {
  const flat: Flat | undefined = names.flats.find((f) => f.id === id);
  if (flat && flat.role !== 'metal') return <Swatch rgb={flat.rgb} big />;
  const style = names.plating ? tone(names.plating) : { backgroundColor: GREY };
  return <span class="swatch big metal" style={style} />;
}

/** Metal whose plating is not known yet. */
const GREY = '#999';
