// Where the pin stands on the sheet.
import type { Picture } from '../engine/wire.gen';
import { fitIn, mapping, type Box, type Mapping } from './place';
import type { Room } from './useRoom';

export interface Layout {
  /** The room that the pin has. */
  home: Box;
  /** Its picture, and where the working raster lies with it, once there is one. */
  box: Box;
  map: Mapping | undefined;
}

/** Below this width the callouts stand in a list under the sheet. */
export const NARROW = 620;

/** What callouts take on each side of a wide sheet, px. */
export const MARGIN = 158;

/** The room left for the pin once callouts and dimension lines have theirs; a
 * narrow sheet has its twin folded away and its callouts below. */
function pinRoom(room: Room): Box {
  const wide = room.w >= NARROW;
  const l = wide ? MARGIN + 58 : 52;
  const r = wide ? MARGIN + 30 : 18;
  return { x: l, y: 26, w: Math.max(60, room.w - l - r), h: Math.max(60, room.h - 26 - 74) };
}

function scaled(b: Box, k: number): Box {
  return { x: b.x + (b.w * (1 - k)) / 2, y: b.y + (b.h * (1 - k)) / 2, w: b.w * k, h: b.h * k };
}

export function layOut(room: Room, picture: Picture | undefined, dragFactor: number): Layout {
  const home = pinRoom(room);
  if (!picture) return { home, box: home, map: undefined };
  const box = scaled(fitIn(home, picture.w, picture.h), dragFactor);
  return { home, box, map: mapping(picture, box) };
}
