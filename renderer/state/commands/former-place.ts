import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { stepPlace } from '../step-place.ts';

export const formerPlace: Command = {
  name: 'former-place',
  title: 'Former place',
  group: 'Places',
  keys: ['p', 'k'],
  enabled: hasRope,
  run: (state) => stepPlace(state, -1),
  undo: 'view',
};
