import type { Limits, Size, Sizes, SizesFor } from '../engine/wire.gen';
import type { Thought } from '../state/sizes';
import { Section, Why } from '../widgets/basic';
import { SizesChart } from '../widgets/SizesChart';
import { mm } from '../words/length';
import { failsWords, holdsAt, LIMIT_WORDS, sizesSays, thoughtSays } from '../words/sizes';

export interface SizesProps {
  sizes: Sizes | undefined;
  size: Size;
  limits: Limits;
  thought: Thought | undefined;
  /** The answer to a thought, which may be that before it. */
  answer: { thought: Thought; row: SizesFor } | undefined;
  onSize: (mm: number) => void;
  onDrag: (mm: number) => void;
  onDrop: () => void;
  onThink: (t: Thought | undefined) => void;
  onUse: (t: Thought) => void;
}

export function SizesPanel(p: SizesProps) {
  const now = p.sizes?.rows.find((r) => r.now);
  return (
    <Section id="sizes" title="Sizes" says={sizesSays(p.sizes)} alarm={now !== undefined && !holdsAt(now, p.size.mm)}>
      {p.sizes ? <Held {...p} sizes={p.sizes} /> : null}
    </Section>
  );
}

function Held(p: SizesProps & { sizes: Sizes }) {
  return (
    <>
      <SizesChart sizes={p.sizes} thought={p.thought ? p.answer?.row : undefined} size={p.size.mm} onDrag={p.onDrag} onDrop={p.onDrop} />
      <SizesTable {...p} />
      <WhatIf {...p} />
      <Why>
        <p>This is the drawing as it is, before any repair. Its lines and areas were measured once; a size only moves the limits over those measures, so every size is known at once.</p>
        <p>Lines count by their length along the middle, colour areas by what lies in places too narrow or too small for a fill. Heights in the picture are roots of the shares, so that little can be seen.</p>
      </Why>
    </>
  );
}

const BY_WORDS = { longest: 'the longest side', width: 'the width', height: 'the height', mean: 'the mean of width and height' } as const;

function SizesTable({ sizes, size, onSize }: SizesProps & { sizes: Sizes }) {
  return (
    <div class="scroll">
      <table class="sizes-table">
        <caption>As drawn, by {BY_WORDS[sizes.by]}</caption>
        <thead>
          <tr><th scope="col">made so</th><th scope="col">sizes that hold</th><th scope="col">at {mm(size.mm, 1)}</th></tr>
        </thead>
        <tbody>
          {sizes.rows.map((r) => {
            const first = r.ranges[0];
            return (
              <tr key={r.name} class={r.now ? 'now' : undefined}>
                <th scope="row">{r.name}{r.now ? <span class="unseen"> (chosen)</span> : null}</th>
                <td>{first ? <>{first.to.mm > 0 ? '' : 'from '}<button type="button" class="link" onClick={() => onSize(first.from.mm)} aria-label={`Make the pin ${first.from.inMM}, the smallest that holds ${r.name}`}>{first.from.inMM}</button>{first.to.mm > 0 ? <> to <button type="button" class="link" onClick={() => onSize(first.to.mm)} aria-label={`Make the pin ${first.to.inMM}, the largest that holds ${r.name}`}>{first.to.inMM}</button></> : null}</> : 'none'}</td>
                <td class="fails-at">{failsWords(sizes, r, size.mm)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

/** The limits that are thought about, mm. */
const THINK = { least: 0.05, most: 0.6, step: 0.01 };

function WhatIf({ limits, thought, answer, onThink, onUse }: SizesProps) {
  const key = thought?.key ?? 'line';
  const value = thought?.mm ?? limits[key];
  const keys = Object.keys(LIMIT_WORDS) as Thought['key'][];
  const same = !thought || Math.abs(thought.mm - limits[thought.key]) < THINK.step / 2;
  return (
    <fieldset class="what-if">
      <legend>What if</legend>
      <p class="wish-line">
        <span>the</span>
        <select class="wish-pick" aria-label="Which limit" value={key} onChange={(e) => { const k = keys.find((x) => x === e.currentTarget.value); if (k) onThink({ key: k, mm: limits[k] }); }}>
          {keys.map((k) => <option key={k} value={k}>{LIMIT_WORDS[k]}</option>)}
        </select>
        <span>were <b>{mm(value, 2)}</b></span>
      </p>
      <input
        type="range" min={THINK.least} max={THINK.most} step={THINK.step} value={value} aria-label={`What if the ${LIMIT_WORDS[key]} were`} aria-valuetext={mm(value, 2)}
        onInput={(e) => onThink({ key, mm: Number(e.currentTarget.value) })}
      />
      <p class="what-if-says" role="status">{thought && answer ? thoughtSays(answer.thought, answer.row) : `The maker holds ${mm(limits[key], 2)} now. Move it to see; nothing is changed.`}</p>
      <div class="two">
        <button type="button" class="plain" disabled={same} onClick={() => thought && onUse(thought)}>Use this limit</button>
        {thought ? <button type="button" class="link" onClick={() => onThink(undefined)}>never mind</button> : null}
      </div>
    </fieldset>
  );
}
