import type { Provenance } from '../../analysis/criteria/criterion.ts';
import type { GrowthState } from '../../analysis/growth/place.ts';

/** What the program calls things on the screen. */
export const STATE_WORDS: Record<GrowthState, string> = {
  new: 'new', growing: 'growing', stable: 'stable', receding: 'receding', 'not-found': 'not found', 'not-inspected': 'NOT INSPECTED',
};

export const SUMMARY_WORDS = {
  continue: 'No criterion reached where the rope was seen',
  'continue-shorter-interval': 'No criterion reached: inspect again sooner',
  refer: 'Refer to the competent person',
  'discard-criterion-reached': 'Discard criterion reached',
} as const;

export const VERDICT_WORDS = { reached: 'reached', 'may-be-reached': 'may be reached', 'not-reached': 'not reached' } as const;

export const PROVENANCE_WORDS: Record<Provenance, { readonly label: string; readonly meaning: string }> = {
  published: { label: 'published', meaning: 'Read in the named standard, regulation or paper.' },
  memory: { label: 'from memory', meaning: 'From memory: check it against the edition in force before anyone relies on it.' },
  'common-practice': { label: 'common practice', meaning: 'Common practice in the trade, without a source.' },
  derived: { label: 'derived', meaning: 'Worked out from a stated formula.' },
  disputed: { label: 'disputed', meaning: 'Sources disagree: confirm against your copy of the rule.' },
  user: { label: 'your own', meaning: 'Set by a user of this program.' },
};

export const COMPARATOR_WORDS = { '>': 'more than', '>=': 'at or above', '<': 'less than', '<=': 'at or below' } as const;
export const COMPARATOR_SIGNS = { '>': '>', '>=': '≥', '<': '<', '<=': '≤' } as const;

/** `broken-wires-in-strand` as a reader would say it. */
export function plain(code: string): string {
  return code.replace(/-/g, ' ');
}
