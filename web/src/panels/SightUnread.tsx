// What is not read from where the pin is looked at: the worst first, with both
// questions kept apart.
import { useState } from 'preact/hooks';
import type { Length, Reading, ReadingAnswer } from '../engine/wire.gen';
import { Why } from '../widgets/basic';
import { detailWords, measuredAs, noSize, noticedWords, partedWords, unread, unreadSays, type Answer, type Names } from '../words/sight';

export interface SightUnreadProps {
  reading: ReadingAnswer | undefined;
  names: Names;
  /** S-CIELAB from which something is noticed. */
  noticed: number;
  late: boolean;
  /** Built metal was left out, so that a size is answered at once. */
  asDrawn: boolean;
  marks: boolean;
  onMarks: (on: boolean) => void;
  /** Walks to a place, by its number in the list. */
  onWalk: (index: number) => void;
  onSize: (mm: number, words: string) => void;
}

/** So many are seen at once; the rest are asked for. */
const FEW = 3;

/** More would hide each other, and nobody reads on. */
const MOST = 60;

export function SightUnread(p: SightUnreadProps) {
  const [all, setAll] = useState(false);
  const { reading } = p;
  if (!reading) return <p class="hint">What is read is being found …</p>;
  const found = reading.at.findings;
  const missed = unread(found);
  const shown = found.slice(0, all ? MOST : FEW);
  const more = Math.min(found.length, MOST) - shown.length;
  return (
    <div class={p.late ? 'unread-list late-answer' : 'unread-list'}>
      <h3>What is not read {reading.at.name}</h3>
      <p>{missed.length === 0 ? <span class="fine" aria-hidden="true">✓ </span> : null}{unreadSays(missed.length, reading.at.unsure)}{p.asDrawn ? ' As drawn, without built metal.' : ''}</p>
      {missed.length > 0 ? (
        <button type="button" class="plain" aria-pressed={p.marks} onClick={() => p.onMarks(!p.marks)}>{p.marks ? 'Hide them on the pin' : 'Show them on the pin'}</button>
      ) : null}
      <ol>
        {shown.map((r, i) => <Item key={i} reading={r} names={p.names} onWalk={() => p.onWalk(i)} onSize={p.onSize} />)}
      </ol>
      {more > 0 ? <button type="button" class="plain" onClick={() => setAll(true)}>Show {more} more</button> : null}
      {all && found.length > MOST ? <p class="hint">{found.length - MOST} lesser ones are not listed.</p> : null}
      {found.length > 0 ? (
        <Why>
          <p>The two questions are not one. <em>Told apart</em> asks whether a line, or the gap between two, is wide enough for the eye to see it as a thing of its own. <em>Noticed</em> asks whether leaving it out would be seen: a lone dark thread on a light ground is noticed long before it is wide enough to be told from another beside it.</p>
          <p>Noticed is a difference of at least {p.noticed} in S-CIELAB (Zhang and Wandell 1996; the figure is this tool’s choice): the picture with it and without it, at the worse of the metal’s dark and bright reflections.</p>
        </Why>
      ) : null}
    </div>
  );
}

function Item({ reading: r, names, onWalk, onSize }: { reading: Reading; names: Names; onWalk: () => void; onSize: SightUnreadProps['onSize'] }) {
  return (
    <li class={r.parted}>
      <button type="button" class="unread-walk" onClick={onWalk}>
        <b>{detailWords(r, names)}</b>
        <span class="hint">{measuredAs(r)}<span class="unseen">. Show it on the pin</span></span>
      </button>
      <ReadAnswers reading={r} />
      {r.parted === 'fails' ? <Passes at={r.partedFrom} none={noSize(r)} onSize={onSize} /> : null}
    </li>
  );
}

/** Both questions with their answers. */
export function ReadAnswers({ reading: r }: { reading: Reading }) {
  return (
    <dl class="two-questions">
      <dt>told apart?</dt><Verdict answer={partedWords(r)} is={r.parted} />
      {r.detail === 'lettering' ? null : <><dt>noticed?</dt><Verdict answer={noticedWords(r)} is={r.noticed} /></>}
    </dl>
  );
}

function Verdict({ answer, is }: { answer: Answer; is: Reading['parted'] }) {
  return <dd class={is}><span class="verdict-mark">{answer.mark}</span> {answer.words}</dd>;
}

/** The size from which it passes, to be taken. */
export function Passes({ at, none, onSize }: { at: Length; none: string; onSize: SightUnreadProps['onSize'] }) {
  if (at.mm <= 0) return <p class="hint">{none}</p>;
  return <button type="button" class="link" onClick={() => onSize(at.mm, at.inMM)}>told apart from {at.inMM}<span class="unseen">: make the pin so large</span></button>;
}
