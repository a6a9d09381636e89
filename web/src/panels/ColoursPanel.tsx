import type { ComponentChildren } from 'preact';
import type { Buys, Flat, FlatCode, Joining, Next, Plating, SeenLoss } from '../engine/wire.gen';
import { Section, Swatch, Why } from '../widgets/basic';
import { BuysChart } from '../widgets/BuysChart';
import { look } from '../widgets/look';
import { coloursSays, flatTitle, roleWords } from '../words/words';

export interface ColoursProps {
  flats: readonly Flat[];
  /** What a maker's list calls them. */
  codes?: readonly FlatCode[] | undefined;
  plating: Plating | undefined;
  asked: number;
  most: number;
  buys: Buys | undefined;
  fewer: boolean;
  /** What goes with one enamel fewer, and whether it is marked on the pin. */
  next: Next | undefined;
  marking: boolean;
  open?: boolean;
  /** Told when the section is opened or shut. */
  onOpen?: ((open: boolean) => void) | undefined;
  /** The maker's colour list. */
  maker?: ComponentChildren;
  onCount: (n: number) => void;
  onFlat: (id: number) => void;
  onMark: (on: boolean) => void;
  onApart: (j: Joining) => void;
}

export function ColoursPanel(p: ColoursProps) {
  const codeOf = (f: Flat) => p.codes?.find((c) => c.flat === f.id)?.code;
  return (
    <Section id="colours" title="Colours" says={coloursSays(p.flats, p.buys?.included)} open={p.open} onOpen={p.onOpen}>
      <CountRail asked={p.asked} most={p.most} included={p.buys?.included} onCount={p.onCount} />
      {p.fewer ? <p class="hint">The drawing has no more colours than are shown.</p> : null}
      <ul class="flat-list">
        {p.flats.map((f) => (
          <li key={f.id}>
            <button type="button" onClick={() => p.onFlat(f.id)}>
              <span class={`swatch ${f.role}`} style={look(f, p.plating)} aria-hidden="true" />
              <span class="flat-name">{flatTitle(f, p.plating)}<span class="unseen">, </span></span>
              <span class="role">{roleWords(f)}{codeOf(f) ? <> · <span class="flat-code">{codeOf(f)}</span></> : null}</span>
              <span class="share">{(100 * f.share).toFixed(f.share < 0.1 ? 1 : 0)} %</span>
            </button>
          </li>
        ))}
      </ul>
      {p.next ? <WhatGoes {...p} next={p.next} /> : null}
      {p.maker}
      {p.buys ? <WhatItBuys buys={p.buys} asked={p.asked} onCount={p.onCount} /> : <p class="hint">Counting what each colour buys …</p>}
      <p class="hint">Screen colours are a guide only: light, plating and firing shift them.</p>
    </Section>
  );
}

/** Pegs in a rail: 1 to 12, those in the price filled with brass. */
function CountRail(p: { asked: number; most: number; included: number | undefined; onCount: (n: number) => void }) {
  const counts = Array.from({ length: p.most }, (_, i) => i + 1);
  return (
    <fieldset class="rail">
      <legend>How many enamels</legend>
      <div class="rail-row">
        {counts.map((n) => (
          <label key={n} class={p.included !== undefined && n > p.included ? 'peg over' : 'peg'}>
            <input type="radio" name="count" value={n} checked={n === p.asked} onChange={() => p.onCount(n)} />
            <span>{n}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** Which two colours join when one enamel fewer is asked for. */
function WhatGoes({ next, flats, marking, onMark, onApart }: ColoursProps & { next: Next }) {
  const { joining } = next;
  const goes = flats.find((f) => f.id === joining.goes);
  return (
    <div class="goes">
      <p>
        {goes ? <><Swatch rgb={goes.rgb} /> <span aria-hidden="true">→</span> <Swatch rgb={joining.becomes} /></> : null} {next.words}
      </p>
      <p class="two">
        <button type="button" class="plain" aria-pressed={marking} onClick={() => onMark(!marking)}>{marking ? 'Hide where' : 'Show where'}</button>
        <button type="button" class="plain" onClick={() => onApart(joining)}>Keep these two apart</button>
      </p>
      <Why><p>The change is CIEDE2000 {joining.shift.toFixed(1)} from the colour that goes to the one it becomes. Steps of one soft gradient join first, then what an artist would hardly count, then whatever loses least: the distance between two colours, weighed by the roots of their areas so that a small accent outlives a shade of a large area. Colours that you keep or hold apart never join.</p></Why>
    </div>
  );
}

function WhatItBuys({ buys, asked, onCount }: { buys: Buys; asked: number; onCount: (n: number) => void }) {
  const seen = buys.rows.some((r) => r.seen);
  const step = buys.rows.find((r) => r.count === asked)?.words;
  const next = buys.rows.find((r) => r.count === asked + 1)?.words;
  return (
    <div class="buys">
      <h3>What each colour buys</h3>
      <BuysChart rows={buys.rows} count={asked} included={buys.included} onPick={onCount} />
      {step ? <p>{step}.</p> : null}
      {next ? <p class="next-step"><span class="field-label">One more</span> {next}.</p> : null}
      <div class="scroll">
        <table>
          <thead>
            <tr><th scope="col">enamels</th><th scope="col">colours</th><th scope="col">loss, mean ΔE00</th><th scope="col">worst tenth ΔE00</th>{seen ? <th scope="col">the step is seen</th> : null}<th scope="col">a piece, about</th><th scope="col">in all</th></tr>
          </thead>
          <tbody>
            {buys.rows.map((r) => (
              <tr key={r.count} class={r.count === asked ? 'now' : ''} aria-current={r.count === asked ? 'true' : undefined}>
                <th scope="row"><button type="button" class="link" onClick={() => onCount(r.count)}>{r.count}</button></th>
                <td class="chips">{r.swatches.map((c, i) => <Swatch key={i} rgb={c} />)}</td>
                <td>{r.mean.toFixed(1)}</td><td>{r.worst.toFixed(1)}</td>{seen ? <td>{r.seen && r.count > 1 ? <StepSeen seen={r.seen} /> : null}</td> : null}<td>{r.perPiece.replace(/^about /, '') || '—'}</td><td>{r.total || '—'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Why>
        <p>Loss is CIEDE2000 (D65) between your drawing and the flat colours, over enamel at least a pixel from any edge. About 1 can just be seen side by side; 2 is close; 10 is another colour. “Worst tenth” is the mean over the tenth of the picture that is matched worst. Metal and cut-outs are no loss of colour.</p>
        {seen ? <p>“The step is seen” asks whether an eye, from where the pin is looked at, would see the change from one colour fewer at this size (S-CIELAB, all but the largest thousandth of the picture). A colour whose step nobody could see is not worth its price.</p> : null}
      </Why>
    </div>
  );
}

/** Whether an eye would see the step to a count, and how far it is. */
function StepSeen({ seen }: { seen: SeenLoss }) {
  return <span class={seen.unseen ? 'step-unseen' : undefined}>{seen.unseen ? '✕ no' : '✓ yes'}, {seen.step.toFixed(1)}</span>;
}
