// One type check per runtime, so that a DOM or Node name used in the wrong room fails the build.
import { spawnSync } from 'node:child_process';

const rooms = ['analysis', 'main', 'renderer', 'tests'];
let failed = 0;
for (const room of rooms) {
  const check = spawnSync(process.execPath, ['node_modules/typescript/bin/tsc', '-p', `${room}/tsconfig.json`], { stdio: 'inherit' });
  if (check.status !== 0) failed += 1;
}
process.exit(failed === 0 ? 0 : 1);
