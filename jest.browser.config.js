import { shared } from "./jest.config.js";

// Tests that open a built page in a browser: `npm run build` first, or `npm test`, which does both.
export default {
  ...shared,
  testMatch: ["<rootDir>/test/browser/**/*.browser.test.ts"],
  testTimeout: 60_000,
  maxWorkers: 1, // each test file starts a browser, and those in test/browser/timed hold a page to a time
};
