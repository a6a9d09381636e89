// The drafter's sheet: frame, tools, stage, twin and title block.
import { computed } from '@preact/signals';
import { setPictureSide, touch } from '../state/ask';
import { openBefore } from '../state/before';
import { eachInAll } from '../state/items';
import { bounds } from '../state/bounds';
import { underOf, withRecipe } from '../state/hands';
import { withMark } from '../state/lettering';
import { markOf, recipeOf, type LineDraft } from '../state/line';
import { liveParts } from '../state/parts';
import { liveBack } from '../state/posts';
import { designOf, withDesign } from '../state/project';
import { perMM, trueSize } from '../state/screen';
import * as s from '../state/store';
import { codeOf, FlatButton } from './Callouts';
import { eyeMarked } from './eyeMarked';
import { go } from './go';
import { openDemo, openFirst, pasteNow } from './doors';
import { draftWords } from '../words/hands';
import { HeadNotes } from './HeadNotes';
import { later } from './later';
import { layOut, NARROW } from './layout';
import { LineMode } from './LineMode';
import type { Point } from './place';
import { SpotCard } from './SpotCard';
import { Stage } from './Stage';
import { TitleBlock } from './TitleBlock';
import { Tools } from './Tools';
import { Twin, twinSize } from './Twin';
import { Doors } from '../widgets/Doors';
import { useRoom } from './useRoom';

const Designs = later(() => import('./Designs'));

/** Another drawing or another measure makes the two numbers incomparable. */
const factor = computed(() => {
  const [a, b] = [s.design.value, s.shownDesign.value];
  const same = a && b && a.size.by === b.size.by && a.drawings.at(-1)?.id === b.drawings.at(-1)?.id;
  return same ? a.size.mm / b.size.mm : 1;
});

const dragFactor = computed(() => {
  const from = s.history.value ? designOf(s.history.value.now)?.size.mm : undefined;
  const to = s.dragged.value ? designOf(s.dragged.value)?.size.mm : undefined;
  return from && to ? to / from : 1;
});

/** What is marked, while it is asked for and is that of the pin shown. */
const marked = computed(() => {
  const m = s.marked.value;
  return m && !s.holding.value && m.view === s.marking.value && m.project === s.shown.value?.project ? m : undefined;
});

/** Under the twin: its rule, its words and air, px. */
const TWIN_FOOT = 64;

/** Room kept for a twin whose size is not known yet, px: what a usual pin takes,
 * so that nothing moves when it comes. */
const UNKNOWN_TWIN = 144;

/** Dragging goes in steps of a tenth of a millimetre; what is typed is kept finer. */
const DRAGGED = 10;
const TYPED = 1000;

function resize(k: number, stepsPerMM: number) {
  return (p: Parameters<typeof withDesign>[0]) => {
    const size = designOf(p)?.size;
    if (!size) return p;
    const { least, most } = bounds.value;
    const mm = Math.round(Math.min(most, Math.max(least, size.mm * k)) * stepsPerMM) / stepsPerMM;
    return withDesign(p, { size: { ...size, mm } });
  };
}

/** Makes the pin so wide or high, by what is on the sheet when the number was read. */
function setSide(side: 'w' | 'h', mm: number) {
  const check = s.shown.peek()?.check;
  if (check) s.change(resize(mm / (check[side] * factor.peek()), TYPED), 'Changed the size');
}

async function touched(x: number, y: number, at: Point) {
  const raster = s.shown.value?.check.flats;
  const t = await touch(x, y);
  if (s.spot.value?.kind === 'line') return;
  const under = t && raster && underOf(t, x, y, raster);
  if (under && t.hit) s.spot.value = { kind: 'flat', flat: t.flat, ...at, under };
  else s.spot.value = under?.gap && { kind: 'open', ...at, under, gap: under.gap };
}

function changeLine(change: (d: LineDraft) => LineDraft): void {
  const spot = s.spot.peek();
  if (spot?.kind === 'line') s.spot.value = { ...spot, draft: change(spot.draft) };
}

function endLine(): void {
  const spot = s.spot.peek();
  if (spot?.kind !== 'line') return;
  const { draft } = spot;
  const [recipe, mark] = [recipeOf(draft), markOf(draft)];
  if (!recipe && !mark) return;
  s.spot.value = undefined;
  s.change((p) => (recipe ? withRecipe(p, recipe) : mark ? withMark(p, mark) : p), draftWords(draft.kind).did);
}

/** The gap at the spot that was touched. */
const gap = computed(() => {
  const spot = s.spot.value;
  return spot?.kind === 'flat' ? spot.under?.gap : spot?.kind === 'open' ? spot.gap : undefined;
});

export function Sheet() {
  const { ref, room } = useRoom<HTMLDivElement>();
  const check = s.shown.value?.check;
  const shot = s.front.value?.shot;
  const twin = twinSize(shot, check, perMM.value, factor.value)?.h ?? UNKNOWN_TWIN;
  const layout = layOut(room, shot?.picture, dragFactor.value);
  const narrow = room.w > 0 && room.w < NARROW;
  const { map } = layout;
  const spot = s.spot.value;
  const thinnest = s.shownDesign.value?.limits.line ?? 0;
  return (
    <section class="sheet" aria-label="The sheet">
      <Tools />
      <Doors onFiles={openFirst} onPaste={() => void pasteNow()} onBefore={openBefore} onDemo={(d) => void openDemo(d)} />
      <div class="shelf"><Designs /></div>
      <HeadNotes />
      <div class="stage" ref={ref}>
        <Stage
          room={room} check={check} front={s.front.value} back={s.back.value} hung={liveBack()} brought={s.brought.value} marked={marked.value}
          turned={s.turned.value} holding={s.holding.value} layout={layout} factor={factor.value}
          lining={spot?.kind === 'line'} gap={gap.value} pointed={s.shownDesign.value?.recipes[s.pointed.value ?? -1]} thinnest={thinnest}
          letter={s.shownDesign.value?.lettering?.find((m) => m === s.pointedLetter.value)} parts={liveParts() ?? check?.parts} spot={spot} seen={eyeMarked.value} name={s.shownDesign.value?.name ?? 'The pin'}
          plating={s.plating.value} twin={twin + TWIN_FOOT}
          onSide={setPictureSide}
          onTouch={(x, y, at) => void touched(x, y, at)}
          onHold={(on) => (s.holding.value = on)}
          onFlat={(flat, at) => (s.spot.value = { kind: 'flat', flat, ...at })}
          onFlag={(index, at) => (s.spot.value = { kind: 'finding', index, ...at })}
          onDrag={(k) => s.drag(resize(k, DRAGGED))}
          onDrop={() => s.letGo(`Size ${s.design.value?.size.mm ?? ''} mm`)}
          bounds={bounds.value} onSize={setSide}
        />
        {s.holding.value ? <p class="held small-caps">the drawing as brought</p> : null}
        <Twin folded={narrow} shot={shot} check={check} perMM={perMM.value} trueSize={trueSize.value} factor={factor.value} onCheck={() => go('sight')} />
        {s.behind.value && s.shown.value ? <p class="held late small-caps" role="status">working …</p> : null}
        {spot?.kind === 'line' && map && check ? (
          <LineMode
            draft={spot.draft} check={check} room={room} layout={{ ...layout, map }} thinnest={thinnest}
            onDraft={changeLine} onDone={endLine} onCancel={() => (s.spot.value = undefined)}
          />
        ) : null}
        <SpotCard check={check} room={room} map={map} />
      </div>
      {narrow && check ? (
        <ul class="callout-list" aria-label="Colours of the pin">
          {check.flats.flats.map((f) => (
            <li key={f.id}><FlatButton flat={f} code={codeOf(check.flats, f.id)} plating={s.plating.value} onClick={() => (s.spot.value = { kind: 'flat', flat: f.id, x: 0, y: 0 })} /></li>
          ))}
        </ul>
      ) : null}
      <TitleBlock
        check={check} design={s.shownDesign.value} version={s.shownVersion.value} plating={s.plating.value} behind={s.behind.value} each={eachInAll.value}
        onName={(name) => s.change((p) => withDesign(p, { name }), `Named ${name}`)} onGo={go}
      />
    </section>
  );
}
