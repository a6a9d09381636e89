// Pure changes to what a version's colours are ordered as.
import type { ColourEntry, ColourList, Edit, Finish, Project, Version, VersionColour } from '../engine/wire.gen';
import { designOf, pickedOf, versionOf, withEdit, withVersion, type Place } from './project';

/** Puts a maker's list into the order, or takes it out; codes that were taken stay. */
export function withColourList(p: Project, list: ColourList | undefined): Project {
  const { colourList: _, ...order } = p.order;
  return { ...p, order: list ? { ...order, colourList: list } : order };
}

/** One flat and the entry it takes. */
export interface Take {
  flat: number;
  entry: ColourEntry;
}

/** Flats take codes; painted, they take the colours of the entries as well, else they keep their own. */
export function withCodes(p: Project, takes: readonly Take[], painted: boolean, at: Place = pickedOf(p)): Project {
  const colours = takes.map(({ flat, entry }): VersionColour => ({
    ...finishOnly(p, flat, at), code: entry.code, ...(entry.name ? { named: entry.name } : {}), ...(painted ? { rgb: entry.rgb } : {}),
  }));
  return replaced(p, takes.map((t) => t.flat), colours, at);
}

/** A flat loses its code, and the colour that came with it. */
export function withoutCode(p: Project, flat: number, at: Place = pickedOf(p)): Project {
  return replaced(p, [flat], [finishOnly(p, flat, at)], at);
}

/** A flat gets a finish; '' is the plain one. */
export function withFinish(p: Project, flat: number, finish: Finish, at: Place = pickedOf(p)): Project {
  const { finish: _, ...had } = colourOf(versionOf(p, at), flat) ?? { flat };
  return replaced(p, [flat], [finish === '' ? had : { ...had, finish }], at);
}

function finishOnly(p: Project, flat: number, at: Place): VersionColour {
  const finish = colourOf(versionOf(p, at), flat)?.finish;
  return finish ? { flat, finish } : { flat };
}

/** An edit made by hand; a colour given so wins over that of a code. Where a
 * design has several versions, it is the colour of the one at hand alone. */
export function withHandEdit(p: Project, edit: Edit, at: Place = pickedOf(p)): Project {
  if (edit.op === 'recolour' && edit.rgb && (designOf(p, at)?.versions.length ?? 0) > 1) {
    return replaced(p, [edit.flat], [{ ...(colourOf(versionOf(p, at), edit.flat) ?? { flat: edit.flat }), rgb: edit.rgb }], at);
  }
  return withEdit(edit.op === 'recolour' ? unpainted(p, edit.flat, at) : p, edit, at);
}

/** A flat is shown in its own colour again; its code stays. */
function unpainted(p: Project, flat: number, at: Place = pickedOf(p)): Project {
  const had = colourOf(versionOf(p, at), flat);
  if (!had?.rgb) return p;
  const { rgb: _, ...rest } = had;
  return replaced(p, [flat], [rest], at);
}

export function colourOf(v: Version | undefined, flat: number): VersionColour | undefined {
  return v?.colours.find((c) => c.flat === flat);
}

/** Puts new entries in the place of old ones; one that says nothing is left out. */
function replaced(p: Project, flats: readonly number[], by: VersionColour[], at: Place): Project {
  const v = versionOf(p, at);
  if (!v) return p;
  const telling = by.filter((c) => c.rgb !== undefined || c.code !== undefined || c.finish !== undefined);
  return withVersion(p, { colours: [...v.colours.filter((c) => !flats.includes(c.flat)), ...telling] }, at);
}
