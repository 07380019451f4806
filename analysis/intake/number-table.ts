/**
 * Columns of numbers as they stand in a file, before any cleaning. A cell in which nothing was measured is NaN here and only
 * here: positions.ts and even-grid.ts turn it into a mask, which alone says what is valid from then on.
 */
export interface NumberTable {
  columns: Float64Array[];
  rows: number;
  capacity: number;
}

/** A table of `width` columns with room for `capacity` rows; it grows by half when it is full. */
export function createTable(width: number, capacity: number): NumberTable {
  const room = Math.max(1024, Math.ceil(capacity));
  return { columns: Array.from({ length: width }, () => new Float64Array(room)), rows: 0, capacity: room };
}

/** One column after the other, so that only one old and one new copy exist at a time. */
export function growTable(table: NumberTable): void {
  const room = Math.ceil(table.capacity * 1.5);
  for (let i = 0; i < table.columns.length; i += 1) {
    const larger = new Float64Array(room);
    larger.set(table.columns[i]);
    table.columns[i] = larger;
  }
  table.capacity = room;
}
