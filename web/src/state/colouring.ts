// Pure changes to what a version's colours are ordered as.
import type { ColourEntry, ColourList, Edit, Project, Version, VersionColour } from '../engine/wire.gen';
import { FIRST, versionOf, withEdit, withVersion, type Place } from './project';

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
export function withCodes(p: Project, takes: readonly Take[], painted: boolean, at: Place = FIRST): Project {
  const colours = takes.map(({ flat, entry }): VersionColour => ({
    flat, code: entry.code, ...(entry.name ? { named: entry.name } : {}), ...(painted ? { rgb: entry.rgb } : {}),
  }));
  return replaced(p, takes.map((t) => t.flat), colours, at);
}

/** A flat loses its code, and the colour that came with it. */
export function withoutCode(p: Project, flat: number, at: Place = FIRST): Project {
  return replaced(p, [flat], [], at);
}

/** An edit made by hand; a colour given so wins over that of a code. */
export function withHandEdit(p: Project, edit: Edit, at: Place = FIRST): Project {
  return withEdit(edit.op === 'recolour' ? unpainted(p, edit.flat, at) : p, edit, at);
}

/** A flat is shown in its own colour again; its code stays. */
function unpainted(p: Project, flat: number, at: Place = FIRST): Project {
  const had = colourOf(versionOf(p, at), flat);
  if (!had?.rgb) return p;
  const { rgb: _, ...rest } = had;
  return replaced(p, [flat], rest.code ? [rest] : [], at);
}

export function colourOf(v: Version | undefined, flat: number): VersionColour | undefined {
  return v?.colours.find((c) => c.flat === flat);
}

function replaced(p: Project, flats: readonly number[], by: VersionColour[], at: Place): Project {
  const v = versionOf(p, at);
  if (!v) return p;
  return withVersion(p, { colours: [...v.colours.filter((c) => !flats.includes(c.flat)), ...by] }, at);
}
