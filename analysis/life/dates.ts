/** Mean year of the Julian calendar in milliseconds, the unit of all time axes in years. */
export const MILLISECONDS_PER_YEAR = 365.25 * 86_400_000;

/** Years since 1970 of an ISO date. */
export function yearOfDate(date: string): number {
  return Date.parse(date) / MILLISECONDS_PER_YEAR;
}

/** ISO date (day) of a time in years since 1970. */
export function dateOfYear(years: number): string {
  return new Date(Math.round(years * MILLISECONDS_PER_YEAR)).toISOString().slice(0, 10);
}

/** ISO date (day) some months of mean length after another. */
export function monthsAfter(date: string, months: number): string {
  return dateOfYear(yearOfDate(date) + months / 12);
}
