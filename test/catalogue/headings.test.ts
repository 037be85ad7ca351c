import { mistypedHeadings } from "../../src/catalogue/headings";
import { sayTableError } from "../../src/catalogue/table-error";
import { carsTable } from "../../src/catalogue/tables/cars";
import { lengthsTable } from "../../src/catalogue/tables/lengths";

const told = (headings: readonly string[]): readonly string[] => mistypedHeadings(carsTable, headings).map(sayTableError);

test.each([
  ["a letter left out", "Mster"],
  ["a letter put in", "Masster"],
  ["a wrong letter", "Mastar"],
  ["two letters changed about", "Matser"],
])("%s in a heading is told with the heading that the table lacks", (_, heading) =>
  expect(told(["Car", "Platform", heading])).toEqual([`Cars headings, Master: read "${heading}"; accepted: Master.`]));

test("where the column is there, a heading like it is the user's own", () => expect(told(["Car", "Master", "Masters"])).toEqual([]));

test("two slips, short words, blanks and words of the user's own are left alone", () =>
  expect(told(["Car", "Mstr", "Yaer", "", "Colour", "Booked on", "Our number"])).toEqual([]));

test("a unit in brackets is no part of the slip", () =>
  expect(mistypedHeadings(lengthsTable, ["Platform", "From", "To", "Lenght (in)"]).map(sayTableError)).toEqual([
    'Lengths headings, Length: read "Lenght (in)"; accepted: Length (in), Length (ft), Length (mm), Length (cm) or Length (m).',
  ]));
