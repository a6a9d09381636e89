// The sections, in the order of the job: data in, wishes out.
import { bringBack, chooseGround } from '../state/ask';
import { bringMark, markFault } from '../state/backmark';
import { buysNow, coloursOpen } from '../state/eyeBuys';
import { begun } from '../state/line';
import { liveBack, withBack } from '../state/posts';
import { designOf, withDesign, withEdit, withVersion } from '../state/project';
import * as s from '../state/store';
import { thumbs } from '../state/thumbs';
import type { Design } from '../engine/wire.gen';
import { BackPanel } from '../panels/BackPanel';
import { ColoursPanel } from '../panels/ColoursPanel';
import { DrawingPanel } from '../panels/DrawingPanel';
import { MetalPanel } from '../panels/MetalPanel';
import { reviseFirst } from './doors';
import { later } from './later';
import { Maker } from './Maker';
import { Parts } from './Parts';
import { Repairs } from './Repairs';
import { Sizes } from './Sizes';
import { FILL_WORDS, MAKING_WORDS, plural } from '../words/words';

const Sight = later(() => import('./Sight'));
const Order = later(() => import('./Order'));
const Papers = later(() => import('./Papers'));
const Proof = later(() => import('./Proof'));
const Parcel = later(() => import('./Parcel'));

const design = (change: Partial<Design>, what: string) => s.change((p) => withDesign(p, change), what);

/** Changes the design as it is by then: a typed text takes a moment to be read. */
const now = (change: (d: Design) => Partial<Design>, what: string) =>
  s.change((p) => {
    const d = designOf(p);
    return d ? withDesign(p, change(d)) : p;
  }, what);

/** A new making or fill brings its usual limits; the person's own are kept in the undo. */
function usual(making: Design['making'], fill: Design['fill']) {
  return s.hello.value?.limits.find((l) => l.making === making && l.fill === fill)?.limits;
}

function remake(change: { making?: Design['making']; fill?: Design['fill'] }, what: string) {
  const d = s.design.value;
  if (!d) return;
  const limits = usual(change.making ?? d.making, change.fill ?? d.fill) ?? d.limits;
  design({ ...change, limits }, what);
}

/** Where the middle of the sheet is, for a card opened from the list. */
const CENTRE = { x: 220, y: 90 };

/** Where there is room beside the sheet, what colours buy is seen at once. */
const ROOMY = matchMedia('(min-width: 1024px)').matches;

export function Column() {
  const d = s.design.value;
  const v = s.version.value;
  const check = s.shown.value?.check;
  const ref = d?.drawings.at(-1);
  const mark = (what: typeof s.marking.value) => {
    s.marking.value = what;
    if (what) { s.turned.value = false; toSheet(); }
  };
  const toSheet = () => document.querySelector('.stage')?.scrollIntoView({ block: 'nearest' });
  return (
    <div class="column">
      <DrawingPanel
        opened={ref ? s.opened.value[ref.id] : undefined} thumb={ref ? thumbs.value[ref.id] : undefined} ground={ref?.ground ?? 'auto'} revisions={d?.drawings ?? []} onRevise={reviseFirst}
        onGround={(g) => void chooseGround(g)} onBack={(ref) => void bringBack(ref)}
        marking={s.marking.value === 'changed'} onMark={(on) => mark(on ? 'changed' : undefined)}
      />
      {d && v ? (
        <>
          <ColoursPanel
            codes={check?.flats.codes} maker={<Maker />}
            next={s.behind.value ? undefined : check?.next} marking={s.marking.value === 'next'}
            onMark={(on) => mark(on ? 'next' : undefined)}
            onApart={(j) => s.change((p) => withEdit(p, { op: 'apart', flat: j.goes, with: j.keep }), 'Kept two colours apart')}
            open={ROOMY}
            flats={check?.flats.flats ?? []} plating={s.plating.value} asked={d.colours} most={s.hello.value?.maxCount ?? 12} buys={buysNow()} onOpen={(open) => (coloursOpen.value = open)}
            fewer={!s.behind.value && check !== undefined && check.flats.count < d.colours}
            onCount={(n) => design({ colours: n }, plural(n, 'enamel'))}
            onFlat={(flat) => { s.turned.value = false; s.spot.value = { kind: 'flat', flat, ...CENTRE }; toSheet(); }}
          />
          <MetalPanel
            design={d} platings={s.hello.value?.platings ?? []} plating={v.plating} check={check} repairs={<Repairs />} parts={<Parts />}
            onPlating={(plating) => s.change((p) => withVersion(p, { plating }), `Plating ${plating}`)}
            onMaking={(making) => remake({ making }, `Made ${MAKING_WORDS[making]}`)}
            onFill={(fill) => remake({ fill }, `Filled: ${FILL_WORDS[fill]}`)}
            onLimits={(change) => now((q) => ({ limits: { ...q.limits, ...change } }), 'Changed a limit')}
            onUsualLimits={() => design({ limits: usual(d.making, d.fill) ?? d.limits }, 'Usual limits')}
            onRecipes={(change, what) => now((q) => ({ recipes: change(q.recipes) }), what)}
            onLine={(kind) => { s.turned.value = false; s.spot.value = { kind: 'line', x: 0, y: 0, draft: begun(kind) }; }}
            onPoint={(index) => (s.pointed.value = index)}
            onMarks={(change, what) => now((q) => ({ lettering: change(q.lettering ?? []) }), what)}
            onLetter={(mark) => (s.pointedLetter.value = mark)}
            onFinding={(index) => { s.turned.value = false; s.spot.value = { kind: 'finding', index, ...CENTRE }; toSheet(); }}
          />
          <Sizes />
          <BackPanel check={check} hung={liveBack()} design={d} usual={s.hello.value?.back} turned={s.turned.value} markFault={markFault.value} onMarkFile={(f, take) => void bringMark(f, take)}
            onPosts={(posts) => s.change((q) => withDesign(withBack(q, { hand: undefined }), { posts }), posts === 0 ? 'Posts as advised' : plural(posts, 'post'))}
            onBack={(change, what) => s.change((q) => withBack(q, change(designOf(q)?.back ?? {})), what)}
            onMetal={design}
            onTurn={() => { s.turned.value = !s.turned.value; toSheet(); }} />
          <Sight />
          <Order />
          <Papers />
          <Proof />
          <Parcel />
        </>
      ) : null}
    </div>
  );
}
