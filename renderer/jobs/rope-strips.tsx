import { useMemo, useState } from 'react';
import type { VisualNote } from '../../analysis/intake/visual-note.ts';
import { useApp } from '../state/store.ts';
import { useAnswer } from '../state/use-answer.ts';
import { ChannelStrip } from '../strip/channel-strip.tsx';
import type { StripLine } from '../strip/channel-strip.tsx';
import { FaultLane, LandmarkLane, NoteLane, SeenLane, ZoneLane } from '../strip/lanes.tsx';
import { Ruler } from '../strip/ruler.tsx';
import { StripField } from '../strip/strip-field.tsx';
import { counted } from '../text/format.ts';
import { useWidth } from '../ui/use-width.ts';
import { NotesDialog } from './notes-dialog.tsx';
import { photoNotes } from './photo-notes.ts';
import { useInspections, useView } from './use-inspections.ts';

/** The rope along the sheet: metal loss and local faults of every inspection, and what is known of each length. */
export function RopeStrips({ height, few = false }: { readonly height: number; /** Without the lanes that a smaller sheet has no room for. */ readonly few?: boolean }) {
  const view = useView();
  const window = useApp((state) => state.window);
  const theme = useApp((state) => state.theme);
  const place = useApp((state) => state.place);
  const { shown, colours } = useInspections();
  const [notes, setNotes] = useState<readonly VisualNote[] | null>(null);
  const { width, ref } = useWidth();
  const { lossLines, faultLines, failure } = useStripLines(window, width);
  const allNotes = useMemo(() => [...view.inspections.flatMap((each) => each.notes), ...photoNotes(view.assessment.photos)], [view]);
  const faultUnit = shown.at(-1)?.faultUnit ?? '';
  const faultSpan = Math.max(...view.inspections.map((each) => each.faultSpan), 1e-9);
  const lossHeight = Math.max(few ? 84 : 120, Math.round(height * 0.58));
  return (
    <div ref={ref} className="rope-strips">
      {failure && <p className="remark" role="alert">The strips could not be drawn: {failure}</p>}
      <StripField window={window} notInspected={view.assessment.not_inspected} label="Strips by rope position. Arrow keys move, plus and minus zoom, Shift with arrow keys moves the cursor.">
        <Ruler window={window} width={width} title={view.loopLength === null ? 'from A, m' : 'position, m'} />
        <ChannelStrip title="Loss of metal" unit="% of area" lines={lossLines} window={window} height={lossHeight} theme={theme} leastSpan={1.5}
          label={`Loss of metallic area in percent by rope position, ${counted(shown.length, 'inspection')} over each other`} />
        <ChannelStrip title="Local faults" unit={faultUnit === '' ? '' : faultUnit} lines={faultLines} window={window} height={Math.max(few ? 62 : 80, height - lossHeight)} theme={theme} leastSpan={faultSpan * 0.12}
          label={`Local fault signal by rope position, ${counted(shown.length, 'inspection')} over each other`} />
        <FaultLane window={window} width={width} places={view.places} chosen={place} />
        <ZoneLane window={window} width={width} inspections={shown} colours={colours} />
        {!few && <NoteLane window={window} width={width} notes={allNotes} onOpen={setNotes} />}
        <LandmarkLane window={window} width={width} landmarks={view.record.landmarks} />
        {!few && <SeenLane window={window} width={width} inspections={shown} colours={colours} />}
        {view.loopLength === null && <Ruler window={window} width={width} endB={view.record.rope.length_m ?? view.extent.to} title="from B, m" />}
      </StripField>
      {notes !== null && <NotesDialog notes={notes} onClose={() => setNotes(null)} />}
    </div>
  );
}

/** Lines of both channels for the length in view; asked for a little beyond it, so that a drag finds something to show. */
function useStripLines(window: { from: number; to: number }, width: number) {
  const { shown, colours } = useInspections();
  const margin = (window.to - window.from) * 0.25;
  const pixels = Math.round((Math.max(300, width) * 1.5) / (shown.length > 4 ? 1.6 : 1));
  const { answer, failure } = useAnswer('strips', { from: window.from - margin, to: window.to + margin, pixels });
  const [lossLines, faultLines] = useMemo(() => {
    const newest = shown.at(-1)?.id;
    const linesOf = (which: 'loss' | 'fault'): StripLine[] => shown.map((inspection) => ({
      name: inspection.date, points: answer?.find((each) => each.inspection === inspection.id)?.[which] ?? null,
      colour: colours.get(inspection.id) ?? '#888888', width: inspection.id === newest ? 1.7 : 1,
    }));
    return [linesOf('loss'), linesOf('fault')];
  }, [answer, shown, colours]);
  return { lossLines, faultLines, failure };
}
