import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const root = fileURLToPath(new URL('../..', import.meta.url))
const alias = { '@': root.replace(/\/$/, '') }

/** Three rooms of tests: pure code, published checks, and whatever needs a real PostgreSQL. */
export default defineConfig({
  root,
  resolve: { alias },
  test: {
    // npm test coverage: what keeps jars safe and traceable has no line and no branch that no test walks.
    coverage: {
      provider: 'v8',
      include: [
        'shared/process/**',
        'shared/trace/**',
        'shared/floor/process-clock.ts',
        'shared/floor/floor-clock.ts',
        'shared/floor/load-process.ts',
      ],
      exclude: ['**/README.md'],
      reporter: [['text', { skipFull: true }]],
      thresholds: { 100: true },
    },
    projects: [
      {
        resolve: { alias },
        test: {
          name: 'unit',
          root,
          include: ['tests/shared/**/*.test.ts', 'tests/rules/**/*.test.ts', 'tests/app/**/*.test.tsx'],
          testTimeout: 60_000,
        },
      },
      {
        resolve: { alias },
        test: { name: 'published', root, include: ['tests/published/**/*.test.ts'], testTimeout: 60_000 },
      },
      {
        resolve: { alias: { ...alias, 'server-only': `${alias['@']}/tests/support/server-only.ts` } },
        test: {
          name: 'database',
          root,
          include: ['tests/lib/**/*.test.ts'],
          globalSetup: ['tests/support/database-setup.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
})
