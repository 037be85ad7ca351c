import { readFileSync } from "node:fs";
import described from "../src/functions/functions.json";
import { exampleFormulas } from "../src/functions/examples";
import { pages } from "../scripts/docs/pages";

describe("the generated reference pages", () => {
  test.each(Object.entries(pages()))("%s is as the product is now (npm run docs writes it)", (path, text) => {
    expect(readFileSync(path, "utf8")).toBe(text);
  });

  test("every worksheet function has an example", () => {
    expect(Object.keys(exampleFormulas)).toEqual(described.functions.map(({ id }) => id));
  });
});
