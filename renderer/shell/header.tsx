import { SCREENS } from '../state/app-state.ts';
import { commandNamed } from '../state/named-command.ts';
import { useApp } from '../state/store.ts';
import { runCommand } from '../state/run-command.ts';
import { CommandButton } from '../ui/command-button.tsx';

const TITLES: Record<(typeof SCREENS)[number], string> = { rope: 'Rope', places: 'Places', criteria: 'Criteria', life: 'Life', compare: 'Compare', section: 'Section', intake: 'Intake', report: 'Report' };

/** Name of the rope, the screens, and what concerns the whole window. */
export function Header() {
  const view = useApp((state) => state.view);
  const rope = useApp((state) => state.rope);
  const screen = useApp((state) => state.screen);
  const theme = useApp((state) => state.theme);
  return (
    <header className="header">
      <span className="brand"><svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true"><circle cx="10" cy="10" r="9.2" className="brand-ring" />{[0, 60, 120, 180, 240, 300].map((turn) => <circle key={turn} cx={10 + 5.4 * Math.cos((turn * Math.PI) / 180)} cy={10 + 5.4 * Math.sin((turn * Math.PI) / 180)} r="2.5" className="brand-strand" />)}<circle cx="10" cy="10" r="2.1" className="brand-core" /></svg>Strandbook</span>
      {rope !== null && <h1 className="rope-name" title={rope.place}>{view?.assessment.rope.name ?? rope.label}</h1>}
      {view?.assessment.synthetic === true && <span className="synthetic" title="Generated for demonstration: describes no real rope">SYNTHETIC</span>}
      {view !== null && (
        <nav className="screens" aria-label="Screens">
          {SCREENS.map((name) => <button key={name} type="button" aria-current={screen === name ? 'page' : undefined} aria-keyshortcuts={commandNamed(`go-${name}`).keys[0]} onClick={() => runCommand(commandNamed(`go-${name}`))}>{TITLES[name]}</button>)}
        </nav>
      )}
      <span className="header-end">
        <CommandButton command={commandNamed('show-commands')} className="button-plain">Commands</CommandButton>
        <CommandButton command={commandNamed('switch-theme')} className="button-plain">{theme === 'light' ? '☾' : '☀'}</CommandButton>
        {rope !== null && <CommandButton command={commandNamed('close-rope')} className="button-plain">Close</CommandButton>}
      </span>
    </header>
  );
}
