import { defineConfig } from 'vitest/config';

/** Tests that drive real Electron; build/test.mjs runs them where its binary is present and says why where it is not. */
export default defineConfig({
  test: { include: ['tests/desktop/electron/**/*.desktop.ts'], testTimeout: 60_000, hookTimeout: 60_000, fileParallelism: false },
});
