import { HostFailure } from './host.ts';
import type { Host } from './host.ts';

/** The page alone, without a shell: nothing is kept, and folders come only by drop or by the browser's own picker. */
export function pageHost(): Host {
  return {
    hasShell: false,
    call: (name) => Promise.reject(new HostFailure(`"${name}" needs the Strandbook program, and this page stands alone.`, 'Drop a rope folder here, or start the program (npm start) to open folders and keep decisions.')),
    folderOfDrop: () => Promise.resolve(null),
  };
}
