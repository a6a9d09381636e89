import type { Check, Design } from '../engine/wire.gen';
import { Choice, Section, Why } from '../widgets/basic';
import { grams, mm } from '../words/length';
import { backSays, plural } from '../words/words';

export interface BackProps {
  check: Check | undefined;
  design: Design;
  turned: boolean;
  onPosts: (n: number) => void;
  onTurn: () => void;
}

export function BackPanel(p: BackProps) {
  const b = p.check?.back;
  return (
    <Section id="back" title="Back" says={p.check ? backSays(p.check) : 'Weighing …'}>
      {b && p.check ? (
        <>
          <p>{b.reason}</p>
          <Choice
            legend="Posts"
            value={String(p.design.posts)}
            onPick={(v) => p.onPosts(Number(v))}
            options={[
              { value: '0', label: 'as advised', hint: `The tool advises ${plural(b.count, 'post')} here.` },
              { value: '1', label: 'one' },
              { value: '2', label: 'two', hint: 'A second post keeps a pin from turning or drooping; it is charged a piece.' },
              { value: '3', label: 'three' },
            ]}
          />
          {b.hidden ? null : <p class="warn">No place hides the whole {mm(b.clutch)} clutch behind the pin; its rim will show.</p>}
          <table class="places">
            <caption>Places, seen from the back</caption>
            <thead><tr><th scope="col">post</th><th scope="col">from the left</th><th scope="col">from the top</th></tr></thead>
            <tbody>
              {p.check.places.map((q, i) => (
                <tr key={i}><th scope="row">{i + 1}</th><td>{q.left.inMM}</td><td>{q.top.inMM}</td></tr>
              ))}
            </tbody>
          </table>
          <p>About {grams(b.weight)} without the clutch; {b.area.toFixed(0)} mm² of metal, {mm(p.design.thickness)} thick.</p>
          <button type="button" class="plain" onClick={p.onTurn}>{p.turned ? 'Turn to the front' : 'Turn it over'}</button>
          {b.why.length > 0 ? <Why>{b.why.map((w) => <p key={w}>{w}</p>)}</Why> : null}
        </>
      ) : null}
      <details class="more">
        <summary>Cautions</summary>
        <ul class="notes">
          <li>A post is sharp. A pin is not a toy: its small parts can be swallowed; keep it from children under three.</li>
          <li>Platings that bear nickel, silver tones above all, can cause skin reactions.</li>
          <li>Lead and cadmium are limited in goods that children may handle; ask the maker for a test report.</li>
          <li>The law of the place of sale decides, and a qualified test house can tell you where your pin stands.</li>
        </ul>
      </details>
    </Section>
  );
}
