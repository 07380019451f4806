import { onCalendar } from '../../rope/on-calendar.ts';

const DAY = /(?:^|\D)((?:19|20)\d{2})([-_.]?)(0[1-9]|1[0-2])\2(0[1-9]|[12]\d|3[01])(?!\d)/;
const MOMENT = /(?:^|\D)((?:19|20)\d{2})([-_.]?)(0[1-9]|1[0-2])\2(0[1-9]|[12]\d|3[01])[-_. T]([01]\d|2[0-3])([-_.:]?)([0-5]\d)\6([0-5]\d)(?!\d)/;

/** The day that a file name carries, as `2024-05-01` or `20240501`; ISO text, or null. */
export function dayInName(file: string): string | null {
  const found = DAY.exec(lastPart(file));
  const day = found && `${found[1]}-${found[3]}-${found[4]}`;
  return day !== null && onCalendar(day) ? day : null;
}

/** Day and time of day that a file name carries, as cameras write them (`IMG_20240501_101112.jpg`); ISO text without a zone, or null. */
export function momentInName(file: string): string | null {
  const found = MOMENT.exec(lastPart(file));
  const day = found && `${found[1]}-${found[3]}-${found[4]}`;
  return found !== null && day !== null && onCalendar(day) ? `${day}T${found[5]}:${found[7]}:${found[8]}` : null;
}

function lastPart(file: string): string {
  return file.split('/').pop() ?? '';
}
