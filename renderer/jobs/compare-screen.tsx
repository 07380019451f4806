import { useMemo } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { tiePointsOf } from '../../analysis/rope/journal.ts';
import { change, useApp } from '../state/store.ts';
import { useAnswer } from '../state/use-answer.ts';
import { ChannelStrip } from '../strip/channel-strip.tsx';
import type { StripBand, StripLine } from '../strip/channel-strip.tsx';
import { Ruler } from '../strip/ruler.tsx';
import { ShiftStrip } from '../strip/shift-strip.tsx';
import { StripField } from '../strip/strip-field.tsx';
import { pairColours } from '../strip/year-colours.ts';
import { dayOf, figure, fixed, share } from '../text/format.ts';
import { Panel } from '../ui/panel.tsx';
import { useHeight } from '../ui/use-height.ts';
import { useWidth } from '../ui/use-width.ts';
import type { InspectionView } from '../workers/analysis-view.ts';
import { CursorReading } from './cursor-reading.tsx';
import { mapShift } from './map-shift.ts';
import { PlaceActs } from './place-acts.tsx';
import { PlaceList } from './place-list.tsx';
import { ZoomBar } from './rope-screen.tsx';
import { TiePoints, pin } from './tie-points.tsx';
import { useView } from './use-inspections.ts';

/** Two inspections of the same rope over each other, their difference against its noise, the map that joins them, and the places to be judged. */
export function CompareScreen() {
  const { inspections } = useView();
  const compare = useApp((state) => state.compare);
  const { height, ref } = useHeight(460);
  const earlier = inspections.find((each) => each.id === compare.earlier) ?? inspections.at(-2);
  const later = inspections.find((each) => each.id === compare.later) ?? inspections.at(-1);
  if (!earlier || !later || inspections.length < 2) return <p className="empty">There is only {inspections.length === 1 ? 'one usable inspection' : 'no usable inspection'}: nothing can be compared.</p>;
  return (
    <div className="compare-screen">
      <section className="sheet-of-strips" aria-label="Comparison">
        <div className="strip-bar"><Choice earlier={earlier} later={later} /><ZoomBar /></div>
        <div ref={ref} className="sized"><Panel name="The comparison"><CompareStrips earlier={earlier} later={later} height={Math.max(380, height - 74)} /></Panel></div>
        <Panel name="The cursor's reading"><CursorReading /></Panel>
      </section>
      <CompareSide later={later} />
    </div>
  );
}

/** Places to go through by keyboard, and the map of the later inspection with its tie points. */
function CompareSide({ later }: { readonly later: InspectionView }) {
  const { places } = useView();
  return (
    <Tabs className="beside">
      <TabList aria-label="Beside the comparison" className="beside-tabs"><Tab id="places" className="beside-tab">Places {places.length}</Tab><Tab id="map" className="beside-tab">Rope map</Tab></TabList>
      <TabPanel id="places" className="beside-panel places-list scrolls"><Panel name="The places list"><PlaceActs /><PlaceList full /></Panel></TabPanel>
      <TabPanel id="map" className="beside-panel compare-side scrolls"><Panel name="The rope map"><MapFacts inspection={later} /><TiePoints inspection={later} /></Panel></TabPanel>
    </Tabs>
  );
}

function Choice({ earlier, later }: { readonly earlier: InspectionView; readonly later: InspectionView }) {
  const { inspections } = useView();
  const compare = useApp((state) => state.compare);
  const colours = pairColours(useApp((state) => state.theme));
  const options = inspections.map((each) => <option key={each.id} value={each.id}>{dayOf(each.date)}</option>);
  return (
    <div className="compare-choice" role="group" aria-label="What is compared">
      <label><i className="swatch" style={{ background: colours.earlier }} />Earlier<select value={earlier.id} onChange={(event) => change({ compare: { ...compare, earlier: event.target.value } })}>{options}</select></label>
      <label><i className="swatch" style={{ background: colours.later }} />Later<select value={later.id} onChange={(event) => change({ compare: { ...compare, later: event.target.value } })}>{options}</select></label>
      <label>Averaged over<select value={compare.average} onChange={(event) => change({ compare: { ...compare, average: Number(event.target.value) } })}>{[0.1, 0.3, 0.5, 1, 2, 5].map((each) => <option key={each} value={each}>{each} m</option>)}</select></label>
    </div>
  );
}

function CompareStrips({ earlier, later, height }: { readonly earlier: InspectionView; readonly later: InspectionView; readonly height: number }) {
  const view = useView();
  const window = useApp((state) => state.window);
  const theme = useApp((state) => state.theme);
  const compare = useApp((state) => state.compare);
  const journal = useApp((state) => state.journal);
  const { width, ref } = useWidth();
  const margin = (window.to - window.from) * 0.25;
  const asked = { from: window.from - margin, to: window.to + margin, pixels: Math.round(width * 1.5) };
  const strips = useAnswer('strips', asked).answer;
  const difference = useAnswer('difference', { ...asked, earlier: earlier.id, later: later.id, average: compare.average });
  const [lossLines, faultLines] = useMemo(() => {
    const colours = pairColours(theme);
    const linesOf = (which: 'loss' | 'fault'): StripLine[] => [earlier, later].map((each) => ({ name: each.date, colour: each === later ? colours.later : colours.earlier, width: each === later ? 1.4 : 1.1, points: strips?.find((one) => one.inspection === each.id)?.[which] ?? null }));
    return [linesOf('loss'), linesOf('fault')];
  }, [strips, earlier, later, theme]);
  const differenceLines = useMemo((): StripLine[] => [{ name: 'difference', points: difference.answer, colour: theme === 'light' ? '#a84300' : '#ff9a5c', width: 1.4 }], [difference.answer, theme]);
  const joined = Math.max(widest(earlier, window), widest(later, window));
  const noise = noiseOfDifference(earlier, later, compare.average);
  const bands = useMemo((): StripBand[] => [{ positions: [view.extent.from, view.extent.to], low: [-noise, -noise], high: [noise, noise], colour: theme === 'light' ? 'rgba(90,98,102,0.20)' : 'rgba(180,190,194,0.20)' }], [noise, theme, view]);
  const shift = useMemo(() => mapShift(later.map), [later]);
  const ties = tiePointsOf(journal, later.id).map((tie) => tie.rope_m);
  const failure = difference.failure;
  return (
    <div ref={ref} className="rope-strips">
      {failure && <p className="remark" role="alert">The difference could not be drawn: {failure}</p>}
      {joined > compare.average && <p className="remark">{joined >= view.extent.to - view.extent.from ? 'In view nothing says where these inspections lie on each other: do not compare them here.' : `In view the inspections lie on each other to ±${fixed(joined, 2)} m only, which is coarser than the averaging length: compare nothing finer here.`}</p>}
      <StripField window={window} notInspected={view.assessment.not_inspected} label="Comparison by rope position" onDragBetween={compare.pinning ? (from, to) => void pin(later, from, to) : null}>
        <Ruler window={window} width={width} title={view.loopLength === null ? 'from A, m' : 'position, m'} />
        <ChannelStrip title="Loss of metal" unit="%" lines={lossLines} window={window} height={Math.round(height * 0.29)} theme={theme} leastSpan={1.5} label={`Loss of metallic area on ${dayOf(earlier.date)} and ${dayOf(later.date)}`} />
        <ChannelStrip title="Difference" unit="%" lines={differenceLines} bands={bands} window={window} height={Math.round(height * 0.26)} theme={theme} leastSpan={0.8} label={`Later minus earlier loss averaged over ${compare.average} m; noise band plus and minus ${fixed(noise, 2)} percent`} />
        <ChannelStrip title="Local faults" unit={later.faultUnit} lines={faultLines} window={window} height={Math.round(height * 0.21)} theme={theme} leastSpan={Math.max(earlier.faultSpan, later.faultSpan, 1e-9) * 0.12} label="Local fault signal of both inspections" />
        <ShiftStrip shift={shift} ties={ties} window={window} height={Math.round(height * 0.24)} theme={theme} label={`Local shift of the map of ${dayOf(later.date)} with its 95 percent band, ${shift.slips.length} slips`} />
      </StripField>
      <p className="quiet strip-key">Difference: later minus earlier, both averaged over {compare.average} m; the grey band is ±{fixed(noise, 2)} %, what noise alone would give (95 %). Growth is judged by a model under Places, not from this drawing.</p>
    </div>
  );
}

/** Largest claimed bound of an inspection's position in view, metres; where none is claimed, none is taken. */
function widest({ mapUncertainty: { positions, values } }: InspectionView, window: { readonly from: number; readonly to: number }): number {
  const inside = values.filter((_, i) => (positions[i + 1] ?? Infinity) >= window.from && (positions[i - 1] ?? -Infinity) <= window.to);
  return Math.max(0, ...inside);
}

/** 95 % band of a difference of two averages: repeatability where two runs gave it, else the noise of the samples over the averaging length. */
function noiseOfDifference(earlier: InspectionView, later: InspectionView, average: number): number {
  const sigma = (each: InspectionView) => each.repeatability.lossPercent ?? each.noiseOfLoss / Math.sqrt(Math.max(1, average / Math.max(each.averagingLength, each.step)));
  return 1.96 * Math.hypot(sigma(earlier), sigma(later));
}

function MapFacts({ inspection }: { readonly inspection: InspectionView }) {
  const { map } = inspection;
  const shift = mapShift(map);
  return (
    <section className="map-facts" aria-label="Map">
      <h2>Rope map of {dayOf(inspection.date)}</h2>
      <dl className="facts">
        <div><dt>Direction</dt><dd>{map.reversed ? 'run reversed' : 'as the rope'}</dd></div>
        <div><dt>Scale</dt><dd>{fixed((Math.abs(shift.scale) - 1) * 100, 3)} % off</dd></div>
        <div><dt>File zero lies at</dt><dd>{fixed(shift.offset, 2)} m</dd></div>
        <div><dt>Slips found</dt><dd>{map.slips.length === 0 ? 'none' : shift.slips.map((slip) => `${fixed(slip.size, 2)} m at ${fixed(slip.at, 1)} m`).join(', ')}</dd></div>
        <div><dt>Confidence</dt><dd>{share(map.confidence)}</dd></div>
        <div><dt>95 % bound</dt><dd>{shift.bound.length === 0 ? 'none claimed' : `${figure(Math.min(...shift.bound))} to ${figure(Math.max(...shift.bound))} m`}</dd></div>
      </dl>
      <p className="quiet">{map.basis}</p>
      {map.remarks.map((each) => <p key={each} className="remark">{each}</p>)}
    </section>
  );
}
