// When and how to ask what is seen of a pin, so that a drag is answered within
// a frame and nothing is measured twice.
import type { Design, Project } from '../engine/wire.gen';
import { designOf } from './project';

/** In full; as drawn, which is a lookup at every size; or once the pin is measured. */
export type Way = 'in-full' | 'as-drawn' | 'wait';

export interface Moment {
  /** The pin on the sheet is that of the project: it is measured. */
  seen: boolean;
  dragging: boolean;
}

/** What metal is built of and measured by, its size left out. */
const KEYS = ['drawings', 'edits', 'colours', 'recipes', 'parts', 'lettering', 'limits', 'making', 'fill'] as const satisfies readonly (keyof Design)[];

/** Whether two projects are struck of the same metal, at the same size or not. */
function alike(a: Design, b: Design): { struck: boolean; size: boolean } {
  return { struck: KEYS.every((k) => a[k] === b[k]), size: a.size.mm === b.size.mm && a.size.by === b.size.by };
}

/** What was answered last. */
export interface Last {
  project: Project;
  asDrawn: boolean;
}

/** How to ask about a project, when the last answer is about another. */
export function wayToAsk(p: Project, last: Last | undefined, { seen, dragging }: Moment): Way {
  const now = designOf(p);
  const before = last && designOf(last.project);
  if (seen && !dragging) return 'in-full';
  if (!now || !before) return 'wait';
  const same = alike(now, before);
  if (same.struck && same.size && !last.asDrawn) return 'in-full';
  return dragging || same.struck ? 'as-drawn' : 'wait';
}
