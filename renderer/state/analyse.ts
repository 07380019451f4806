import { startSession } from '../workers/analysis-session.ts';
import type { AnalysisSession, Ending, WorkerLike } from '../workers/analysis-session.ts';
import type { AnalysisView } from '../workers/analysis-view.ts';
import { change, store } from './store.ts';

const makeWorker = (): WorkerLike => new Worker(new URL('../workers/analysis-worker.ts', import.meta.url), { type: 'module', name: 'analysis' }) as unknown as WorkerLike;

let running: AnalysisSession | null = null;

/** Runs the analysis of the open folder. The former one stays in view and keeps answering until the new one is ready. */
export async function analyse(label: string): Promise<Ending['kind']> {
  const { rope, journal, shell } = store.getState();
  if (rope === null) return 'failed';
  running?.close();
  change({ working: { label, stage: 'Starting', share: 0, cancelling: false }, trouble: null });
  const session = startSession(
    makeWorker(),
    { source: rope.forWorker(), journal, generated: new Date().toISOString(), product: shell?.version || 'Strandbook' },
    (stage, share) => change({ working: { label, stage, share, cancelling: store.getState().working?.cancelling ?? false } }),
  );
  running = session;
  const ending = await session.ended;
  if (running !== session) return 'cancelled';
  running = null;
  settle(session, ending, label);
  return ending.kind;
}

function settle(session: AnalysisSession, ending: Ending, label: string): void {
  change({ working: null });
  if (ending.kind === 'opened') {
    const former = store.getState();
    former.session?.close();
    change({ session, view: ending.view, refused: [], spoken: `${label} finished`, ...(former.view === null ? fresh(ending.view) : carriedOver(ending.view)) });
  } else if (ending.kind === 'refused') {
    change({ refused: ending.problems, trouble: { title: 'These files cannot be used as they are', remedy: 'Each line says what is wrong and what to do. Nothing was written, and nothing is lost.', problems: ending.problems } });
  } else if (ending.kind === 'failed') {
    change({ trouble: { title: 'The analysis stopped', remedy: `${ending.message}. Your files and decisions are untouched; open the folder again.`, problems: [] } });
  } else change({ spoken: `${label} stopped` });
}

function fresh(view: AnalysisView) {
  const ids = view.inspections.map((each) => each.id);
  return {
    window: view.extent, windowHistory: [], cursor: null, place: null, clause: null, hidden: [], screen: 'rope' as const,
    compare: { earlier: ids.at(-2) ?? null, later: ids.at(-1) ?? null, average: 0.5, pinning: false },
  };
}

/** After a decision the same places may have new names: what is in view stays, what is gone is let go. */
function carriedOver(view: AnalysisView) {
  const { place } = store.getState();
  return { place: view.places.some((each) => each.id === place) ? place : null };
}

/** Stops the running analysis; what was open before stays open. */
export function stopAnalysis(): void {
  const { working } = store.getState();
  if (running === null || working === null) return;
  change({ working: { ...working, cancelling: true } });
  running.cancel();
}
