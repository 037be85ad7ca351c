import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";

const projectFolder = resolve(__dirname, "../..");

// THIRD-PARTY.md promises this; it needs the build and no browser, and so runs beside the tests that do.
test.each([
  ["o_spreadsheet.iife.js", "@odoo/o-spreadsheet/dist/o_spreadsheet.iife.js"],
  ["o_spreadsheet.css", "@odoo/o-spreadsheet/dist/o_spreadsheet.css"],
  ["o_spreadsheet.xml", "@odoo/o-spreadsheet/dist/o_spreadsheet.xml"],
  ["owl.iife.js", "@odoo/owl/dist/owl.iife.js"],
  ["LICENSE.o-spreadsheet.txt", "@odoo/o-spreadsheet/LICENSE"],
  ["LICENSE.owl.txt", "@odoo/owl/LICENSE"],
])("the built page has %s as its authors published it", (built, published) => {
  const path = `${projectFolder}/dist/embedded/grid/${built}`;
  expect(existsSync(path) && readFileSync(path).equals(readFileSync(`${projectFolder}/node_modules/${published}`))).toBe(true);
});

test.each(["addin", "embedded"])("dist/%s has the licence texts of what was bundled", (part) => {
  const text = readFileSync(`${projectFolder}/dist/${part}/third-party-licences.txt`, "utf8");
  expect(text).toMatch(/^zod \d/m);
  expect(text).toMatch(/^big\.js \d/m);
  expect(text).not.toMatch(/^@odoo\//m);
});
