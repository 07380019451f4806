import { byUrgency } from '../jobs/urgency.ts';
import type { AppState } from './app-state.ts';
import { showPlace } from './show.ts';

/** Goes to the next or former place in the order of the places list. */
export function stepPlace({ view, place }: AppState, direction: 1 | -1): void {
  if (view === null || view.places.length === 0) return;
  const order = byUrgency(view);
  const at = order.findIndex((each) => each.place.id === place);
  const next = at < 0 ? (direction === 1 ? 0 : order.length - 1) : Math.min(order.length - 1, Math.max(0, at + direction));
  showPlace(order[next].place.id);
}
