import type { Analysis } from '../assess.ts';
import type { Channel } from '../rope/trace.ts';
import type { Survey } from '../rope/survey.ts';
import type { StripFigure } from './document.ts';

const COLUMNS = 480;

/** The whole rope at a glance for one channel: extremes per drawn column, newest inspections last. */
export function stripFigure(analysis: Analysis, channel: 'loss' | 'fault', surveys: readonly Survey[], caption: string): StripFigure | null {
  const shown = surveys.filter((survey) => survey.rope[channel] !== null);
  if (shown.length === 0) return null;
  const { start, step, length } = shown[0].rope;
  const to = start + step * length;
  return {
    kind: 'strip', caption, unit: channel === 'loss' ? '% of metallic area, loss upwards' : shown[0].rope.faultUnit || 'LF, unit of the file', from: start, to,
    lines: shown.map((survey) => ({ label: `${survey.id} (${survey.date})`, columns: extremes(survey.rope[channel]!, start, step) })),
    notInspected: analysis.assessment.not_inspected.map((each) => ({ from: each.from_m, to: each.to_m })),
    marks: analysis.record.landmarks.map((mark) => ({ at: mark.position_m ?? ((mark.from_m ?? 0) + (mark.to_m ?? 0)) / 2, label: mark.name })),
  };
}

function extremes(channel: Channel, start: number, step: number): { at: number; low: number; high: number }[] {
  const { values, valid } = channel;
  const width = Math.max(1, Math.ceil(values.length / COLUMNS));
  const columns: { at: number; low: number; high: number }[] = [];
  for (let first = 0; first < values.length; first += width) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let i = first; i < Math.min(values.length, first + width); i += 1) {
      if (valid[i] !== 1) continue;
      if (values[i] < low) low = values[i];
      if (values[i] > high) high = values[i];
    }
    if (high >= low) columns.push({ at: start + (first + width / 2) * step, low, high });
  }
  return columns;
}
