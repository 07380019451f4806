import type { Provenance } from '../../analysis/criteria/criterion.ts';
import { PROVENANCE_WORDS } from '../text/words.ts';

/** Where a limit comes from, in a word, with what that means. */
export function ProvenanceBadge({ provenance }: { readonly provenance: Provenance }) {
  const { label, meaning } = PROVENANCE_WORDS[provenance];
  return <span className={`badge badge-${provenance}`} title={meaning}>{label}<span className="hidden-words">. {meaning}</span></span>;
}
