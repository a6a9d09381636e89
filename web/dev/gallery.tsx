// Every panel alone with canned answers: gallery.html?panel=metal&theme=dark,
// ?panel=sheet, ?panel=line or ?panel=capital for the whole page. Without a panel all are shown.
import { render } from 'preact';
import type { ComponentChildren } from 'preact';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../src/style/index.css';
import '../src/style/calendar.css';
import '../src/style/selling.css';
import '../src/style/papers.css';
import '../src/style/parcel.css';
import '../src/style/keeping.css';
import { BeforeSheet } from '../src/panels/BeforeSheet';
import { BackPanel } from '../src/panels/BackPanel';
import { CalendarPanel } from '../src/panels/CalendarPanel';
import { ColoursPanel } from '../src/panels/ColoursPanel';
import { DrawingPanel } from '../src/panels/DrawingPanel';
import { KeepingAlarm, KeepingPanel } from '../src/panels/KeepingPanel';
import { MetalPanel } from '../src/panels/MetalPanel';
import { PapersCard } from '../src/panels/PapersCard';
import { PapersMessage } from '../src/panels/PapersMessage';
import { ParcelCount } from '../src/panels/ParcelCount';
import { ParcelLedger } from '../src/panels/ParcelLedger';
import { PartsFields } from '../src/panels/PartsFields';
import { RepairAll } from '../src/panels/RepairAll';
import { OrderPanel, type OrderProps } from '../src/panels/OrderPanel';
import { HowManyPanel } from '../src/panels/HowManyPanel';
import { LeftPanel } from '../src/panels/LeftPanel';
import { PresalePanel } from '../src/panels/PresalePanel';
import { SightPanel } from '../src/panels/SightPanel';
import { SizesPanel } from '../src/panels/SizesPanel';
import { NO_TERMS } from '../src/state/items';
import { choices } from '../src/state/choices';
import * as s from '../src/state/store';
import type { Meta } from '../src/state/keepRecord';
import { thumbs } from '../src/state/thumbs';
import { applyTheme, theme } from '../src/state/theme';
import { App } from '../src/view/App';
import { AreaPart } from '../src/view/AreaPart';
import { FlatCard } from '../src/view/FlatCard';
import { OpenCard } from '../src/view/OpenCard';
import { OfferList } from '../src/widgets/OfferList';
import { MakerList } from '../src/widgets/MakerList';
import { BUYS, CHECK, CHOICES, FLATS, HELLO, NEXT, OPENED } from './canned/answers';
import { MAKER } from './canned/codes';
import { CAPITAL_DRAFT, CAPITALS, DRAFT, FILLS, GAP, HAND_LINES, UNDER } from './canned/hands';
import { CALENDAR, SCHEDULE } from './canned/calendar';
import { COMPARISON, FAULTS, OPEN_QUOTE, OTHER, READ } from './canned/order';
import { cannedShot, cannedThumb } from './canned/picture';
import { CARD, INQUIRY } from './canned/papers';
import { COUNT, STOCK } from './canned/parcel';
import { PARTS } from './canned/parts';
import { sightProps } from './canned/sight';
import { BLANK, DESIGN, LIST, REVISIONS } from './canned/project';
import { FOUND, MENDED, NO_OFFERS, OFFERS, REPAIRS } from './canned/repairs';
import { DEMAND, GUESS, LEFT, PLAN, PRESALE } from './canned/selling';
import { CANVAS, SIZES, THOUGHT, THOUGHT_ROW, WISH } from './canned/sizes';

const idle = () => undefined;
const version = DESIGN.versions[0] ?? { id: '', name: '', plating: 'gold', colours: [], quantity: 100 };

const PANELS: Record<string, () => ComponentChildren> = {
  drawing: () => <DrawingPanel opened={OPENED} thumb={cannedThumb()} ground="auto" onRevise={idle} onGround={idle} marking={false} onMark={idle} onBack={idle} revisions={REVISIONS} />,
  colours: () => <ColoursPanel flats={FLATS} plating={HELLO.platings[0]} asked={5} most={12} buys={BUYS} fewer={false} next={NEXT} marking={false} maker={<MakerList {...MAKER} />} onCount={idle} onFlat={idle} onMark={idle} onApart={idle} />,
  metal: () => (
    <MetalPanel design={{ ...DESIGN, recipes: [...DESIGN.recipes, ...HAND_LINES, ...REPAIRS], lettering: CAPITALS.map((c) => c.mark) }} platings={HELLO.platings} plating="gold" check={{ ...CHECK, lettering: CAPITALS }} repairs={repairAll()} parts={<PartsFields parts={PARTS} busy={false} onChoose={idle} onJoin={idle} />} onPlating={idle} onMaking={idle} onFill={idle}
      onLimits={idle} onUsualLimits={idle} onRecipes={idle} onLine={idle} onPoint={idle} onMarks={idle} onLetter={idle} onFinding={idle} />
  ),
  sizes: () => (
    <SizesPanel sizes={SIZES} size={DESIGN.size} limits={DESIGN.limits} thought={THOUGHT} answer={THOUGHT_ROW && { thought: THOUGHT, row: THOUGHT_ROW }}
      onSize={idle} onDrag={idle} onDrop={idle} onThink={idle} onUse={idle} />
  ),
  before: () => (
    <BeforeSheet wish={WISH} canvas={CANVAS} late={false} picture={undefined} problem="" planned={WISH} copied={false} bounds={{ least: 5, most: 150 }}
      onSize={idle} onMaking={idle} onFill={idle} onOwn={idle} onSide={idle} onSave={idle} onCopy={idle} onForget={idle} onClose={idle} />
  ),
  keeping: () => (
    <>
      <KeepingPanel standing={{ kind: 'kept' }} current={SPRING} projects={[SPRING, ANCHOR]} putAway={{ ...ANCHOR, name: 'Gull, first try' }} now={NOON}
        onOpen={idle} onRename={idle} onCopy={idle} onRemove={idle} onPutBack={idle} onNew={idle} onSave={idle} onFile={idle} onClose={idle} />
      <KeepingAlarm standing={{ kind: 'elsewhere' }} name="Skerry Light, spring" onHere={idle} onCopy={idle} onSave={idle} />
    </>
  ),
  back: () => <BackPanel check={CHECK} hung={undefined} design={DESIGN} usual={HELLO.back} turned={false} markFault="" onMarkFile={idle} onPosts={idle} onBack={idle} onMetal={idle} onTurn={idle} />,
  sight: () => <SightPanel {...sightProps()} />,
  order: () => order({ quote: OPEN_QUOTE, list: { ...ORDER.list, faults: FAULTS, arrived: { text: '', fileName: '', read: READ } } }),
  papers: () => <><PapersMessage inquiry={INQUIRY} plan={{}} today="2027-03-01" onPlan={idle} onCopy={() => Promise.resolve('')} /><PapersCard answer={CARD} pin={undefined} fault="" making="" onCard={idle} onPicture={idle} onSave={idle} /></>,
  parcel: () => <><ParcelCount {...COUNT} /><ParcelCount {...COUNT} naming /><ParcelLedger {...STOCK} /></>,
  left: () => (
    <LeftPanel plan={PLAN} left={LEFT} faults={[]} problem="" late={false} currency="EUR" currencies={['EUR', 'GBP']} invented={['post', 'packing']} pinGrams={9.7}
      onPlan={idle} onChannel={idle} onAdd={idle} onRemove={idle} />
  ),
  howMany: () => (
    <HowManyPanel demand={DEMAND} problem="" late={false} versions={[{ name: 'First', guess: GUESS, quantity: 100, own: false }]} stake={{ leftover: '0.5' }} follows={{ each: '8.535', second: '4.81' }}
      currency="EUR" onGuess={idle} onStake={idle} onFree={idle} onTake={idle} />
  ),
  presale: () => (
    <PresalePanel presale={PRESALE} problem="" promise={undefined} promiseProblem="" late={false} guess={GUESS} counted currency="EUR" follows="9.95"
      plan={{ days: { closes: '', payout: 14, posting: 3, carriage: 7 }, goals: [{ name: 'Buoy', quantity: 50, alike: false, each: '3', once: '80' }] }} onPlan={idle} onEach={idle} onGuess={idle} />
  ),
  calendar: () => (
    <CalendarPanel set={SCHEDULE} filled={SCHEDULE} calendar={CALENDAR} usual={undefined} today="2027-03-01" width={400} faults={[{ field: 'slack', what: 'The slack is -2; it cannot be below 0.' }]} unpriced="" problem="" late={false}
      onSet={idle} onWay={idle} onSave={idle} />
  ),
  cards: () => <>{CARDS.map((card, i) => <div key={i} class="popover" style={{ position: 'static', width: '300px', maxHeight: 'none' }}>{card()}</div>)}</>,
  sheet: wholePage,
  line: () => {
    s.spot.value = { kind: 'line', x: 0, y: 0, draft: DRAFT };
    return wholePage();
  },
  capital: () => {
    s.spot.value = { kind: 'line', x: 0, y: 0, draft: CAPITAL_DRAFT };
    return wholePage();
  },
};

const ORDER = {
  quote: CHECK.quote, problem: '', late: false, version, invented: 'all' as const, onOwn: idle, choices: CHOICES.rows, choicesLate: false, onQuantity: idle,
  list: { list: LIST, faults: [], arrived: undefined, onList: idle, onText: idle, onFile: idle, onAccept: idle, onAcceptMore: idle, onLeave: idle, onSave: idle },
  terms: { list: LIST, terms: { ...NO_TERMS, seconds: 3, free: 5 }, extras: { reorder: true, dieAge: 8 }, today: '2026-11-20', onTerms: idle, onNoInto: idle, onExtras: idle },
  makers: {
    lists: [LIST, OTHER], used: LIST, quantity: 100, comparison: COMPARISON, problem: '', late: false, rates: [], foreign: [], removed: 'Old maker', today: '2026-11-20',
    onUse: idle, onRename: idle, onAdd: idle, onCopy: idle, onRemove: idle, onPutBack: idle, onRate: idle,
  },
};

const NOON = Date.UTC(2027, 2, 1, 12);
const SPRING: Meta = { id: 'a', name: 'Skerry Light, spring', changed: NOON, revision: 4, uses: [] };
const ANCHOR: Meta = { id: 'b', name: 'Anchor Buoy', changed: NOON - 90_000_000, revision: 9, uses: [] };

const order = (more: Partial<OrderProps>) => <OrderPanel {...ORDER} {...more} />;

function repairAll() {
  return (
    <RepairAll places={4} busy={false} preview={{ answer: MENDED, before: cannedShot('drawing', 480), after: cannedShot('struck', 480) }} raster={CHECK.flats} sized={FOUND}
      onTry={idle} onMake={idle} onLeave={idle} onSeek={idle} onStop={idle} onSize={idle} />
  );
}

/** These show the whole page. */
const WHOLE = ['sheet', 'line', 'capital'];

const areaActs = { onFill: idle, onRole: idle, onSplit: idle, onClose: idle, onLine: idle };
const colours = { ...FILLS, starting: HELLO.starting };

const CARDS: (() => ComponentChildren)[] = [
  ...FLATS.filter((_, i) => i === 0 || i === 5).map((flat) => () => (
    <FlatCard flat={flat} others={FLATS} starting={HELLO.starting} plating={HELLO.platings[0]} pieces={3} onEdit={idle}
      area={<AreaPart flat={flat} under={{ ...UNDER, gap: flat.role === 'metal' ? undefined : GAP }} pieces={3} lineDrawing {...colours} {...areaActs} />} />
  )),
  () => <OfferList answer={OFFERS} pictures={[cannedShot('drawing', 96), cannedShot('struck', 96), cannedShot('back', 96)]} onMake={idle} />,
  () => <OfferList answer={NO_OFFERS} pictures={[]} onMake={idle} />,
  () => <OpenCard gap={{ ...GAP, open: true }} {...colours} enamels={[]} onFill={idle} onLine={idle} />,
];

function wholePage() {
  s.hello.value = HELLO;
  s.start(BLANK);
  s.opened.value = { 'drawing-1': OPENED };
  s.shown.value = { project: BLANK, check: CHECK };
  s.buys.value = { project: BLANK, buys: BUYS };
  s.front.value = { project: BLANK, view: 'struck', shot: cannedShot('struck') };
  s.back.value = { project: BLANK, view: 'back', shot: cannedShot('back') };
  s.brought.value = { project: BLANK, view: 'drawing', shot: cannedShot('drawing') };
  thumbs.value = { 'drawing-1': cannedThumb() };
  choices.value = { project: BLANK, rows: CHOICES.rows };
  return <App />;
}

const wish = new URLSearchParams(location.search);
const root = document.getElementById('page');
if (root) {
  const asked = wish.get('theme');
  theme.value = asked === 'light' || asked === 'dark' ? asked : 'system';
  applyTheme();
  const panel = PANELS[wish.get('panel') ?? ''];
  const whole = WHOLE.includes(wish.get('panel') ?? '');
  const all = Object.entries(PANELS).filter(([name]) => !WHOLE.includes(name));
  render(whole && panel ? panel() : <main class="column alone">{panel ? panel() : all.map(([, show]) => show())}</main>, root);
  if (!whole) for (const d of document.querySelectorAll('details')) d.open = true;
}
