import type { SeriesPoint } from '../../analysis/growth/place.ts';
import { dayOf, figure } from '../text/format.ts';

/** A place's measured series as a small drawing with bars of two sigma; the words say the same. */
export function Sparkline({ series, unit }: { readonly series: readonly SeriesPoint[]; readonly unit: string }) {
  if (series.length === 0) return <span className="quiet">no series</span>;
  const times = series.map((point) => Date.parse(point.date));
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const most = Math.max(...series.map((point) => point.value + 2 * point.uncertainty), 0.001);
  const least = Math.min(0, ...series.map((point) => point.value - 2 * point.uncertainty));
  const x = (time: number) => (last === first ? 36 : 4 + (64 * (time - first)) / (last - first));
  const y = (value: number) => 20 - (18 * (value - least)) / (most - least);
  const words = series.map((point) => `${dayOf(point.date)} ${figure(point.value)} ${unit}`).join(', ');
  return (
    <svg className="sparkline" width="72" height="22" role="img" aria-label={words}>
      <title>{words}</title>
      <polyline points={series.map((point, i) => `${x(times[i])},${y(point.value)}`).join(' ')} />
      {series.map((point, i) => <line key={`bar ${point.inspection}`} x1={x(times[i])} x2={x(times[i])} y1={y(point.value - 2 * point.uncertainty)} y2={y(point.value + 2 * point.uncertainty)} />)}
      {series.map((point, i) => <circle key={point.inspection} cx={x(times[i])} cy={y(point.value)} r="2" />)}
    </svg>
  );
}
