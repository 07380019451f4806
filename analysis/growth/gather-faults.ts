import type { Fault } from '../condition/condition.ts';
import type { Interval } from '../rope/interval.ts';
import type { Survey } from '../rope/survey.ts';
import { median } from '../signal/median.ts';
import { ropePosition } from '../rope/units.ts';

export interface GatheredFault {
  readonly where: Interval<'rope'>;
  readonly members: readonly { readonly survey: number; readonly fault: Fault<'rope'> }[];
}

/**
 * Local faults of all inspections joined into places: neighbours along the rope closer than `link`, or than what the
 * positions of the two scans allow, are one place. Ordered along the rope. Positions of a fault carry both the file's
 * own uncertainty and the map's.
 */
export function gatherFaults(surveys: readonly Survey[], link: number): GatheredFault[] {
  const all = surveys.flatMap((survey, index) => survey.condition.faults.map((fault) => ({ survey: index, fault })));
  if (all.length === 0) return [];
  all.sort((a, b) => a.fault.position - b.fault.position);
  const typical = median(Float64Array.from(all.map((each) => each.fault.positionUncertainty)));
  const gathered: (typeof all)[] = [];
  for (const each of all) {
    const current = gathered[gathered.length - 1];
    const previous = current?.[current.length - 1];
    if (previous && each.fault.position - previous.fault.position <= reachOf(previous, each, link, typical)) current.push(each);
    else gathered.push([each]);
  }
  return gathered.map((members) => ({ where: extentOf(members.map((each) => each.fault)), members: members.sort((a, b) => a.survey - b.survey) }));
}

function reachOf(a: { survey: number; fault: Fault<'rope'> }, b: { survey: number; fault: Fault<'rope'> }, link: number, typical: number): number {
  if (a.survey === b.survey) return link;
  // A scan with a very wide map must not gather half the rope into one place: ten times the typical bound at the most.
  const limit = Math.max(link, 10 * typical);
  return Math.max(link, Math.min(limit, Math.hypot(a.fault.positionUncertainty, b.fault.positionUncertainty)));
}

function extentOf(faults: readonly Fault<'rope'>[]): Interval<'rope'> {
  const from = Math.min(...faults.map((fault) => fault.position - fault.width / 2));
  const to = Math.max(...faults.map((fault) => fault.position + fault.width / 2));
  return { from: ropePosition(from), to: ropePosition(Math.max(to, from + 0.001)) };
}
