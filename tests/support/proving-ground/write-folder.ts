import type { RopeFolder } from '../../../analysis/assessment/read-folder.ts';
import { chanceFrom, happens } from './chance.ts';
import type { Chance } from './chance.ts';
import { recordScan } from './record-scan.ts';
import type { Recorded } from './record-scan.ts';
import type { RopeWorld } from './rope-world.ts';

/** How this rope's instrument writes. One for all visits, as one office would have it. */
interface Hand {
  readonly delimiter: string;
  readonly decimalMark: '.' | ',';
  readonly names: { readonly position: string; readonly loss: string; readonly fault: string };
  readonly positionFactor: number;
  readonly positionUnit: 'm' | 'ft' | 'mm';
  readonly lossSign: 1 | -1;
  readonly stateColumns: boolean;
  readonly wide: boolean;
  readonly preamble: number;
}

function drawHand(chance: Chance): Hand {
  const [positionUnit, positionFactor] = chance.pick([['m', 1], ['m', 1], ['m', 1], ['ft', 1 / 0.3048], ['mm', 1000]] as const);
  const comma = happens(chance, 0.25);
  const lossSign = chance.pick([1, -1] as const);
  const [position, loss, fault] = chance.pick([[`Position [${positionUnit}]`, 'LMA [%]', 'LF [mV]'], [`Dist (${positionUnit})`, 'LMA (%)', 'LF (V)'], [`pos_${positionUnit}`, 'lma_percent', 'lf'], [`Encoder ${positionUnit}`, 'LMA %', 'LF signal']] as const);
  return {
    delimiter: comma ? ';' : chance.pick([',', ';', '\t']), decimalMark: comma ? ',' : '.', names: { position, loss, fault }, positionFactor, positionUnit, lossSign,
    stateColumns: happens(chance, 0.6), wide: happens(chance, 0.1), preamble: Math.floor(chance.uniform() * 4),
  };
}

/** The world's folder in memory, as interfaces ask, and beside it (never inside) what each file truly holds. */
export function writeFolder(world: RopeWorld): { folder: RopeFolder; recorded: Recorded[] } {
  const chance = chanceFrom(world.seed, 50);
  const hand = drawHand(chance);
  const recorded = world.visits.map((visit) => recordScan(world, visit));
  const files = new Map<string, Uint8Array>();
  recorded.forEach((scan, index) => files.set(`scan-${index + 1}.csv`, bytesOf(scan, hand)));
  files.set('record.json', new TextEncoder().encode(JSON.stringify(recordOf(world, hand, chance))));
  return {
    recorded,
    folder: { name: `proving-${world.seed}`, files: [...files].map(([name, bytes]) => ({ name, size: bytes.length })), read: async (name) => files.get(name)! },
  };
}

function bytesOf(scan: Recorded, hand: Hand): Uint8Array {
  const write = (value: number, decimals: number): string => (hand.decimalMark === '.' ? value.toFixed(decimals) : value.toFixed(decimals).replace('.', ','));
  let power = 0;
  for (const value of scan.fault) power += value * value;
  const faultDecimals = Math.max(0, 2 - Math.floor(Math.log10(Math.sqrt(power / scan.fault.length))));
  const lines = Array.from({ length: hand.preamble }, (_, i) => `SYNTHETIC line ${i + 1}`);
  lines.push([hand.names.position, hand.names.loss, hand.names.fault].join(hand.delimiter));
  const decimals = hand.positionUnit === 'mm' ? 1 : 4;
  for (let i = 0; i < scan.readings.length; i += 1) {
    const position = write(scan.readings[i] * hand.positionFactor, decimals);
    lines.push(scan.silent[i] ? `${position}${hand.delimiter}${hand.delimiter}` : [position, write(hand.lossSign * scan.loss[i], 3), write(scan.fault[i], faultDecimals)].join(hand.delimiter));
  }
  const text = lines.join('\n');
  if (!hand.wide) return new TextEncoder().encode(text);
  return Uint8Array.from(Buffer.from(`\ufeff${text}`, 'utf16le'));
}

function recordOf(world: RopeWorld, hand: Hand, chance: Chance) {
  const { instrument } = world;
  const diameter = chance.pick([22, 28, 32, 36]);
  const columns = hand.stateColumns
    ? { position: { name: hand.names.position, unit: hand.positionUnit }, lma: { name: hand.names.loss, unit: '%', loss_is: hand.lossSign === 1 ? 'positive' : 'negative' }, lf: { name: hand.names.fault } }
    : undefined;
  return {
    schema: 1, synthetic: true,
    rope: {
      id: `proving-${world.seed}`, name: 'SYNTHETIC rope', application: 'haul rope of a funicular', construction: '6x19S-FC', core: 'fibre', lay: 'lang', diameter_mm: diameter, strands: 6,
      ...(instrument.strandSpacing === null ? {} : { lay_length_mm: Math.round(instrument.strandSpacing * 6000 * chance.between(0.985, 1.015)) }),
      length_m: Math.round(100 * world.length) / 100, installed: '2018-01-10', ...(world.loop ? { loop: true } : {}),
    },
    events: world.visits.flatMap(({ cut, date }) => (cut?.recorded ? [{ date: dayBefore(date), kind: 'shortened', end: cut.end, length_m: Math.round(100 * cut.length) / 100 }] : [])),
    inspections: world.visits.map((visit, index) => ({
      id: visit.id, date: visit.date, trips: 500 + Math.round(visit.years * 20_000),
      runs: [{ file: `scan-${index + 1}.csv`, ...(columns ? { columns } : {}), ...(visit.statedDirection || index === 0 ? { direction: visit.travel.reversed ? 'reverse' : 'forward' } : {}) }],
    })),
  };
}

const dayBefore = (date: string): string => new Date(Date.parse(date) - 20 * 86_400_000).toISOString().slice(0, 10);
