/** What the catalogue's tests share: how a table is given, and how errors are read. */
import { parseCars } from "../../src/catalogue/parse-cars";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import { sayTableError, type TableError } from "../../src/catalogue/table-error";
import type { RawTable } from "../../src/catalogue/table-spec";

type Cell = unknown;

/** A table typed as text: headings split on `|`, one array for each row. */
export const tableOf = (headings: string, ...rows: readonly (readonly Cell[])[]): RawTable => ({ headings: headings.split("|").map((one) => one.trim()), rows });

export const errorsOf = (...tables: readonly RawTable[]): readonly string[] => parseCatalogue(tables).errors.map(sayTableError);

/** The catalogue of tables that must have no error. */
export function catalogueOf(...tables: readonly RawTable[]) {
  const { catalogue, errors } = parseCatalogue(tables);
  expect(errors.map(sayTableError)).toEqual([]);
  return catalogue;
}

/** The one car of a row given by heading, with its errors. */
export function carOf(row: Readonly<Record<string, Cell>>) {
  const { cars, headingErrors } = parseCars(["Car", ...Object.keys(row)], [["A", ...Object.values(row)]]);
  const [car] = cars;
  if (!car?.car || cars.length !== 1) throw new Error("the row made no car");
  return { car: car.car, errors: car.errors, says: said([...headingErrors, ...car.errors]) };
}

export const said = (errors: readonly TableError[]): readonly string[] => errors.map(sayTableError);
