import { useMemo } from 'react';
import { useApp } from '../state/store.ts';
import { yearColours } from '../strip/year-colours.ts';
import type { AnalysisView, InspectionView } from '../workers/analysis-view.ts';

/** The open analysis; only components below an open rope call this. */
export function useView(): AnalysisView {
  const view = useApp((state) => state.view);
  if (view === null) throw new Error('no rope is open');
  return view;
}

/** Inspections that are switched on, and one colour for each, by its age among all. */
export function useInspections(): { shown: readonly InspectionView[]; colours: ReadonlyMap<string, string> } {
  const { inspections } = useView();
  const hidden = useApp((state) => state.hidden);
  const theme = useApp((state) => state.theme);
  return useMemo(() => {
    const palette = yearColours(inspections.length, theme);
    return { shown: inspections.filter((each) => !hidden.includes(each.id)), colours: new Map(inspections.map((each, i) => [each.id, palette[i]])) };
  }, [inspections, hidden, theme]);
}
