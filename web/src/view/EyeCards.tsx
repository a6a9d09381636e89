// The cards at a place that is not read, and where two colours meet.
import { PairRow } from '../panels/SightNeighbours';
import { Passes, ReadAnswers } from '../panels/SightUnread';
import { neighbours } from '../state/eye';
import { withSize } from '../state/project';
import * as s from '../state/store';
import { detailWords, judged, measuredAs, nameOf, noSize, type Names } from '../words/sight';
import { capital } from '../words/words';
import { pairsNow, unreadNow } from './eyeMarked';
import { go } from './go';
import type { Mapping } from './place';
import { Popover } from './Popover';
import type { Room } from './useRoom';

interface Props {
  spot: Extract<s.Spot, { kind: 'unread' | 'pair' }>;
  names: Names;
  room: Room;
  map: Mapping | undefined;
}

const close = () => (s.spot.value = undefined);

export function EyeCard(p: Props) {
  return p.spot.kind === 'unread' ? <UnreadCard {...p} /> : <PairCard {...p} />;
}

function UnreadCard({ spot, names, room, map }: Props) {
  const all = unreadNow.value;
  const r = all[spot.index];
  if (!r || !map) return null;
  return (
    <Popover key={`unread${spot.index}`} at={map.toSheet(r.x, r.y)} room={room} title={detailWords(r, names)} onClose={close}>
      <div class="card-body">
        <p>{capital(measuredAs(r))}.</p>
        <ReadAnswers reading={r} />
        {r.parted === 'fails' ? <Passes at={r.partedFrom} none={noSize(r)} onSize={(mm, words) => { s.change((q) => withSize(q, mm), `Size ${words}`); close(); }} /> : null}
        <Steps spot={spot} n={all.length} />
      </div>
    </Popover>
  );
}

function PairCard({ spot, names, room, map }: Props) {
  const all = pairsNow.value;
  const pair = all[spot.index];
  if (!pair || !map) return null;
  const title = `${capital(nameOf(pair.a, names))} and ${nameOf(pair.b, names)}`;
  const ideas = neighbours.value?.answer.ideas.some((i) => i.pair === spot.index) ?? false;
  return (
    <Popover key={`pair${spot.index}`} at={map.toSheet(pair.x, pair.y)} room={room} title={title} onClose={close}>
      <div class="card-body">
        <p>{capital(judged(pair)[0]?.says ?? '')}.</p>
        <PairRow pair={pair} names={names} />
        {ideas ? <p class="hint">Ideas stand beside the pair in the list.</p> : null}
        <Steps spot={spot} n={all.length} />
      </div>
    </Popover>
  );
}

function Steps({ spot, n }: { spot: Props['spot']; n: number }) {
  const step = (by: number) => (s.spot.value = { ...spot, index: (spot.index + by + n) % n });
  return (
    <div class="two">
      <button type="button" class="plain" onClick={() => step(-1)}>Before</button>
      <button type="button" class="plain" onClick={() => step(1)}>Next</button>
      <button type="button" class="plain" onClick={() => { close(); go('sight'); }}>To the list</button>
    </div>
  );
}
