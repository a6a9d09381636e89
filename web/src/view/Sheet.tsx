// The drafter's sheet: frame, tools, stage, twin and title block.
import { computed } from '@preact/signals';
import type { Edit } from '../engine/wire.gen';
import { setPictureSide, touch } from '../state/ask';
import { bounds } from '../state/bounds';
import { withHandEdit } from '../state/colouring';
import { designOf, withDesign, withSize } from '../state/project';
import { perMM, trueSize } from '../state/screen';
import * as s from '../state/store';
import { codeOf, FlatButton } from './Callouts';
import { FindingCard } from './FindingCard';
import { FlatCard } from './FlatCard';
import { go } from './go';
import { openDemo, openFirst, pasteNow } from './doors';
import type { Point } from './place';
import { Popover } from './Popover';
import { NARROW, Stage } from './Stage';
import { TitleBlock } from './TitleBlock';
import { Tools } from './Tools';
import { Twin, twinSize } from './Twin';
import { Doors } from '../widgets/Doors';
import { useRoom, type Room } from './useRoom';

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

/** The mark of what goes next, while it is asked for and is that of the pin shown. */
const lost = computed(() => (s.marking.value && !s.holding.value && s.lost.value?.project === s.shown.value?.project ? s.lost.value : undefined));

/** Under the twin: its rule, its words and air, px. */
const TWIN_FOOT = 64;

/** Room kept for a twin whose size is not known yet, px: what a usual pin takes,
 * so that nothing moves when it comes; a narrow sheet gives all it may. */
const UNKNOWN_TWIN = { w: Infinity, h: 144 };

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
  const t = await touch(x, y);
  if (!t?.hit) {
    s.spot.value = undefined;
    return;
  }
  s.spot.value = { kind: 'flat', flat: t.flat, x: at.x, y: at.y, area: t.area, width: t.width, built: t.built, work: { x, y } };
}

export function Sheet() {
  const { ref, room } = useRoom<HTMLDivElement>();
  const check = s.shown.value?.check;
  const shot = s.front.value?.shot;
  const twin = twinSize(shot, check, perMM.value, factor.value) ?? UNKNOWN_TWIN;
  return (
    <section class="sheet" aria-label="The sheet">
      <Tools />
      <Doors onFiles={openFirst} onPaste={() => void pasteNow()} onDemo={(d) => void openDemo(d)} />
      <div class="stage" ref={ref}>
        <Stage
          room={room} check={check} front={s.front.value} back={s.back.value} brought={s.brought.value} lost={lost.value}
          turned={s.turned.value} holding={s.holding.value} dragFactor={dragFactor.value} factor={factor.value}
          spot={s.spot.value} name={s.shownDesign.value?.name ?? 'The pin'}
          plating={s.plating.value} twin={{ w: twin.w, h: twin.h + TWIN_FOOT }}
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
        <Twin shot={shot} check={check} perMM={perMM.value} trueSize={trueSize.value} factor={factor.value} onCheck={() => go('sight')} />
        {s.behind.value && s.shown.value ? <p class="held late small-caps" role="status">working …</p> : null}
        <SpotCard room={room} />
      </div>
      {room.w > 0 && room.w < NARROW && check ? (
        <ul class="callout-list" aria-label="Colours of the pin">
          {check.flats.flats.map((f) => (
            <li key={f.id}><FlatButton flat={f} code={codeOf(check.flats, f.id)} plating={s.plating.value} onClick={() => (s.spot.value = { kind: 'flat', flat: f.id, x: 0, y: 0 })} /></li>
          ))}
        </ul>
      ) : null}
      <TitleBlock
        check={check} design={s.shownDesign.value} version={s.shownVersion.value} plating={s.plating.value} behind={s.behind.value}
        onName={(name) => s.change((p) => withDesign(p, { name }), `Named ${name}`)} onGo={go}
      />
    </section>
  );
}

function SpotCard({ room }: { room: Room }) {
  const spot = s.spot.value;
  const check = s.shown.value?.check;
  if (!spot || !check || s.turned.value) return null;
  const close = () => (s.spot.value = undefined);
  // An edit speaks of the colours as they are shown, so it goes with their count.
  const count = s.shownDesign.value?.colours ?? check.flats.count;
  const edit = (e: Edit, what: string, shut = false) => {
    s.change((p) => withHandEdit(p, { ...e, count }), what);
    if (shut) close();
  };
  if (spot.kind === 'flat') {
    const flat = check.flats.flats.find((f) => f.id === spot.flat);
    if (!flat) return null;
    const work = spot.work;
    const split = () => {
      if (!work) return;
      edit({ op: 'split', flat: flat.id, x: work.x / check.flats.w, y: work.y / check.flats.h }, `Split an area off ${flat.name}`, true);
    };
    return (
      <Popover key={`flat${flat.id}`} at={spot} room={room} title={flat.name} onClose={close}>
        <FlatCard
          flat={flat} code={check.flats.codes?.find((c) => c.flat === flat.id)} others={check.flats.flats.filter((f) => f.id !== flat.id)} starting={s.hello.value?.starting ?? []} plating={s.plating.value}
          pieces={check.flats.spots.find((q) => q.flat === flat.id)?.pieces ?? 1}
          area={spot.area} width={spot.width} built={spot.built} canSplit={work !== undefined} onEdit={edit} onSplit={split}
        />
      </Popover>
    );
  }
  const finding = check.findings[spot.index];
  if (!finding) return null;
  const flat = check.flats.flats.find((f) => f.id === finding.flat);
  const n = check.findings.length;
  return (
    <Popover key={`spot${spot.index}`} at={spot} room={room} title={`Trouble spot ${spot.index + 1} of ${n}`} onClose={close}>
      <FindingCard
        finding={finding} flat={flat} growTo={check.growTo.mm > 0 ? check.growTo : undefined}
        onGrow={(to) => { s.change((p) => withSize(p, to.mm), `Grew to ${to.inMM}`); close(); }}
        onFlat={() => flat && (s.spot.value = { ...spot, kind: 'flat', flat: flat.id })}
        onList={() => { close(); go('metal'); }}
        onStep={(by) => (s.spot.value = { ...spot, index: (spot.index + by + n) % n })}
      />
    </Popover>
  );
}
