import { contract } from './contract.ts';
import type { Answer, Argument, CallName } from './contract.ts';
import { browse, chooseFolder, forgetRecent, recentFolders, sampleFolders } from './operations/folders.ts';
import { addFile, appendJournal } from './operations/keep.ts';
import { closeFolder, openFolder } from './operations/open-folder.ts';
import type { Session } from './operations/shell.ts';
import { entryFor } from './operations/tokens.ts';

type Operations = { readonly [N in CallName]: (session: Session, argument: Argument<N>) => Promise<Answer<N>> };

const operations: Operations = {
  describeShell: async (session) => {
    const { shell } = session;
    const first = session.takeFirst();
    return { shell: shell.kind, version: shell.version, nativeDialogs: shell.nativeDialogs, user: shell.user, first: first === null ? null : entryFor(session, first) };
  },
  recentFolders, forgetRecent, sampleFolders, chooseFolder, browse, openFolder, closeFolder, appendJournal, addFile,
  printReport: async ({ shell }, { html }) => ({ saved: await shell.printReport(html) }),
};

export type Outcome = { readonly answer: unknown } | { readonly problem: string };

/**
 * The one way from the page into either shell: the name must be in the contract, the argument must fit its schema, and
 * so must the answer. Whatever goes wrong comes back as words for the user.
 */
export async function dispatch(session: Session, name: string, argument: unknown): Promise<Outcome> {
  if (!Object.hasOwn(contract, name)) return { problem: `there is no call named ${JSON.stringify(name).slice(0, 60)}` };
  const call = name as CallName;
  const checked = contract[call].argument.safeParse(argument);
  if (!checked.success) return { problem: `the argument of ${call} is not of the agreed form: ${checked.error.issues[0]?.message}` };
  try {
    const run = operations[call] as (session: Session, argument: unknown) => Promise<unknown>;
    const answer = contract[call].answer.safeParse(await run(session, checked.data));
    return answer.success ? { answer: answer.data } : { problem: `Strandbook's own answer to ${call} is not of the agreed form: ${answer.error.issues[0]?.message}` };
  } catch (error) {
    return { problem: error instanceof Error ? error.message : String(error) };
  }
}
