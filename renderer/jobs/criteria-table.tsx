import { useMemo } from 'react';
import type { CriterionResult } from '../../analysis/criteria/criterion.ts';
import { showCriterion } from '../state/show.ts';
import { useApp } from '../state/store.ts';
import { figure, fixed, sentence, share, stretch } from '../text/format.ts';
import { COMPARATOR_SIGNS, COMPARATOR_WORDS, VERDICT_WORDS, plain } from '../text/words.ts';
import { ProvenanceBadge } from '../ui/provenance-badge.tsx';
import { useView } from './use-inspections.ts';

export const keyOf = (result: { readonly ruleSet: string; readonly clause: string }): string => `${result.ruleSet} / ${result.clause}`;
const ORDER = { reached: 0, 'may-be-reached': 1, 'not-reached': 2 } as const;

/** Clauses judged, the nearest to its limit first. */
export function orderedResults(results: readonly CriterionResult[]): CriterionResult[] {
  return [...results].sort((a, b) => ORDER[a.verdict] - ORDER[b.verdict] || b.utilisation - a.utilisation);
}

/** Every clause at its worst place: choosing one moves the strips there. `full` shows windows, sources of limits and notes as well. */
export function CriteriaTable({ full = false }: { readonly full?: boolean }) {
  const { criteria } = useView();
  const chosen = useApp((state) => state.clause);
  const results = useMemo(() => orderedResults(criteria.results), [criteria]);
  if (results.length === 0) return <p className="empty">No criterion could be evaluated. What each one needs is listed under Criteria.</p>;
  return (
    <table className={full ? 'criteria criteria-full' : 'criteria'}>
      <caption className="hidden-words">Discard criteria at their worst places</caption>
      <thead>
        {full
          ? <tr><th scope="col">Clause</th><th scope="col" className="number">Value</th><th scope="col" className="number">Limit</th><th scope="col">Share of limit</th><th scope="col" className="number">Window</th><th scope="col">Source of limit</th><th scope="col" className="number">Worst place</th></tr>
          : <tr><th scope="col">Clause and worst place</th><th scope="col" className="number">Value and limit</th><th scope="col">Share of limit</th></tr>}
      </thead>
      <tbody>
        {results.map((each) => <CriterionRow key={`${keyOf(each)} ${each.inspection}`} result={each} chosen={chosen === keyOf(each)} full={full} />)}
      </tbody>
    </table>
  );
}

function CriterionRow({ result, chosen, full }: { readonly result: CriterionResult; readonly chosen: boolean; readonly full: boolean }) {
  const choose = () => showCriterion(keyOf(result), result.where.from, result.where.to);
  return (
    <tr className={`criterion criterion-${result.verdict}${chosen ? ' chosen' : ''}`} onClick={choose}>
      <th scope="row">
        <button type="button" className="row-button" aria-current={chosen} onClick={(event) => { event.stopPropagation(); choose(); }} title={`${result.ruleSet}: ${result.sentence}`}>{plain(result.clause)}</button>
        {full ? <><small>{result.sentence}</small>{result.note !== '' && <small className="quiet">{sentence(result.note)}</small>}</> : <><small>{stretch(result.where.from, result.where.to)}</small><ProvenanceBadge provenance={result.provenance} /></>}
      </th>
      <td className="number"><Value result={result} />{!full && <><br /><Limit result={result} /></>}</td>
      {full && <td className="number"><Limit result={result} /></td>}
      <td><ShareBar value={result.utilisation} verdict={result.verdict} /></td>
      {full && <><td className="number">{result.window === null ? 'at a point' : `${fixed(result.window, result.window < 1 ? 3 : 2)} m`}</td><td><ProvenanceBadge provenance={result.provenance} /> <small>{result.ruleSet}</small></td><td className="number">{stretch(result.where.from, result.where.to)}</td></>}
    </tr>
  );
}

function Value({ result }: { readonly result: CriterionResult }) {
  return <>{figure(result.value)}{result.valueUncertainty !== null && <small> ± {figure(2 * result.valueUncertainty)}</small>} <small>{result.unit}</small></>;
}

function Limit({ result }: { readonly result: CriterionResult }) {
  return <span title={`${COMPARATOR_WORDS[result.comparator]} this limit`}><span aria-hidden="true">{COMPARATOR_SIGNS[result.comparator]}</span><span className="hidden-words">{COMPARATOR_WORDS[result.comparator]}</span> {figure(result.limit)} <small>{result.unit}</small></span>;
}

/** Share of the limit as a bar with the limit marked; the verdict in words beside it. */
function ShareBar({ value, verdict }: { readonly value: number; readonly verdict: CriterionResult['verdict'] }) {
  return (
    <span className={`share share-${verdict}`}>
      <span className="share-track" aria-hidden="true"><i style={{ width: `${Math.min(100, Math.max(0, value) * 75)}%` }} /><b /></span>
      <span>{share(value)}<small> {VERDICT_WORDS[verdict]}</small></span>
    </span>
  );
}
