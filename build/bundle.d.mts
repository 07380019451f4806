/** What `npm run bench` may be asked for. */
export const BENCHES: string[];
/** Bundles the Node side where a source is newer; resolves to the folder of the bundles. */
export function ensureBundle(root: string): Promise<string>;
