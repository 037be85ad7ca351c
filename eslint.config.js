import { fileURLToPath } from "node:url";
import eslint from "@eslint/js";
import officeAddins from "eslint-plugin-office-addins";
import tseslint from "typescript-eslint";

const here = fileURLToPath(new URL(".", import.meta.url));

/** Long files and functions hide what they do; blank lines and comments cost nothing. */
const sizes = {
  "max-lines": ["error", { max: 300, skipBlankLines: true, skipComments: true }],
  "max-lines-per-function": ["error", { max: 40, skipBlankLines: true, skipComments: true }],
  "max-params": ["error", 4],
};

const typed = {
  files: ["**/*.ts"],
  extends: [eslint.configs.recommended, ...tseslint.configs.strict, ...tseslint.configs.stylistic],
  languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: here } },
  rules: {
    "@typescript-eslint/await-thenable": "error",
    "@typescript-eslint/no-floating-promises": "error",
    "@typescript-eslint/no-misused-promises": "error",
    "@typescript-eslint/no-unnecessary-type-assertion": "error",
    "@typescript-eslint/no-unsafe-argument": "error",
    "@typescript-eslint/no-unsafe-assignment": "error",
    "@typescript-eslint/no-unsafe-return": "error",
    "@typescript-eslint/only-throw-error": "error",
    "@typescript-eslint/switch-exhaustiveness-check": ["error", { considerDefaultExhaustiveForUnions: true }],
    "@typescript-eslint/consistent-type-imports": ["error", { fixStyle: "inline-type-imports", disallowTypeAnnotations: false }],
    "@typescript-eslint/consistent-type-definitions": "off",
    "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
    eqeqeq: "error",
    "no-console": "error",
    "no-eval": "error",
    "no-new-func": "error",
  },
};

export default tseslint.config(
  { ignores: ["dist/", "test-output/", "node_modules/", "coverage/"] },
  { linterOptions: { reportUnusedDisableDirectives: "error" } },
  typed,
  { files: ["**/*.{js,mjs}"], rules: { eqeqeq: "error", "no-unused-vars": "error", "no-var": "error", "prefer-const": "error" } },
  { files: ["src/**/*.ts", "scripts/**/*.ts", "scripts/**/*.mjs", "webpack.config.js"], rules: sizes },
  // The arguments of a worksheet function are what its user types, so their number is not ours to cut.
  { files: ["src/functions/**/*.ts"], rules: { "max-params": "off" } },
  // Command-line programs answer on the console, and tests listen to it.
  { files: ["scripts/**", "bench/**", "test/**"], rules: { "no-console": "off" } },
  {
    // The plugin recognises the request context by its name, so name it `context` in these files.
    files: ["src/workbook/excel*.ts", "src/workbook/excel/**/*.ts", "src/taskpane/**/*.ts", "src/functions/**/*.ts"],
    plugins: { "office-addins": officeAddins },
    rules: {
      "office-addins/call-sync-after-load": "error",
      "office-addins/call-sync-before-read": "error",
      "office-addins/load-object-before-read": "error",
      "office-addins/no-context-sync-in-loop": "error",
      "office-addins/no-empty-load": "error",
      "office-addins/no-navigational-load": "error",
      "office-addins/no-office-initialize": "error",
    },
  },
  // Rules that read types take as long as the type check itself; before a commit that one runs beside, and they wait for the whole check.
  ...(process.env.LINT_WITHOUT_TYPES ? [tseslint.configs.disableTypeChecked] : []),
);
