import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'src',
          environment: 'node',
          setupFiles: ['tests/setup.ts'],
          include: ['tests/{unit,reference,property}/**/*.test.ts'],
          // Hundreds of random flights a property: generous, since nothing here asserts time.
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'server',
          environment: 'node',
          setupFiles: ['tests/setup.ts'],
          include: ['tests/server/**/*.test.ts'],
          testTimeout: 20_000,
        },
      },
      {
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
