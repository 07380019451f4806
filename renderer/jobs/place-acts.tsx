import { commandNamed } from '../state/named-command.ts';
import { CommandButton } from '../ui/command-button.tsx';

const ACTS = ['former-place', 'next-place', 'accept-place', 'set-aside-place', 'relabel-place', 'add-note'] as const;
const WORDS: Record<(typeof ACTS)[number], string> = { 'former-place': 'Former', 'next-place': 'Next', 'accept-place': 'Accept', 'set-aside-place': 'Set aside', 'relabel-place': 'Relabel', 'add-note': 'Note' };

/** Going through the places where the list stands in a narrow column. */
export function PlaceActs() {
  return (
    <div className="place-acts place-acts-narrow" role="group" aria-label="Decide on places">
      {ACTS.map((name) => <CommandButton key={name} command={commandNamed(name)}>{WORDS[name]} <kbd>{commandNamed(name).keys[0]}</kbd></CommandButton>)}
    </div>
  );
}
