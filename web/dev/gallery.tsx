// Every panel alone with canned answers: gallery.html?panel=metal&theme=dark,
// or ?panel=sheet for the whole page. Without a panel all are shown.
import { render } from 'preact';
import type { ComponentChildren } from 'preact';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../src/style/index.css';
import { BackPanel } from '../src/panels/BackPanel';
import { ColoursPanel } from '../src/panels/ColoursPanel';
import { DrawingPanel } from '../src/panels/DrawingPanel';
import { MetalPanel } from '../src/panels/MetalPanel';
import { OrderPanel } from '../src/panels/OrderPanel';
import { SightPanel } from '../src/panels/SightPanel';
import { choices } from '../src/state/choices';
import * as s from '../src/state/store';
import { thumbs } from '../src/state/thumbs';
import { applyTheme, theme } from '../src/state/theme';
import { App } from '../src/view/App';
import { MakerList } from '../src/widgets/MakerList';
import { BUYS, CHECK, CHOICES, FLATS, HELLO, NEXT, OPENED, TRUE_SIZE } from './canned/answers';
import { MAKER } from './canned/codes';
import { cannedShot, cannedThumb } from './canned/picture';
import { BLANK, DESIGN, LIST } from './canned/project';

const idle = () => undefined;
const version = DESIGN.versions[0] ?? { id: '', name: '', plating: 'gold', colours: [], quantity: 100 };

const PANELS: Record<string, () => ComponentChildren> = {
  drawing: () => <DrawingPanel opened={OPENED} thumb={cannedThumb()} ground="auto" revisions={[{ id: 'd', fileName: 'lighthouse.svg', ground: 'auto' }]} onRevise={idle} onGround={idle} />,
  colours: () => <ColoursPanel flats={FLATS} plating={HELLO.platings[0]} asked={5} most={12} buys={BUYS} fewer={false} next={NEXT} marking={false} maker={<MakerList {...MAKER} />} onCount={idle} onFlat={idle} onMark={idle} onApart={idle} />,
  metal: () => (
    <MetalPanel design={DESIGN} platings={HELLO.platings} plating="gold" check={CHECK} onPlating={idle} onMaking={idle} onFill={idle}
      onLimits={idle} onUsualLimits={idle} onRecipes={idle} onLine={idle} onPoint={idle} onFinding={idle} />
  ),
  back: () => <BackPanel check={CHECK} design={DESIGN} turned={false} onPosts={idle} onTurn={idle} />,
  sight: () => <SightPanel check={CHECK} design={DESIGN} bounds={{ least: 5, most: 150 }} trueSize={TRUE_SIZE} perMM={TRUE_SIZE.perMM} onSize={idle} onBy={idle} onMatched={async () => 'The canned engine takes no check.'} />,
  order: () => <OrderPanel check={CHECK} shownVersion={version} version={version} list={LIST} choices={CHOICES.rows} late={false} onQuantity={idle} onList={idle} />,
  sheet: wholePage,
};

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
  const all = Object.entries(PANELS).filter(([name]) => name !== 'sheet');
  render(wish.get('panel') === 'sheet' ? wholePage() : <main class="column alone">{panel ? panel() : all.map(([, show]) => show())}</main>, root);
  if (wish.get('panel') !== 'sheet') for (const d of document.querySelectorAll('details')) d.open = true;
}
