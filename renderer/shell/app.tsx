import { useEffect } from 'react';
import type { ComponentType } from 'react';
import { CompareScreen } from '../jobs/compare-screen.tsx';
import { CriteriaScreen } from '../jobs/criteria-screen.tsx';
import { IntakeScreen } from '../jobs/intake-screen.tsx';
import { LifeScreen } from '../jobs/life-screen.tsx';
import { NewRecordScreen } from '../jobs/new-record-screen.tsx';
import { NoteDialog } from '../jobs/note-dialog.tsx';
import { ParametersDialog } from '../jobs/parameters-dialog.tsx';
import { PlacesScreen } from '../jobs/places-screen.tsx';
import { RefusedScreen } from '../jobs/refused-screen.tsx';
import { ReportScreen } from '../jobs/report-screen.tsx';
import { ReviewDialog } from '../jobs/review-dialog.tsx';
import { RopeScreen } from '../jobs/rope-screen.tsx';
import { RopeTape } from '../jobs/rope-tape.tsx';
import { RulesDialog } from '../jobs/rules-dialog.tsx';
import { SectionScreen } from '../jobs/section-screen.tsx';
import type { DialogName, ScreenName } from '../state/app-state.ts';
import { listenForKeys } from '../state/keys.ts';
import { useApp } from '../state/store.ts';
import { Panel } from '../ui/panel.tsx';
import { BrowseDialog } from './browse-dialog.tsx';
import { CautionDialog } from './caution-dialog.tsx';
import { CommandDialog } from './command-dialog.tsx';
import { DropTarget } from './drop-target.tsx';
import { GoToDialog } from './go-to-dialog.tsx';
import { Header } from './header.tsx';
import { Progress } from './progress.tsx';
import { ShortcutDialog } from './shortcut-dialog.tsx';
import { StartScreen } from './start-screen.tsx';
import { SummaryBar } from './summary-bar.tsx';
import { TroubleNotice } from './trouble-notice.tsx';

const SCREENS: Record<ScreenName, ComponentType> = { rope: RopeScreen, places: PlacesScreen, criteria: CriteriaScreen, life: LifeScreen, compare: CompareScreen, section: SectionScreen, intake: IntakeScreen, report: ReportScreen };
const DIALOGS: Record<DialogName, ComponentType> = { commands: CommandDialog, shortcuts: ShortcutDialog, cautions: CautionDialog, browse: BrowseDialog, note: NoteDialog, 'go-to': GoToDialog, review: ReviewDialog, rules: RulesDialog, parameters: ParametersDialog };

/** The one window. */
export function App() {
  const theme = useApp((state) => state.theme);
  const spoken = useApp((state) => state.spoken);
  const dialog = useApp((state) => state.dialog);
  useEffect(() => { document.documentElement.dataset.theme = theme; }, [theme]);
  useEffect(() => listenForKeys(window), []);
  const Dialog = dialog === null ? null : DIALOGS[dialog];
  return (
    <>
      <Header />
      <Panel name="The summary"><SummaryBar /></Panel>
      <TroubleNotice />
      <Progress />
      <Main />
      {Dialog && <Panel name="This dialog"><Dialog /></Panel>}
      <DropTarget />
      <p className="hidden-words" role="status" aria-live="polite">{spoken}</p>
    </>
  );
}

function Main() {
  const screen = useApp((state) => state.screen);
  const open = useApp((state) => state.view !== null);
  const rope = useApp((state) => state.rope);
  const working = useApp((state) => state.working);
  const unrecorded = useApp((state) => state.unrecorded);
  if (open) {
    const Screen = SCREENS[screen];
    return <><Panel name="The whole rope"><RopeTape /></Panel><main className="main"><Panel key={screen} name="This screen"><Screen /></Panel></main></>;
  }
  if (rope !== null && working === null) return <main className="main"><RefusedScreen /></main>;
  if (rope !== null) return <main className="main main-waiting"><h1>{rope.label}</h1><p className="quiet">The rope appears as soon as it is read and judged.</p></main>;
  return <main className="main">{unrecorded !== null ? <Panel name="The new record"><NewRecordScreen files={unrecorded} /></Panel> : <StartScreen />}</main>;
}
