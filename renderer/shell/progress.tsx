import { commandNamed } from '../state/named-command.ts';
import { useApp } from '../state/store.ts';
import { CommandButton } from '../ui/command-button.tsx';

/** Long work: what is being done, how far it is, and a way to stop it. */
export function Progress() {
  const working = useApp((state) => state.working);
  if (working === null) return null;
  const percent = Math.round(working.share * 100);
  return (
    <section className="progress" aria-label="Work under way">
      <p><b>{working.label}</b> <span className="progress-stage">{working.cancelling ? 'Stopping…' : working.stage}</span></p>
      <div className="progress-track" role="progressbar" aria-label={working.label} aria-valuemin={0} aria-valuemax={100} aria-valuenow={percent}><i style={{ width: `${percent}%` }} /></div>
      <CommandButton command={commandNamed('stop-work')}>Stop</CommandButton>
    </section>
  );
}
