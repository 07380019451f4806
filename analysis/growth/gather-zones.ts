import type { Zone } from '../condition/condition.ts';
import type { Interval } from '../rope/interval.ts';
import type { Survey } from '../rope/survey.ts';

export interface GatheredZone {
  /** The length over which every inspection is measured: where the newest inspection that shows the zone sees it. */
  readonly where: Interval<'rope'>;
  readonly members: readonly { readonly survey: number; readonly zone: Zone<'rope'> }[];
}

/**
 * Zones of all inspections joined into places: two belong together where they share at least three tenths of the shorter
 * one, after each is widened by its edge and map uncertainty. Ordered along the rope.
 */
export function gatherZones(surveys: readonly Survey[], bound: (survey: Survey, at: number) => number): GatheredZone[] {
  const all = surveys.flatMap((survey, index) => survey.condition.zones.map((zone) => ({ survey: index, zone, slack: zone.edgeUncertainty + bound(survey, zone.where.from) })));
  all.sort((a, b) => a.zone.where.from - b.zone.where.from);
  const group = all.map((_, i) => i);
  const rootOf = (i: number): number => (group[i] === i ? i : (group[i] = rootOf(group[i])));
  for (let i = 0; i < all.length; i += 1) {
    for (let j = i + 1; j < all.length && all[j].zone.where.from <= all[i].zone.where.to + all[i].slack + all[j].slack; j += 1) {
      if (shareOfShorter(all[i], all[j]) >= 0.3) group[rootOf(j)] = rootOf(i);
    }
  }
  const gathered = new Map<number, { survey: number; zone: Zone<'rope'> }[]>();
  all.forEach((each, i) => {
    const members = gathered.get(rootOf(i)) ?? [];
    members.push({ survey: each.survey, zone: each.zone });
    gathered.set(rootOf(i), members);
  });
  return [...gathered.values()].map((members) => ({ where: newestExtent(members), members: members.sort((a, b) => a.survey - b.survey) }));
}

function shareOfShorter(a: { zone: Zone<'rope'>; slack: number }, b: { zone: Zone<'rope'>; slack: number }): number {
  const slack = (a.slack + b.slack) / 2;
  const common = Math.min(a.zone.where.to, b.zone.where.to) - Math.max(a.zone.where.from, b.zone.where.from) + slack;
  const shorter = Math.min(a.zone.where.to - a.zone.where.from, b.zone.where.to - b.zone.where.from);
  return common / shorter;
}

function newestExtent(members: readonly { survey: number; zone: Zone<'rope'> }[]): Interval<'rope'> {
  const newest = Math.max(...members.map((member) => member.survey));
  const seen = members.filter((member) => member.survey === newest).map((member) => member.zone.where);
  return { from: seen.reduce((a, b) => (b.from < a.from ? b : a)).from, to: seen.reduce((a, b) => (b.to > a.to ? b : a)).to };
}
