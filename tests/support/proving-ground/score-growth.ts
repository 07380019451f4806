import type { TrueZone } from './damage.ts';
import type { Tally } from './figures.ts';
import type { Trial } from './run-world.ts';
import { apart } from './score-alignment.ts';

/** Growth states at the newest inspection against truth. Only places that truth is sure of count; doubtful ones are left out. */
export function scoreGrowth({ world, recorded, assessment }: Trial, tally: Tally, name: string): void {
  const loop = world.loop ? world.length : null;
  const newest = world.visits.length - 1;
  const known = new Set<string>();
  for (const zone of world.zones) {
    const entries = assessment.growth.filter((each) => each.subject === 'zone' && each.from_m < zone.to && each.to_m > zone.from);
    entries.forEach((each) => known.add(each.id));
    const wanted = zoneStates(zone, world.visits.map((visit) => visit.years));
    if (wanted === null) continue;
    const entry = entries.sort((a, b) => shared(b, zone) - shared(a, zone))[0];
    judge(tally, name, 'zone', world.seed, wanted, entry?.state, `${zone.from.toFixed(1)}-${zone.to.toFixed(1)} ${world.visits.map((visit) => zone.law.depth(visit.years).toFixed(2)).join(' ')} gains ${world.visits.map((visit) => visit.gain.toFixed(2)).join(' ')}; ${entry?.reason ?? ''}`);
  }
  world.faults.forEach((fault, number) => {
    const entries = assessment.growth.filter((each) => each.subject === 'fault' && (apart(each.from_m, fault.position, loop) < 0.25 || apart(each.to_m, fault.position, loop) < 0.25 || (each.from_m < fault.position && each.to_m > fault.position)));
    entries.forEach((each) => known.add(each.id));
    const crowded = world.faults.some((other, i) => i !== number && apart(other.position, fault.position, loop) < 0.6);
    const clear = recorded.every((scan, i) => fault.born > world.visits[i].years || scan.shown.some((each) => each.fault === number && each.snr >= 6));
    if (crowded || !clear || fault.born > world.visits[newest].years) return;
    const wanted = fault.born > world.visits[newest - 1].years ? ['new'] : ['stable'];
    const entry = entries.sort((a, b) => apart((a.from_m + a.to_m) / 2, fault.position, loop) - apart((b.from_m + b.to_m) / 2, fault.position, loop))[0];
    judge(tally, name, 'fault', world.seed, wanted, entry?.state, `${fault.position.toFixed(2)} snr ${fault.snr.toFixed(1)} born ${fault.born.toFixed(1)}; ${entry?.reason ?? ''}`);
  });
  const invented = assessment.growth.filter((each) => !known.has(each.id) && (each.state === 'new' || each.state === 'growing'));
  const sound = world.zones.length + world.faults.length === 0;
  tally.hit(`${name} nothing invented`, invented.length === 0);
  if (invented.length > 0) tally.blame(`${name} invented${sound ? ' on sound rope' : ''}`, world.seed, invented.slice(0, 3).map((each) => `${each.subject} ${each.from_m.toFixed(1)}-${each.to_m.toFixed(1)} ${each.state}: ${each.reason}`).join(' | '));
}

function judge(tally: Tally, name: string, subject: string, seed: number, wanted: readonly string[], said: string | undefined, detail: string): void {
  const right = said !== undefined && wanted.includes(said);
  tally.hit(`${name} state ${subject}`, right);
  tally.hit(`${name} state`, right);
  if (!right) tally.blame(`${name} ${subject} ${wanted.join('/')} called ${said ?? 'nothing'}`, seed, detail);
}

/** States that a fair judge would accept, or null where truth lies between two. A zone needs 0.8 % at the newest inspection. */
function zoneStates(zone: TrueZone, years: readonly number[]): string[] | null {
  const depths = years.map((each) => zone.law.depth(each));
  const last = depths[depths.length - 1];
  const earlier = depths.slice(0, -1);
  if (last < 0.8 || zone.to - zone.from < 5) return null;
  if (zone.law.fate === 'new') return ['new'];
  if (zone.law.fate === 'stable') return ['stable'];
  const gain = last - depths[0];
  if (gain < 0.5) return null;
  return Math.max(...earlier) < 0.8 ? ['growing', 'new'] : ['growing'];
}

const shared = (entry: { from_m: number; to_m: number }, zone: TrueZone): number => Math.min(entry.to_m, zone.to) - Math.max(entry.from_m, zone.from);
