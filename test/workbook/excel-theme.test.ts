/** Light or dark, as Excel's own windows are. Grounds of its themes from memory; the colour words by what they are. */
import { officeTheme } from "../../src/workbook/excel/theme";

// #767676 is the darkest grey of the web whose contrast to white is 4.5 and more (WCAG 2.2, "contrast ratio"); #808080 is nearer to black.
test.each([
  ["#ffffff", "light"], ["#E6E6E6", "light"], ["#808080", "light"], ["#666666", "dark"], ["#262626", "dark"], ["000000", "dark"],
  ["", undefined], ["white", undefined],
])("a ground of %p is %p", (bodyBackgroundColor, theme) => {
  Object.assign(globalThis, { Office: { context: { officeTheme: { bodyBackgroundColor } } } });
  expect(officeTheme()).toBe(theme);
});

test("an Excel that says nothing of its theme leaves it to the system", () => {
  Object.assign(globalThis, { Office: { context: {} } });
  expect(officeTheme()).toBeUndefined();
});
