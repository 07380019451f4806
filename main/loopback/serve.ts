import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { closeAllFolders } from '../operations/open-folder.ts';
import { projectRoot } from '../product.ts';
import { startLoopback } from './server.ts';
import { loopbackSession } from './session.ts';

/** Entry of the loopback shell: prints its address as the first line and serves until it is told to stop. */
const { values } = parseArgs({ options: { port: { type: 'string', default: '0' }, open: { type: 'string' } } });
const session = loopbackSession(projectRoot(), undefined, values.open === undefined ? null : resolve(values.open));
const loopback = await startLoopback(session, join(projectRoot(), 'dist', 'renderer'), Number(values.port));
process.stdout.write(`${loopback.address}\n`);

let stopping = false;
/** A terminal sends Ctrl-C to every process of the group, and npm sends it on: the second one must not cut the first one's work short. */
function stop(): void {
  if (stopping) return;
  stopping = true;
  void closeAllFolders(session).then(() => loopback.close()).then(() => process.exit(0));
}
process.on('SIGINT', stop).on('SIGTERM', stop).on('SIGHUP', stop);
