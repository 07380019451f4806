/** Where a whole number lies on a ring of `size` places, 0 to size - 1, also from below zero. */
export function modulo(index: number, size: number): number {
  return ((index % size) + size) % size;
}
