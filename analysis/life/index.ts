/** Remaining life: what the rest of the program, and any outside check, calls. */
export { forecastLife } from './forecast-life.ts';
export type { LifeOptions } from './forecast-life.ts';
export { forecastPassage, forecastPassages, forecastSome } from './passage/forecast-passage.ts';
export type { PassageDiagnostics, PassageForecast, PassageOptions } from './passage/forecast-passage.ts';
export type { SeriesLike, SeriesReading } from './passage/series.ts';
export { nextInspection } from './next-inspection.ts';
export { summarise } from './summarise.ts';
