import type { Analysis } from '../../analysis/assess.ts';
import { lossDifference } from '../../analysis/display/difference.ts';
import type { DisplayPoints } from '../../analysis/display/display-points.ts';
import { displayWindow } from '../../analysis/display/display-window.ts';
import { buildPyramid } from '../../analysis/display/pyramid.ts';
import type { Pyramid } from '../../analysis/display/pyramid.ts';
import { readingAt } from '../../analysis/display/reading.ts';
import { buildReport } from '../../analysis/report/build-report.ts';
import type { Trace } from '../../analysis/rope/trace.ts';
import type { Frame } from '../../analysis/rope/units.ts';
import { sectionHistory } from '../../analysis/section/section-history.ts';
import type { QuestionName, Questions } from './messages.ts';

interface Answered {
  readonly value: unknown;
  readonly transfer: Transferable[];
}

type Answers = { [N in QuestionName]: (question: Questions[N]['question']) => Questions[N]['answer'] | Promise<Questions[N]['answer']> };

/** Answers the page's questions about one analysis. Pyramids are built when first asked for and then kept. */
export function answerer(analysis: Analysis): (name: QuestionName, question: unknown) => Promise<Answered> {
  const pyramids = new Map<string, Pyramid | null>();
  const kept = (key: string, build: () => Pyramid | null): Pyramid | null => {
    const held = pyramids.get(key);
    if (held !== undefined) return held;
    const built = build();
    pyramids.set(key, built);
    return built;
  };
  const draw = (pyramid: Pyramid | null, from: number, to: number, pixels: number) => (pyramid === null ? null : displayWindow(pyramid, from, to, pixels));
  const channel = <F extends Frame>(key: string, trace: Trace<F>, which: 'loss' | 'fault') =>
    kept(`${key} ${which}`, () => { const found = trace[which]; return found === null ? null : buildPyramid(found, trace.start, trace.step); });

  const answers: Answers = {
    strips: ({ from, to, pixels }) => analysis.surveys.map((survey) => ({
      inspection: survey.id,
      loss: draw(channel(survey.id, survey.rope, 'loss'), from, to, pixels),
      fault: draw(channel(survey.id, survey.rope, 'fault'), from, to, pixels),
    })),
    difference: ({ earlier, later, average, from, to, pixels }) => draw(kept(`difference ${earlier} ${later} ${average}`, () => {
      const [a, b] = [earlier, later].map((id) => analysis.surveys.find((survey) => survey.id === id)?.rope);
      const channelOf = a && b ? lossDifference(a, b, average) : null;
      return channelOf && a ? buildPyramid(channelOf, a.start, a.step) : null;
    }), from, to, pixels),
    run: ({ file, pixels }) => {
      const trace = analysis.surveys.flatMap((survey) => survey.runs).find((run) => run.file === file)?.trace;
      if (!trace) return null;
      const end = trace.start + trace.step * trace.length;
      return { loss: draw(channel(`run ${file}`, trace, 'loss'), trace.start, end, pixels), fault: draw(channel(`run ${file}`, trace, 'fault'), trace.start, end, pixels) };
    },
    reading: ({ at }) => analysis.surveys.map((survey) => ({ inspection: survey.id, ...readingAt(survey.rope, at) })),
    section: (question) => sectionHistory(analysis, question),
    report: () => buildReport(analysis),
  };
  return async (name, question) => {
    const value = await (answers[name] as (asked: unknown) => unknown)(question);
    return { value, transfer: buffersOf(value) };
  };
}

/** The arrays of display points in an answer: they are made for it and may leave the worker without a copy. */
function buffersOf(value: unknown): Transferable[] {
  if (Array.isArray(value)) return value.flatMap(buffersOf);
  if (typeof value !== 'object' || value === null) return [];
  if (isDisplayPoints(value)) return [value.positions.buffer, value.low.buffer, value.high.buffer, value.seen.buffer] as ArrayBuffer[];
  if ('loss' in value || 'fault' in value) return Object.values(value).flatMap(buffersOf);
  return [];
}

function isDisplayPoints(value: object): value is DisplayPoints {
  return 'samplesPerPoint' in value && 'seen' in value;
}
