import { describe, expect, it } from 'vitest';
import { NEIGHBOURS } from '../../dev/canned/eye';
import { BLANK } from '../../dev/canned/project';
import { cutAt } from './eyeCut';
import { withIdea } from './eyeIdeas';
import { designOf, versionOf } from './project';

const ideaOf = (has: 'recipe' | 'edit' | 'plating') => {
  const idea = NEIGHBOURS.ideas.find((i) => i[has] !== undefined);
  if (!idea) throw new Error(`no canned idea has ${has}`);
  return idea;
};

describe('an idea that is made', () => {
  it('is a recipe, an edit at the count that is shown, or another plating', () => {
    expect(designOf(withIdea(BLANK, ideaOf('recipe')))?.recipes.at(-1)?.kind).toBe('build-border');
    expect(designOf(withIdea(BLANK, ideaOf('edit')))?.edits.at(-1)).toMatchObject({ op: 'recolour', count: designOf(BLANK)?.colours });
    expect(versionOf(withIdea(BLANK, ideaOf('plating')))?.plating).toBe('black-nickel');
  });

  it('leaves the project as it was', () => {
    const before = JSON.stringify(BLANK);
    for (const idea of NEIGHBOURS.ideas) withIdea(BLANK, idea);
    expect(JSON.stringify(BLANK)).toBe(before);
  });
});

describe('the square round a place', () => {
  const picture = { w: 800, h: 1000, scale: 2, dx: 10, dy: 20 };

  it('has the place in its middle where there is room', () => {
    expect(cutAt(picture, { x: 200, y: 240 })).toEqual({ x: 260, y: 350, side: 300 });
  });

  it('stays inside the picture', () => {
    expect(cutAt(picture, { x: 0, y: 0 })).toEqual({ x: 0, y: 0, side: 300 });
    expect(cutAt(picture, { x: 999, y: 999 })).toEqual({ x: 500, y: 700, side: 300 });
    expect(cutAt({ ...picture, w: 100 }, { x: 5, y: 5 })).toEqual({ x: 0, y: 0, side: 100 });
  });
});
