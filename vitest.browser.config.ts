import { defineConfig } from 'vitest/config';

/** Tests that drive a real browser against the loopback twin; one at a time, since two cores are all there may be. */
export default defineConfig({
  test: { include: ['tests/browser/**/*.browser.ts'], testTimeout: 120_000, hookTimeout: 120_000, fileParallelism: false },
});
