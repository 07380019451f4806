import { change, useApp } from '../state/store.ts';
import { Glyph } from '../ui/glyph.tsx';

/** What went wrong and what to do, one line for each fault, until the user has read it. */
export function TroubleNotice() {
  const trouble = useApp((state) => state.trouble);
  if (trouble === null) return null;
  return (
    <section className="trouble" role="alert">
      <p><Glyph name="caution" size={15} /> <b>{trouble.title}.</b> {trouble.remedy}</p>
      {trouble.problems.length > 0 && (
        <ul>
          {trouble.problems.map((each, index) => (
            <li key={index}><code>{each.file}{each.line === null ? '' : `, line ${each.line}`}{each.column === null ? '' : `, column ${each.column}`}</code> <b>{each.what}</b>: {each.remedy}</li>
          ))}
        </ul>
      )}
      <button type="button" onClick={() => change({ trouble: null })}>Understood</button>
    </section>
  );
}
