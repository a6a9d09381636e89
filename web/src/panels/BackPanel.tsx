import type { Advice, Back, BackUsual, Check, Design, Fixing, Hung, Mark } from '../engine/wire.gen';
import { Choice, Section, Why } from '../widgets/basic';
import { label } from '../words/back';
import { backSays } from '../words/words';
import { BackCautions } from './BackCautions';
import { BackHang } from './BackHang';
import { BackStamp } from './BackStamp';
import { BackWeight } from './BackWeight';

/** Changes the back's wishes as they are by then; undefined goes back to the usual. */
export type OnBack = (change: (now: Back) => { [K in keyof Back]?: Back[K] | undefined }, what: string) => void;

export interface BackProps {
  check: Check | undefined;
  /** How it hangs while a post is moved. */
  hung: Hung | undefined;
  design: Design;
  usual: BackUsual | undefined;
  turned: boolean;
  onPosts: (n: number) => void;
  onBack: OnBack;
  onMetal: (change: Partial<Pick<Design, 'base' | 'thickness'>>, what: string) => void;
  onTurn: () => void;
  /** Why the last picture of a mark was refused; '' when it was not. */
  markFault: string;
  onMarkFile: (file: File, take: (mark: Mark) => void) => void;
}

export function BackPanel(p: BackProps) {
  const { check } = p;
  const now = p.hung ?? check;
  const b = now?.back;
  return (
    <Section id="back" title="Back" says={check ? backSays(check) : 'Weighing …'} alarm={b !== undefined && !b.hidden}>
      {b && check ? (
        <>
          <p>{b.reason}</p>
          <FixingChoice {...p} fixings={check.fixings} />
          {b.bar > 0 ? null : <Count back={b} posts={p.design.posts} onPosts={p.onPosts} />}
          <ByHand back={b} onOwn={() => p.onBack(() => ({ hand: undefined }), 'The tool’s own places')} />
          <Places back={b} places={now?.places ?? []} />
          <button type="button" class="plain" onClick={p.onTurn}>{p.turned ? 'Turn to the front' : 'Turn it over to move the posts'}</button>
          {b.why.length > 0 ? <Why>{b.why.map((w) => <p key={w}>{w}</p>)}</Why> : null}
          <BackHang back={b} hold={p.design.back?.hold} usual={p.usual} onBack={p.onBack} />
          <BackWeight {...p} back={b} />
          <BackStamp check={check} stamp={p.design.back?.stamp} onBack={p.onBack} markFault={p.markFault} onMarkFile={p.onMarkFile} />
          <BackCautions cautions={check.cautions} buyers={p.design.back?.buyers ?? ''} onBack={p.onBack} />
        </>
      ) : null}
    </Section>
  );
}

const FIXING: Record<Fixing['fastening'], string> = { '': 'post and clutch', magnet: 'magnet', bar: 'pin bar', screw: 'screw back' };

/** Each fastening with its own room and caution, as it would stand on this pin. */
function FixingChoice({ design, fixings, onBack }: BackProps & { fixings: readonly Fixing[] }) {
  const now = design.back?.fastening ?? '';
  return (
    <Choice
      legend="What holds it"
      value={now}
      onPick={(fastening) => onBack(() => ({ fastening: fastening || undefined, hand: undefined }), `Held by a ${FIXING[fastening]}`)}
      options={fixings.map((f) => ({ value: f.fastening, label: FIXING[f.fastening], hint: `${f.says} ${f.caution}` }))}
    />
  );
}

function Count({ back, posts, onPosts }: { back: Advice; posts: number; onPosts: (n: number) => void }) {
  return (
    <Choice
      legend="How many"
      value={String(posts)}
      onPick={(v) => onPosts(Number(v))}
      options={[
        { value: '0', label: 'as advised', hint: `The tool advises ${back.count} here.` },
        { value: '1', label: 'one' },
        { value: '2', label: 'two', hint: 'A second one keeps a pin from turning or drooping; it is charged a piece.' },
        { value: '3', label: 'three' },
      ]}
    />
  );
}

/** Where a hand's places fall behind the tool's own, and the way back to those. */
function ByHand({ back, onOwn }: { back: Advice; onOwn: () => void }) {
  if (!back.byHand) return null;
  return (
    <div class={back.worse.length > 0 ? 'by-hand warn' : 'by-hand'}>
      {back.worse.length > 0 ? (
        <>
          <p>Placed by hand, worse than the tool’s own places:</p>
          <ul class="notes">{back.worse.map((w) => <li key={w}>{w}</li>)}</ul>
        </>
      ) : <p>Placed by hand, as good as the tool’s own places.</p>}
      <button type="button" class="plain" onClick={onOwn}>Take the tool’s own places</button>
    </div>
  );
}

function Places({ back, places }: { back: Advice; places: Hung['places'] }) {
  return (
    <table class="places">
      <caption>Places, seen from behind: mirrored, to the half millimetre</caption>
      <thead><tr><th scope="col">{back.bar > 0 ? 'middle' : label(back)}</th><th scope="col">from the left</th><th scope="col">from the top</th><th scope="col">from the middle</th></tr></thead>
      <tbody>
        {[...places].sort((p, q) => p.no - q.no).map((q) => (
          <tr key={q.no}>
            <th scope="row">{q.no}</th>
            <td>{q.left.inMM}<br /><span class="hint">{q.left.inInches}</span></td>
            <td>{q.top.inMM}<br /><span class="hint">{q.top.inInches}</span></td>
            <td>{q.fromMiddle}<br /><span class="hint">{q.fromMiddleInches}</span></td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
