import { defineConfig } from 'vitest/config';

/**
 * One process for all files: the knowledge and the engine are frozen data and pure functions, so nothing a test does can
 * reach another, and loading them once instead of for every file halves the time.
 */
export default defineConfig({
  test: { include: ['tests/**/*.test.ts'], pool: 'threads', isolate: false, testTimeout: 20_000, hookTimeout: 20_000 },
});
