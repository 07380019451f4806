import type { Interval } from '../rope/interval.ts';
import { ropePosition } from '../rope/units.ts';
import type { Survey } from '../rope/survey.ts';
import { breakEvents } from './break-events.ts';
import type { Evidence } from './criterion.ts';
import type { MeasureTaker } from './judged.ts';

export interface OuterWireBreak {
  readonly position: number;
  /** Number of the outer wire around the rope, counted from 1. */
  readonly wireNumber: number;
}

/**
 * Locked coil: two adjacent broken outer wires, or two with a single sound one between them, mean discard where the break points
 * lie less than one lay length of the outer wires apart [published]. Returns the first such pair, or null.
 */
export function adjacentOuterWires(breaks: readonly OuterWireBreak[], layLength: number, outerWires: number): readonly [OuterWireBreak, OuterWireBreak] | null {
  const sorted = [...breaks].sort((a, b) => a.position - b.position);
  for (let i = 0; i < sorted.length; i += 1) {
    for (let j = i + 1; j < sorted.length && sorted[j].position - sorted[i].position < layLength; j += 1) {
      const apart = Math.abs(sorted[i].wireNumber - sorted[j].wireNumber);
      const around = Math.min(apart, outerWires - apart);
      if (around === 1 || around === 2) return [sorted[i], sorted[j]];
    }
  }
  return null;
}

/**
 * Pairs of broken outer wires of a locked coil that are neighbours or have one sound wire between them, within one lay.
 * The wires have to be noted as adjacent or by number; LF cannot tell which wire is broken, so two indications within one lay
 * leave it open and never count as "not reached".
 */
export const adjacentBrokenWires: MeasureTaker = {
  along(_clause, evidence, survey) {
    const found = adjacentPairs(evidence, survey);
    if ('needs' in found) return found;
    return { governing: { ...found, uncertainty: null, exact: true }, along: null };
  },
  over(_clause, evidence, survey, where) {
    const found = adjacentPairs(evidence, survey);
    if ('needs' in found || found.lowerBound) return null;
    return { value: found.where.from <= where.to && found.where.to >= where.from ? found.value : 0, uncertainty: null };
  },
};

interface Pairs { readonly where: Interval<'rope'>; readonly value: number; readonly lowerBound: boolean; readonly note: string }

function adjacentPairs(evidence: Evidence, survey: Survey): Pairs | { needs: string } {
  const noted = survey.notes.find((note) => note.kind === 'broken-wires-adjacent' && (note.value ?? 2) >= 2);
  if (noted) return { where: between(noted.from, noted.to), value: 1, lowerBound: false, note: 'noted as adjacent' };
  const lay = evidence.geometry.layLengthMm;
  if (lay === null) return { needs: 'the lay length of the outer wires or the rope diameter' };
  const numbered = numberedBreaks(survey);
  const pair = adjacentOuterWires(numbered, lay / 1000, evidence.geometry.outerWires ?? Infinity);
  if (pair) return { where: between(pair[0].position, pair[1].position), value: 1, lowerBound: false, note: `outer wires ${pair[0].wireNumber} and ${pair[1].wireNumber}` };
  return openOrClear(evidence, survey, lay / 1000, numbered.length);
}

/** Two broken wires within one lay of which not both are numbered leave the question open. */
function openOrClear(evidence: Evidence, survey: Survey, lay: number, numbered: number): Pairs | { needs: string } {
  const found = breakEvents(evidence, survey);
  if (!found.seenByEye && !found.indicated) return { needs: 'broken outer wires noted as adjacent or by number (remark "wire 7"), or an LF trace' };
  const { events } = found;
  for (const [i, event] of events.entries()) {
    const next = events[i + 1];
    const two = event.count >= 2 ? event : next && next.position - event.position < lay ? next : null;
    if (two === null || (event.wire !== null && two.wire !== null)) continue;
    return { where: between(event.position, two.position), value: 0, lowerBound: true, note: 'two or more broken wires within one lay: whether they are neighbours has to be looked at' };
  }
  const place = events[0]?.position ?? survey.covered[0]?.from;
  if (place === undefined) return { needs: 'a length that was inspected' };
  return { where: between(place, place), value: 0, lowerBound: false, note: numbered >= 2 ? 'no two of the numbered broken wires are neighbours within one lay' : 'no two broken wires are known within one lay' };
}

function numberedBreaks(survey: Survey): { position: number; wireNumber: number }[] {
  return survey.notes.filter((note) => note.kind.startsWith('broken-wires')).flatMap((note) => {
    const wire = /\bwire\s*(?:no\.?|number|#)?\s*(\d+)\b/i.exec(note.remark);
    return wire ? [{ position: (note.from + note.to) / 2, wireNumber: Number(wire[1]) }] : [];
  });
}

const between = (a: number, b: number): Interval<'rope'> => ({ from: ropePosition(Math.min(a, b)), to: ropePosition(Math.max(a, b)) });
