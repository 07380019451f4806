import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { closeAllFolders } from '../operations/open-folder.ts';
import { projectRoot } from '../product.ts';
import { startLoopback } from './server.ts';
import { loopbackSession } from './session.ts';

/** Entry of the loopback shell: prints its address as the first line and serves until it is told to stop. */
const { values } = parseArgs({ options: { port: { type: 'string', default: '0' } } });
const session = loopbackSession(projectRoot());
const loopback = await startLoopback(session, join(projectRoot(), 'dist', 'renderer'), Number(values.port));
process.stdout.write(`${loopback.address}\n`);

const stop = (): void => void closeAllFolders(session).then(() => loopback.close()).then(() => process.exit(0));
process.once('SIGINT', stop).once('SIGTERM', stop);
