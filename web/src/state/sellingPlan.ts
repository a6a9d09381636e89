// What the person states of selling, and pure changes to it. What was never
// changed is not kept: it is as the engine proposes it, fitted to the order.
import type { Channel, ChannelKind, Guess, OrderUsual, OwnStake, PresaleGoal, PresalePlan, Project, Selling, SellingPlan } from '../engine/wire.gen';
import { designOf, type Place } from './project';

export const sellingOf = (p: Project): SellingPlan => p.plans?.selling ?? {};

export function withSelling(p: Project, change: (s: SellingPlan) => SellingPlan): Project {
  return { ...p, plans: { ...p.plans, selling: change(sellingOf(p)) } };
}

/** Where the order says something of it already, the proposal follows. */
export function proposed(p: Project, usual: Selling, at: Place): Selling {
  const seconds = p.order.terms?.seconds ?? 0;
  const card = designOf(p, at)?.extras?.card ?? false;
  return {
    ...usual,
    grams: 0,
    secondsShare: seconds > 0 ? String(seconds) : usual.secondsShare,
    packing: card ? { ...usual.packing, card: '0' } : usual.packing,
  };
}

export const leftPlan = (p: Project, usual: Selling, at: Place): Selling => sellingOf(p).left ?? proposed(p, usual, at);

export function withLeft(p: Project, usual: Selling, at: Place, change: (plan: Selling) => Selling): Project {
  return withSelling(p, (s) => ({ ...s, left: change(leftPlan(p, usual, at)) }));
}

export const withChannel = (plan: Selling, at: number, change: Partial<Channel>): Selling =>
  ({ ...plan, channels: plan.channels.map((c, i) => (i === at ? { ...c, ...change } : c)) });

/** A channel more, with what is usual for its kind but no share of the pieces. */
export function withMore(plan: Selling, usual: Selling, kind: ChannelKind): Selling {
  const like = usual.channels.find((c) => c.kind === kind) ?? usual.channels[0];
  if (!like) return plan;
  const taken = new Set(plan.channels.map((c) => c.name));
  let name = like.name;
  for (let n = 2; taken.has(name); n++) name = `${like.name} ${n}`;
  return { ...plan, channels: [...plan.channels, { ...like, kind, name, share: '0' }] };
}

/** Without a channel; pieces with a flaw that went by it are kept. */
export function withoutChannel(plan: Selling, at: number): Selling {
  const by = plan.secondsBy;
  const secondsBy = by === at ? -1 : by > at ? by - 1 : by;
  return { ...plan, secondsBy, channels: plan.channels.filter((_, i) => i !== at) };
}

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

/** Which of the figures are still those invented to start with. */
export function stillInvented(plan: Selling, usual: Selling): string[] {
  const fees = (c: Channel) => [c.cut, c.feePercent, c.feeFixed, c.once, c.postPaid];
  const used = plan.channels.filter((c) => Number(c.share) > 0 && fees(c).some((v) => Number(v) > 0));
  const stale = used.filter((c) => usual.channels.some((u) => u.kind === c.kind && same(fees(u), fees(c))));
  const posted = plan.channels.some((c) => c.posted && Number(c.share) > 0);
  return [
    ...(plan.price === usual.price ? ['the price'] : []),
    ...(stale.length > 0 ? [`fees and costs of ${stale.map((c) => c.name).join(', ')}`] : []),
    ...(posted && same(plan.classes, usual.classes) ? ['post'] : []),
    ...(same(plan.packing, usual.packing) ? ['packing'] : []),
    ...(plan.secondsShare === usual.secondsShare && plan.secondsOff === usual.secondsOff ? ['seconds'] : []),
  ];
}

/** What is thought of one version's demand. */
export function guessOf(p: Project, at: Place, usual: Guess): Guess {
  const d = designOf(p, at);
  const v = d?.versions[at.version];
  return sellingOf(p).guesses?.find((g) => g.design === d?.id && g.version === v?.id)?.guess ?? usual;
}

export const guessed = (p: Project, at: Place): boolean => {
  const d = designOf(p, at);
  return sellingOf(p).guesses?.some((g) => g.design === d?.id && g.version === d.versions[at.version]?.id) ?? false;
};

export function withGuess(p: Project, at: Place, usual: Guess, change: Partial<Guess>): Project {
  const d = designOf(p, at);
  const v = d?.versions[at.version];
  if (!d || !v) return p;
  const guess = { ...guessOf(p, at, usual), ...change };
  return withSelling(p, (s) => ({
    ...s,
    guesses: [...(s.guesses ?? []).filter((g) => g.design !== d.id || g.version !== v.id), { design: d.id, version: v.id, guess }],
  }));
}

/** An own figure, or none: then it follows from what is left. */
export function withStake(p: Project, key: 'each' | 'second' | 'leftover' | 'missed', value: string | undefined): Project {
  return withSelling(p, ({ stake, ...rest }) => {
    const { [key]: _, ...others } = stake ?? {};
    return { ...rest, stake: value === undefined ? others : { ...others, [key]: value } };
  });
}

export const withFree = (p: Project, free: number): Project => withSelling(p, (s) => ({ ...s, stake: { ...s.stake, free } }));

export const presaleOf = (p: Project, usual: OrderUsual): PresalePlan => sellingOf(p).presale ?? { days: usual.presale, goals: [] };

export function withPresale(p: Project, usual: OrderUsual, change: (plan: PresalePlan) => PresalePlan): Project {
  return withSelling(p, (s) => ({ ...s, presale: change(presaleOf(p, usual)) }));
}

export const withGoal = (plan: PresalePlan, at: number, change: Partial<PresaleGoal>): PresalePlan =>
  ({ ...plan, goals: plan.goals.map((g, i) => (i === at ? { ...g, ...change } : g)) });

export const withoutGoal = (plan: PresalePlan, at: number): PresalePlan => ({ ...plan, goals: plan.goals.filter((_, i) => i !== at) });

export function withPresaleEach(plan: PresalePlan, each: string | undefined): PresalePlan {
  const { each: _, ...rest } = plan;
  return each === undefined ? rest : { ...rest, each };
}

/** Sets what each version of the design is ordered in. */
export function withQuantities(p: Project, design: number, each: readonly number[]): Project {
  const designs = p.order.designs.map((d, i) =>
    i === design ? { ...d, versions: d.versions.map((v, j) => ({ ...v, quantity: each[j] ?? v.quantity })) } : d);
  return { ...p, order: { ...p.order, designs } };
}

export const stakeOf = (p: Project): OwnStake => sellingOf(p).stake ?? {};
