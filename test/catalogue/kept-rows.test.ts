/** Rows of Cars that are kept between readings, where two of them could be taken for one. */
import { parseCars } from "../../src/catalogue/parse-cars";

jest.mock("../../src/catalogue/content-key", () => ({ ...jest.requireActual<object>("../../src/catalogue/content-key"), contentHash: () => "alike" }));

const HEADINGS = ["Car", "Master"];
const masters = (rows: readonly (readonly unknown[])[]): unknown[] => parseCars(HEADINGS, rows).cars.map(({ car }) => car?.master);

test("rows whose keys happen to be alike are told apart by their cells", () => {
  expect(masters([["A", "MC-1"], ["B", "MC-2"]])).toEqual(["MC-1", "MC-2"]);
  expect(masters([["B", "MC-2"], ["A", "MC-1"]])).toEqual(["MC-2", "MC-1"]);
});

test("a row that its owner changed in place is read anew", () => {
  const row = ["C", "MC-3"];
  expect(masters([row])).toEqual(["MC-3"]);
  row[1] = "MC-4";
  expect(masters([row])).toEqual(["MC-4"]);
});
