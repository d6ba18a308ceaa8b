import { defineConfig, devices } from '@playwright/test';

const PORT = 4329;

/** The system's Chromium: no browser is downloaded. WebGL is drawn in software, so that the folded view is tested too. */
const launchOptions = {
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
};

export default defineConfig({
  testDir: 'e2e',
  timeout: 60_000,
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  outputDir: 'test-results/e2e',
  reporter: [['list'], ['json', { outputFile: 'test-results/e2e.json' }]],
  use: { ...devices['Desktop Chrome'], viewport: { width: 1440, height: 900 }, baseURL: `http://127.0.0.1:${PORT}/`, launchOptions, locale: 'en-GB' },
  webServer: { command: `npx vite preview --host 127.0.0.1 --port ${PORT} --strictPort`, url: `http://127.0.0.1:${PORT}/`, reuseExistingServer: false },
});
