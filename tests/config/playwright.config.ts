import { defineConfig } from '@playwright/test'

const baseURL = process.env.TEST_BASE_URL
if (!baseURL)
  throw new Error('Run the journeys with: npm test browser. Against an app that already runs, set TEST_BASE_URL and TEST_DATA_DIR.')

/** Journeys of people through the served app, one after another: they share one database. */
export default defineConfig({
  testDir: '../e2e',
  testMatch: '**/*.test.ts',
  outputDir: '../../test-results',
  workers: 1,
  fullyParallel: false,
  forbidOnly: true,
  retries: 0,
  timeout: 180_000,
  expect: { timeout: 10_000 },
  reporter: process.env.PLAYWRIGHT_JSON_OUTPUT_FILE ? [['list'], ['json']] : [['list']],
  use: {
    baseURL,
    locale: 'en-US',
    timezoneId: 'America/New_York',
    actionTimeout: 20_000,
    trace: 'retain-on-failure',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
      args: [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
})
