// Everything that the section of sight is given, for the section seen alone.
import type { SightProps } from '../../src/panels/SightPanel';
import type { Looked } from '../../src/state/eyeLook';
import { CHECK, FLATS, HELLO, TRUE_SIZE } from './answers';
import { EYE_USUAL, GLANCE, NEIGHBOURS, READING } from './eye';
import { cannedShot } from './picture';
import { BLANK, DESIGN } from './project';

const idle = () => undefined;
const refuse = async () => 'The canned engine reads nothing.';
const cloth = EYE_USUAL.cloths[0]?.rgb ?? { r: 0, g: 0, b: 0 };
const names = { flats: FLATS, plating: HELLO.platings[0] };
const { thresholds } = EYE_USUAL;

const looked = (): Looked => ({
  project: BLANK, gaze: { viewing: READING.at.viewing, thresholds, cloth }, shot: cannedShot('struck', 480), size: CHECK.shown.longest, scale: CHECK.scale,
});

export function sightProps(): SightProps {
  return {
    size: { check: CHECK, offered: [], design: DESIGN, bounds: { least: 5, most: 150 }, onSize: idle, onBy: idle },
    glance: GLANCE, glanceLate: false, where: 'on the lapel', mm: 34, sizeSays: '34 mm · 1.34 in', onDrag: idle, onDrop: idle, onOpen: idle,
    trueSize: TRUE_SIZE, perMM: TRUE_SIZE.perMM, onMatched: async () => 'The canned engine takes no check.',
    eye: {
      distances: { usual: EYE_USUAL, viewing: READING.at.viewing, thresholds, reading: READING, late: false, onDistance: idle, onAcuity: refuse, onSize: idle },
      unread: { reading: READING, names, noticed: thresholds.noticed, late: false, asDrawn: false, marks: true, onMarks: idle, onWalk: idle, onSize: idle },
      look: {
        plain: looked(), eye: looked(), late: false, share: 0.4, problem: '', perMM: TRUE_SIZE.perMM, sure: TRUE_SIZE.says, cloth, cloths: EYE_USUAL.cloths,
        onSide: idle, onCloth: idle,
      },
      neighbours: {
        neighbours: NEIGHBOURS, names, thresholds, late: false, onWalk: idle, onTry: idle, onMake: idle,
        trial: NEIGHBOURS.ideas[0] && { project: BLANK, idea: NEIGHBOURS.ideas[0], before: cannedShot('struck', 240), after: undefined, problem: '' },
      },
      platings: { ranked: NEIGHBOURS.platings, platings: HELLO.platings, names, late: false, onPlating: idle },
      thresholds: { thresholds, usual: { ...thresholds, colour: 8 }, onThreshold: refuse, onUsual: idle },
    },
  };
}
