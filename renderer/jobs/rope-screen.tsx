import { useMemo } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { commandNamed as named } from '../state/named-command.ts';
import type { AppState } from '../state/app-state.ts';
import { change, useApp } from '../state/store.ts';
import { fixed, metres } from '../text/format.ts';
import { CommandButton } from '../ui/command-button.tsx';
import { Panel } from '../ui/panel.tsx';
import { useHeight } from '../ui/use-height.ts';
import { CriteriaTable } from './criteria-table.tsx';
import { CursorReading } from './cursor-reading.tsx';
import { InspectionLegend } from './inspection-legend.tsx';
import { LifePanel } from './life-panel.tsx';
import { PlaceList } from './place-list.tsx';
import { RopeStrips } from './rope-strips.tsx';
import { useView } from './use-inspections.ts';


/** The rope at a glance: strips by rope position, and beside them what asks for attention. */
export function RopeScreen() {
  return (
    <div className="rope-screen">
      <section className="sheet-of-strips" aria-label="Strips">
        <div className="strip-bar"><InspectionLegend /><ZoomBar /></div>
        <Panel name="The strips"><SizedStrips /></Panel>
        <Panel name="The cursor's reading"><CursorReading /></Panel>
      </section>
      <Beside />
    </div>
  );
}

/** Strips take what height the window leaves them. */
function SizedStrips() {
  const { inspections } = useView();
  const { height, ref } = useHeight(420);
  const lanes = 26 + 24 + 3 * inspections.length + 38 + 20 + Math.max(16, 6 * inspections.length + 4) + 2 * 24 + 8;
  return <div ref={ref} className="sized"><RopeStrips height={Math.max(200, height - lanes)} /></div>;
}

/** Buttons for zooming and moving, and what length is in view. */
export function ZoomBar() {
  const window = useApp((state) => state.window);
  const length = window.to - window.from;
  return (
    <div className="zoom-bar" role="group" aria-label="Length in view">
      <span className="in-view">{fixed(window.from, length > 50 ? 1 : 2)} – {fixed(window.to, length > 50 ? 1 : 2)} m <small>({metres(length, length)})</small></span>
      <CommandButton command={named('former-view')}>↶</CommandButton>
      <CommandButton command={named('pan-left')}>◂</CommandButton>
      <CommandButton command={named('pan-right')}>▸</CommandButton>
      <CommandButton command={named('zoom-out')}>−</CommandButton>
      <CommandButton command={named('zoom-in')}>+</CommandButton>
      <CommandButton command={named('whole-rope')}>Whole rope</CommandButton>
      <CommandButton command={named('go-to-position')}>Go to…</CommandButton>
    </div>
  );
}

function Beside() {
  const beside = useApp((state) => state.beside);
  const { places, criteria, life } = useView();
  const tabs = useMemo(() => [['places', `Places ${places.length}`], ['criteria', `Criteria ${criteria.results.length}`], ['life', `Life ${life.forecasts.length}`]] as const, [places, criteria, life]);
  return (
    <Tabs className="beside" selectedKey={beside} onSelectionChange={(key) => change({ beside: key as AppState['beside'] })}>
      <TabList aria-label="Beside the strips" className="beside-tabs">{tabs.map(([id, words]) => <Tab key={id} id={id} className="beside-tab">{words}</Tab>)}</TabList>
      <TabPanel id="places" className="beside-panel scrolls"><Panel name="The places list"><PlaceList /></Panel></TabPanel>
      <TabPanel id="criteria" className="beside-panel scrolls"><Panel name="The criteria table"><CriteriaTable /></Panel></TabPanel>
      <TabPanel id="life" className="beside-panel scrolls"><Panel name="The life chart"><LifePanel /></Panel></TabPanel>
    </Tabs>
  );
}
