// Unit and contract tests, in Node. Tests that need a browser have jest.browser.config.js.
export const shared = {
  testEnvironment: "node",
  transform: {
    "^.+\\.m?[jt]s$": [
      "@swc/jest",
      { jsc: { parser: { syntax: "typescript" }, target: "es2022" }, sourceMaps: "inline" },
    ],
  },
  // These packages ship ES modules only, and jest runs CommonJS.
  transformIgnorePatterns: ["/node_modules/(?!(?:.*/)?(?:strip-bom|uuid|@microsoft/app-manifest)/)"],
  // The bundler makes a style sheet's import its address; without a bundler a name stands for it.
  moduleNameMapper: { "\\.css$": "<rootDir>/test/style-sheet-address.ts" },
  // Looking a global up inside jest's sandbox takes a hundred times as long as outside; these are handed to each module instead.
  sandboxInjectedGlobals: ["Math", "Number", "Infinity", "Object", "Array", "Map", "Set", "String", "JSON", "Error", "RegExp", "Symbol", "Promise", "WeakMap", "isNaN", "parseInt", "parseFloat", "Uint8Array", "Float64Array", "Int32Array"],
  modulePathIgnorePatterns: ["<rootDir>/dist/", "<rootDir>/test-output/"],
};

export default {
  ...shared,
  testMatch: ["<rootDir>/test/**/*.test.ts"],
  testPathIgnorePatterns: ["/node_modules/", "\\.browser\\.test\\.ts$"],
  maxWorkers: 2,
  workerIdleMemoryLimit: "1GB", // a process that has kept much spends its time on collecting it
};
