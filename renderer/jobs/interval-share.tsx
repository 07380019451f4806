import { useState } from 'react';
import { INTERVAL_SHARE } from '../../analysis/life/interval-share.ts';
import { newestOf } from '../../analysis/rope/journal.ts';
import { decide } from '../state/decide.ts';
import { store } from '../state/store.ts';
import { fixed } from '../text/format.ts';

/** The share of the time to the earliest low bound after which to inspect again: seen, and to be set by the competent person. */
export function IntervalShare({ share }: { readonly share: number }) {
  const [text, setText] = useState(share.toFixed(2));
  const wanted = Number(text.replace(',', '.'));
  const usable = text.trim() !== '' && wanted >= INTERVAL_SHARE.least && wanted <= INTERVAL_SHARE.most;
  const keep = () => {
    const former = newestOf(store.getState().journal, 'parameters')?.values ?? {};
    void decide({
      label: `Next inspection within ${fixed(wanted, 2)} of the time to the low bound`, rerun: true,
      entries: [{ kind: 'parameters', values: { ...former, [INTERVAL_SHARE.name]: wanted } }], inverse: [{ kind: 'parameters', values: former }],
    });
  };
  return (
    <form className="interval-share" onSubmit={(event) => { event.preventDefault(); if (usable && wanted !== share) keep(); }}>
      <label>Inspect again after this share of the time to the earliest low bound<input className="short" inputMode="decimal" value={text} onChange={(event) => setText(event.target.value)} aria-describedby="interval-share-why" /></label>
      <button type="submit" disabled={!usable || wanted === share}>Use</button>
      <small id="interval-share-why" className="quiet">{usable ? `Usual: ${fixed(INTERVAL_SHARE.value, 2)}, ${INTERVAL_SHARE.reason}.` : `From ${INTERVAL_SHARE.least} to ${INTERVAL_SHARE.most}.`}</small>
    </form>
  );
}
