/** The number that a user wrote, with a decimal point or comma; NaN where nothing or something else is written. */
export function typedNumber(text: string): number {
  return text.trim() === '' ? NaN : Number(text.replace(',', '.'));
}
