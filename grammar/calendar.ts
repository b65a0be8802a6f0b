/** The days that the calendar has. */

/** Whether a date written year, month, day (`2026-09-14`) is a day of the calendar. */
export function isDay(date: string): boolean {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number];
  const days = month >= 1 && month <= 12 ? new Date(Date.UTC(year, month, 0)).getUTCDate() : 0;
  return day >= 1 && day <= days;
}
