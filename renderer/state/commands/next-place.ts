import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { stepPlace } from '../step-place.ts';

export const nextPlace: Command = {
  name: 'next-place',
  title: 'Next place',
  group: 'Places',
  keys: ['n', 'j'],
  enabled: hasRope,
  run: (state) => stepPlace(state, 1),
  undo: 'view',
};
