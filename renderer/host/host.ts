import { contract } from '../../main/contract.ts';
import type { Answer, Argument, CallName, FolderEntry } from '../../main/contract.ts';

/** What the page knows of its shell. It never asks which one it is, only what can be done. */
export interface Host {
  /** Sends one request of the contract and checks the answer; rejects with HostFailure. */
  call<N extends CallName>(name: N, argument: Argument<N>): Promise<Answer<N>>;
  /** The folder entry of a dropped directory, or null where the shell cannot know its path. */
  folderOfDrop(files: readonly File[]): Promise<FolderEntry | null>;
  /** False where the page stands alone: folders can then only be dropped or picked, and decisions cannot be kept. */
  readonly hasShell: boolean;
}

/** A request to the shell that did not work: what happened and what to do. */
export class HostFailure extends Error {
  readonly remedy: string;
  constructor(what: string, remedy: string) {
    super(what);
    this.name = 'HostFailure';
    this.remedy = remedy;
  }
}

/** Checks what a shell answered against the contract; a shell of another version must not fill the page with half-right data. */
export function checkAnswer<N extends CallName>(name: N, answer: unknown): Answer<N> {
  const checked = contract[name].answer.safeParse(answer);
  if (!checked.success) {
    const first = checked.error.issues[0];
    throw new HostFailure(`The answer to "${name}" is not as agreed (${first.path.join('.') || 'whole'}: ${first.message}).`, 'Reload the window; if it happens again, page and program are of different versions: install both anew.');
  }
  return checked.data as Answer<N>;
}
