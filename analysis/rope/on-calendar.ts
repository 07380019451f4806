/** Whether an ISO date names a day that there is: parsing lets 30 February pass as 1 March. */
export function onCalendar(date: string): boolean {
  const [year, month, day] = date.slice(0, 10).split('-').map(Number);
  return new Date(Date.UTC(year, month - 1, day)).getUTCDate() === day;
}
