import type { ColumnGuess } from '../../analysis/intake/run.ts';
import type { RunColumns } from '../../analysis/rope/record.ts';

export type ColumnRole = ColumnGuess['role'];

/** One column as the user sees it on the intake screen. */
export interface ChosenColumn {
  readonly role: ColumnRole;
  readonly unit: string;
}

export interface ColumnDraft {
  readonly columns: readonly ChosenColumn[];
  readonly lossIs: 'found out' | 'positive' | 'negative';
  readonly pulsesPerMetre: string;
}

export const UNITS: Record<ColumnRole, readonly string[]> = {
  position: ['m', 'ft', 'mm', 'counts'], lma: ['%', 'mm2'], lf: ['', 'mV', 'V', '%', 'mm2', 'counts'], speed: ['m/s', 'ft/min', 'm/min'], time: ['s', 'ms', 'min', 'h'], unused: [''],
};

/** What the program guessed, as a draft to be changed. */
export function draftOf(guesses: readonly ColumnGuess[]): ColumnDraft {
  return { columns: guesses.map(({ role, unit }) => ({ role, unit: unit === '' ? UNITS[role][0] : unit })), lossIs: 'found out', pulsesPerMetre: '' };
}

/** Why a draft cannot be used, or null. */
export function faultOf({ columns, pulsesPerMetre }: ColumnDraft): string | null {
  const count = (role: ColumnRole) => columns.filter((each) => each.role === role).length;
  for (const role of ['position', 'lma', 'lf', 'speed', 'time'] as const) if (count(role) > 1) return `Two columns are marked ${role}: each quantity has one column.`;
  if (count('lma') === 0 && count('lf') === 0) return 'Mark the LMA or the LF column: without either there is nothing to judge.';
  if (count('position') === 0 && (count('speed') === 0 || count('time') === 0)) return 'Mark the position column, or both speed and time to work it out from.';
  if (columns.some((each) => each.role === 'position' && each.unit === 'counts') && !(Number(pulsesPerMetre.replace(',', '.')) > 0)) return 'Positions in counts need the pulses per metre of the encoder.';
  return null;
}

/** The draft in the words of record.json. A column whose name is missing or not its own is given by its number, from 1. */
export function columnsOf(draft: ColumnDraft, names: readonly string[], hasHeader: boolean): RunColumns {
  const chosen: Record<string, unknown> = {};
  draft.columns.forEach(({ role, unit }, index) => {
    if (role === 'unused') return;
    const own = hasHeader && names[index] !== '' && names.filter((name) => name === names[index]).length === 1;
    const name = own ? names[index] : index + 1;
    if (role === 'time') {
      chosen.time = typeof name === 'number' ? String(name) : { name, ...(unit === '' ? {} : { unit }) };
      return;
    }
    chosen[role] = {
      name, ...(unit === '' ? {} : { unit }),
      ...(role === 'lma' && draft.lossIs !== 'found out' ? { loss_is: draft.lossIs } : {}),
      ...(role === 'position' && unit === 'counts' ? { pulses_per_metre: Number(draft.pulsesPerMetre.replace(',', '.')) } : {}),
    };
  });
  return chosen as RunColumns;
}
