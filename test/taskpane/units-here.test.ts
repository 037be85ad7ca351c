import { unitsOffered } from "../../src/taskpane/set-up/units-here";

// Which regions have not gone metric: common practice, no source.
test.each([
  ["en-US", "us"], ["en-LR", "us"], ["my-MM", "us"], ["es-US", "us"],
  ["de-DE", "metric"], ["fr-CA", "metric"], ["en-CA", "metric"], ["en-GB", "metric"], ["en-AU", "metric"], ["es-419", "metric"],
])("where %s is read, %s units are offered first", (locale, units) => expect(unitsOffered(locale)).toBe(units));

test("a language alone is taken for the region where most of its readers are", () => {
  expect(["en", "de", "fr"].map(unitsOffered)).toEqual(["us", "metric", "metric"]);
});

test("where nothing is known of the reader, inches stay first", () => {
  expect([undefined, "", "not a tag"].map(unitsOffered)).toEqual(["us", "us", "us"]);
});
