import type { RopeGeometry } from '../rope/geometry.ts';
import type { ChosenRuleSet } from './criterion.ts';
import { DUTY_NAMES, readDuty } from './duty.ts';
import { appliesTo } from './resolve-limit.ts';
import type { Duty, RuleSet } from './rule-set.ts';
import { RULE_SETS } from './rule-sets/index.ts';

export interface ChosenSets {
  readonly sets: RuleSet[];
  readonly reasons: ChosenRuleSet[];
}

/**
 * The rule sets for one rope and why. Those that the record (or the competent person) names are taken as they are; without any,
 * the sets that fit duty and make are proposed, to be confirmed. A name that nothing answers to becomes an empty set marked unknown,
 * so that the evaluator says so; where no named set is known, the proposal is used beside it.
 */
export function chooseRuleSets(application: string, geometry: RopeGeometry, stated: readonly string[] | undefined, userSets: readonly RuleSet[]): ChosenSets {
  // A user's set hides a shipped one of the same name.
  const available = [...userSets, ...RULE_SETS.filter((set) => !userSets.some((own) => own.id === set.id))];
  if (stated === undefined || stated.length === 0) return propose(application, geometry, available);
  const named = [...new Set(stated)].map((id) => ({ id, set: available.find((set) => set.id === id) }));
  const known = named.flatMap(({ set }) => (set ? [{ set, why: changedWords(set) + fitWords(set, geometry) }] : []));
  const missing = named.filter(({ set }) => set === undefined).map(({ id }) => unknownSet(id, available));
  const fallback = known.length === 0 ? propose(application, geometry, available) : { sets: [], reasons: [] };
  return {
    sets: [...known.map(({ set }) => set), ...missing, ...fallback.sets],
    reasons: [...known.map(({ set, why }) => reasonOf(set, `named in the record or chosen by the competent person${why}`)), ...missing.map((set) => reasonOf(set, set.scope.text)), ...fallback.reasons],
  };
}

function propose(application: string, geometry: RopeGeometry, available: readonly RuleSet[]): ChosenSets {
  const { duty, word } = readDuty(application);
  const asked = sharpened(duty, application, geometry);
  const sets = available.filter((set) => (asked.instead ?? []).includes(set.id) || (set.scope.proposedFor.includes(duty) && appliesTo(set.scope.ropes, geometry) && !asked.leftOut.includes(set.id)));
  const why = duty === 'unknown' ? `the record does not say what the rope does${application ? ` ("${application}" names no known duty)` : ''}; the ropeway limits are used until the competent person chooses`
    : `proposed for a ${DUTY_NAMES[duty]} ("${word}" in the record)${makeWords(geometry)}; to be confirmed by the competent person`;
  return { sets, reasons: sets.map((set) => reasonOf(set, why + (set.caution ? `. ${set.caution}` : ''))) };
}

interface Sharpened { readonly leftOut: readonly string[]; readonly instead?: readonly string[] }

/** What the application's further words or the make say about which of several sets of one duty is meant. */
function sharpened(duty: Duty, application: string, geometry: RopeGeometry): Sharpened {
  const text = application.toLowerCase();
  if (duty === 'crane') {
    const plain = geometry.rotationResistant ? 'iso-4309-rotation-resistant' : 'iso-4309-single-layer-drum';
    const stem = geometry.rotationResistant ? 'iso-4309-rotation-resistant' : 'iso-4309';
    if (/multi-?\s?layer/.test(text)) return { leftOut: [plain], instead: [geometry.rotationResistant ? `${stem}-multi-layer` : 'iso-4309-multi-layer-drum'] };
    if (/\bm[5-8]\b/.test(text)) return { leftOut: [plain], instead: [geometry.rotationResistant ? `${stem}-m5-m8` : 'iso-4309-class-m5-m8'] };
  }
  if (/surface|quarry|open ?(pit|cast)/.test(text)) {
    if (duty === 'mine-hoist') return { leftOut: ['cfr-30-part-57'], instead: ['cfr-30-part-56'] };
    if (duty === 'coal-mine-hoist') return { leftOut: ['cfr-30-part-75'], instead: ['cfr-30-part-77'] };
  }
  if (duty === 'lift') return { leftOut: [geometry.strands === 8 ? 'lift-6x19-fibre-core' : 'lift-8x19-fibre-core'] };
  return { leftOut: [] };
}

function makeWords(geometry: RopeGeometry): string {
  if (geometry.rotationResistant) return ', rotation-resistant';
  if (geometry.core === 'locked-coil') return ', locked coil';
  return geometry.core === null ? '' : `, stranded with a ${geometry.core} core`;
}

function changedWords(set: RuleSet): string {
  return set.changed ? `; a copy of ${set.changed.from} changed by the user (${set.changed.clauses.join(', ') || 'no clause'}): ${set.changed.note}` : '';
}

function fitWords(set: RuleSet, geometry: RopeGeometry): string {
  return appliesTo(set.scope.ropes, geometry) ? '' : '; it is not written for a rope of this make';
}

function reasonOf(set: RuleSet, reason: string): ChosenRuleSet {
  return { id: set.id, title: set.title, edition: set.edition, reason };
}

function unknownSet(id: string, available: readonly RuleSet[]): RuleSet {
  const text = `no rule set is called "${id}"; correct the name in the record, or add the set. Known: ${available.map((set) => set.id).join(', ')}`;
  return { id, title: `${id} (not known)`, edition: 'none', scope: { text, duties: [], proposedFor: [], ropes: {} }, clauses: [], intervals: [], unknown: true };
}
