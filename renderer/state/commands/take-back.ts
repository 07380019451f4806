import type { Command } from '../command.ts';
import { takeBack } from '../decide.ts';

export const takeBackDecision: Command = {
  name: 'take-back',
  title: 'Take the last decision back',
  group: 'Rope folder',
  keys: ['Ctrl+Z'],
  enabled: (state) => state.undo.length > 0,
  run: () => takeBack(),
  undo: 'journal',
};
