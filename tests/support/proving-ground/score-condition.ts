import type { Assessment } from '../../../analysis/assessment/schema.ts';
import { meanShare } from './damage.ts';
import type { TrueZone } from './damage.ts';
import type { Tally } from './figures.ts';
import type { RopeWorld } from './rope-world.ts';
import type { Trial } from './run-world.ts';
import { apart, mapped } from './score-alignment.ts';

type Inspection = Assessment['inspections'][number];
type Zone = Inspection['zones'][number];

/** Faults of one inspection against truth, in the file's own position carried through the program's own map: errors of the map do not count here. */
export function scoreFaults({ world, recorded, assessment }: Trial, tally: Tally): void {
  world.visits.forEach((visit, index) => {
    const inspection = assessment.inspections.find((each) => each.id === visit.id);
    if (!inspection?.alignment) return;
    const loop = world.loop ? world.length : null;
    const places = recorded[index].shown.map((each) => ({ ...each, rope: mapped(inspection.alignment!, each.reading), width: world.faults[each.fault].width }));
    const free = new Set(inspection.faults);
    for (const place of places) {
      // Neighbours that their pulses merge with are clusters, counted on their own.
      const crowded = places.some((other) => other !== place && apart(other.rope, place.rope, loop) < 3 * place.width);
      const found = [...inspection.faults].map((fault) => ({ fault, error: apart(fault.position_m, place.rope, loop) })).sort((a, b) => a.error - b.error)[0];
      const near = found !== undefined && found.error < Math.max(0.05, 1.5 * place.width);
      for (const fault of inspection.faults) if (apart(fault.position_m, place.rope, loop) < Math.max(0.08, 3 * place.width)) free.delete(fault);
      const band = place.snr >= 6 ? 'snr 6 up' : place.snr >= 4 ? 'snr 4-6' : null;
      if (band === null) continue;
      tally.hit(`faults ${crowded ? 'crowded ' : ''}${band}`, near);
      if (!near && !crowded) tally.blame(`fault missed ${band}`, world.seed, `${visit.id} at ${place.reading.toFixed(3)} snr ${place.snr.toFixed(1)} ${world.instrument.pulse} width ${(1000 * place.width).toFixed(0)} mm step ${visit.step} ${inZone(world.zones, place.rope)}`);
      if (near && !crowded) tally.add('fault position error', found.error);
    }
    tally.add('false calls', free.size);
    tally.add('metres', visit.travel.lastReading - visit.travel.firstReading);
    if (free.size > 0.01 * (visit.travel.lastReading - visit.travel.firstReading)) tally.blame('false calls', world.seed, `${visit.id} ${free.size}: ${[...free].slice(0, 4).map((each) => `${each.position_m.toFixed(2)} snr ${each.snr.toFixed(1)} ${inZone(world.zones, each.position_m)}`).join('; ')} noise ${world.instrument.faultNoiseKind} strand ${world.instrument.strandShape} ${world.instrument.strandShare.toFixed(2)}`);
  });
}

const inZone = (zones: readonly TrueZone[], at: number): string => {
  const zone = zones.find((each) => at > each.from - 1 && at < each.to + 1);
  return zone ? `(in ${zone.kind})` : '';
};

/** Zones of one inspection against truth: foot to foot, and at half depth beside it. */
export function scoreZones({ world, assessment, recorded }: Trial, tally: Tally): void {
  world.visits.forEach((visit, index) => {
    const inspection = assessment.inspections.find((each) => each.id === visit.id);
    if (!inspection?.alignment) return;
    const free = new Set(inspection.zones);
    for (const truth of world.zones) {
      const depth = truth.law.depth(visit.years);
      // What is missing there is the zone's loss and what the rope's own unevenness adds to it over that length.
      const mean = depth * meanShare(truth) + characterOver(world, truth.from, truth.to);
      for (const zone of inspection.zones) if (zone.from_m < truth.to + 2 && zone.to_m > truth.from - 2) free.delete(zone);
      if (mean < 0.8 || hidden(truth, visit.dropouts, recorded[index].readings, visit.travel.ropeAt) || !seen(truth, inspection)) continue;
      const best = [...inspection.zones].map((zone) => ({ zone, overlap: overlapOf(zone, truth.from, truth.to) })).sort((a, b) => b.overlap - a.overlap)[0];
      const found = best !== undefined && best.overlap > 0.25;
      tally.hit('zones found', found);
      if (!found) {
        tally.blame('zone missed', world.seed, `${visit.id} ${truth.from.toFixed(1)}-${truth.to.toFixed(1)} depth ${depth.toFixed(2)} ${truth.kind}; reported ${inspection.zones.filter((z) => z.from_m < truth.to && z.to_m > truth.from).map((z) => `${z.from_m.toFixed(1)}-${z.to_m.toFixed(1)}`).join(' ') || 'nothing'}`);
        continue;
      }
      const trim = truth.edge === 'asymmetric' ? [0.5, 1] : [0.5, 0.5];
      tally.add('zone overlap', best.overlap);
      tally.add('zone overlap half', overlapOf(best.zone, truth.from + trim[0] * truth.edgeLength, truth.to - trim[1] * truth.edgeLength));
      const error = best.zone.mean_loss_percent - visit.gain * mean;
      tally.add('zone mean error', Math.abs(error));
      tally.hit('zone mean within', Math.abs(error) <= 0.15);
      tally.hit('zone kind', best.zone.kind === truth.kind);
      if (Math.abs(error) > 0.15) tally.blame('zone mean off', world.seed, `${visit.id} ${truth.from.toFixed(1)}-${truth.to.toFixed(1)} as ${best.zone.from_m.toFixed(1)}-${best.zone.to_m.toFixed(1)} true ${mean.toFixed(2)} said ${best.zone.mean_loss_percent.toFixed(2)} drift ${visit.drift.toFixed(2)} gain ${visit.gain.toFixed(2)}`);
      if (best.overlap < 0.8) tally.blame('zone overlap low', world.seed, `${visit.id} ${truth.from.toFixed(1)}-${truth.to.toFixed(1)} as ${best.zone.from_m.toFixed(1)}-${best.zone.to_m.toFixed(1)} depth ${depth.toFixed(2)} edge ${truth.edge} ${truth.edgeLength.toFixed(1)}`);
      if (best.zone.kind !== truth.kind) tally.blame('zone kind wrong', world.seed, `${visit.id} ${truth.kind} said ${best.zone.kind}, texture ${truth.textureRatio.toFixed(1)} said ${best.zone.texture_ratio.toFixed(2)}, depth ${depth.toFixed(2)}`);
    }
    scoreFalseZones(free, tally, world.seed, visit.id, world.zones.length === 0, visit.travel.lastReading - visit.travel.firstReading);
  });
}

function scoreFalseZones(free: ReadonlySet<Zone>, tally: Tally, seed: number, visit: string, sound: boolean, metres: number): void {
  tally.hit(sound ? 'no zone on sound rope' : 'no zone beside the true ones', free.size === 0);
  tally.add('zone metres', metres);
  tally.add('false zones', free.size);
  if (free.size > 0) tally.blame(sound ? 'zone on sound rope' : 'zone beside the true ones', seed, `${visit} ${[...free].slice(0, 3).map((z) => `${z.from_m.toFixed(1)}-${z.to_m.toFixed(1)} ${z.kind} ${z.mean_loss_percent.toFixed(2)}`).join('; ')}`);
}

function characterOver(world: RopeWorld, from: number, to: number): number {
  let sum = 0;
  let count = 0;
  for (let x = from; x < to; x += 0.05) {
    sum += world.lossCharacter.at(x);
    count += 1;
  }
  return (world.lossCharacterSize * sum) / Math.max(1, count);
}

function overlapOf(zone: { from_m: number; to_m: number }, from: number, to: number): number {
  const shared = Math.min(zone.to_m, to) - Math.max(zone.from_m, from);
  return Math.max(0, shared) / (Math.max(zone.to_m, to) - Math.min(zone.from_m, from));
}

function hidden(zone: TrueZone, dropouts: readonly { from: number; to: number }[], readings: Float64Array, ropeAt: (reading: number) => number): boolean {
  const ends = [ropeAt(readings[0]), ropeAt(readings[readings.length - 1])];
  if (dropouts.some((gap) => Math.min(ropeAt(gap.from), ropeAt(gap.to)) < zone.to && Math.max(ropeAt(gap.from), ropeAt(gap.to)) > zone.from)) return true;
  return ends[0] < ends[1] ? zone.from < ends[0] || zone.to > ends[1] : zone.from < ends[1] || zone.to > ends[0];
}

const seen = (zone: TrueZone, inspection: Inspection): boolean => inspection.coverage.some((each) => each.from_m < zone.to && each.to_m > zone.from);
