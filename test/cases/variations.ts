/** Other ways to type the same car: valves listed in another order, ports that say less. */
import type { RawTable } from "../../src/catalogue/table-spec";
import { withColumn, type Case } from "./read-case";

export type Variation = readonly [says: string, car: string, changed: Case];

/** The same case written in other ways that mean the same, so that the answer must be the same. */
export function variationsOf(one: Case): Variation[] {
  const { orders = {}, vary = {} } = one.expected;
  const listed = (from: Readonly<Record<string, readonly string[]>>) => Object.entries(from).flatMap(([car, lists]) => lists.map((valves) => ({ car, valves, cars: relisted(one.cars, car, valves) })));
  const plain = listed(orders).map(({ car, valves, cars }): Variation => [`${one.name}, ${car} listed as ${valves}`, car, { ...one, cars }]);
  const varied = listed(vary).flatMap(({ car, valves, cars }) =>
    Object.entries(waysToWritePorts).map(([says, write]): Variation => [`${one.name}, ${car} listed as ${valves}, ${says}`, car, { ...one, cars, catalogue: one.catalogue.map((table) => (table.name === "ports" ? write(table) : table)) }]));
  return [...plain, ...varied];
}

const relisted = (cars: RawTable, car: string, valves: string): RawTable => withColumn(cars, "Valves", (row) => (row["Car"] === car ? valves : row["Valves"]));

const blankGenders = (ports: RawTable): RawTable => withColumn(ports, "Gender", (row) => (row["Seat"] === "banjo" || row["Gender"] === "male" ? row["Gender"] : ""));
const servesAxles = (ports: RawTable): RawTable => withColumn(ports, "Serves", (row) => ({ LF: "front", RF: "front" })[String(row["Serves"])] ?? row["Serves"]);
const servesLeftOut = (ports: RawTable): RawTable => withColumn(ports, "Serves", () => "");

/** The inlets say which circuit they are on, the outlets only which wheels they serve. */
const circuitsOfInletsOnly = (ports: RawTable): RawTable =>
  withColumn(ports, "Circuit", (row) => (row["Component"] !== "MASTER" && row["Flow"] === "out" && row["Serves"] !== "any" ? "" : row["Circuit"]));

const waysToWritePorts: Readonly<Record<string, (ports: RawTable) => RawTable>> = {
  "ports as they are": (ports) => ports,
  "fronts serving the axle": servesAxles,
  "nothing said about what ports serve": servesLeftOut,
  "outlets saying only what they serve": circuitsOfInletsOnly,
  "genders left blank": blankGenders,
  "genders left blank and nothing said about what ports serve": (ports) => blankGenders(servesLeftOut(ports)),
};
