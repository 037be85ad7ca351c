/** Money and safety on hostile catalogues: what must hold whatever the tables say. */
import Big from "big.js";
import fc from "fast-check";
import { parseCars } from "../../src/catalogue/parse-cars";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import type { Adapter, Catalogue } from "../../src/core/catalogue";
import { joinFaces, type AdapterStep } from "../../src/core/fittings";
import { opposite, type JointFace } from "../../src/core/joint";
import { quoteFor } from "../../src/core/quote";
import { reportOn, type CarReport } from "../../src/core/report";
import { rememberCatalogue } from "../../src/functions/reports";
import { problemsOfRow } from "../../src/workbook/row-problems";
import { ask } from "./answers";
import { CAR_HEADINGS, hostileCars, hostileCatalogue } from "./hostile-tables";
import { hardUse, type Counter } from "./rows";

const shop = fc.tuple(hostileCatalogue, hostileCars(1, 30));
type Shop = Parameters<Parameters<typeof hardUse<typeof shop extends fc.Arbitrary<infer T> ? T : never>>[3]>[0];

/** The reports of a shop's cars, in a catalogue that may be changed first. */
function reportsOf([tables, rows]: Shop, change: (catalogue: Catalogue) => Catalogue = (same) => same): { readonly catalogue: Catalogue; readonly reports: readonly CarReport[] } {
  const catalogue = change(parseCatalogue(tables).catalogue);
  const reports = parseCars(CAR_HEADINGS, rows).cars.flatMap((row) => (row.car ? [reportOn(catalogue, row.car, problemsOfRow(row))] : []));
  return { catalogue, reports };
}

const count = (counter: Counter, [, rows]: Shop): void => { counter.rows += rows.length; };

hardUse("a quote's totals are the sums of its lines, to the last digit of the shop's rounding", 0.005, shop, (given, counter) => {
  const { catalogue, reports } = reportsOf(given);
  for (const report of reports) {
    const { lines, totals, missing } = quoteFor(catalogue, report);
    expect(totals === undefined).toBe(missing.length > 0);
    if (!totals) continue;
    const subtotal = lines.reduce((sum, { amount }) => sum.plus(amount ?? NaN), Big(0));
    expect(subtotal.eq(totals.subtotal)).toBe(true);
    expect(Big(totals.subtotal).minus(totals.discount).plus(totals.freight).plus(totals.tax).eq(totals.total)).toBe(true);
    expect(totals.deposit).toBeLessThanOrEqual(Math.max(0, totals.total));
  }
  count(counter, given);
});

hardUse("an open stop always makes the verdict stop and holds the quote", 0.005, shop, (given, counter) => {
  const [tables, rows] = given;
  const { key } = rememberCatalogue(parseCatalogue(tables).catalogue);
  const tableOf = (name: string): readonly (readonly unknown[])[] => {
    const answer = ask(name, [[CAR_HEADINGS], rows, key], () => [...rows.flat(), ...tables.flatMap((table) => table.rows.flat())]);
    if ("refused" in answer) throw new Error(answer.refused);
    return answer.rows.slice(1);
  };
  const [checks, verdicts, quotes] = [tableOf("CHECK"), tableOf("VERDICT"), tableOf("QUOTE")];
  const stopped = new Set(checks.filter((row) => row[2] === "stop").map(([car]) => car));
  for (const [car, verdict] of verdicts) expect({ car, isStop: verdict === "stop" }).toEqual({ car, isStop: stopped.has(car) });
  const held = new Set(quotes.filter(([, section]) => section === "hold").map(([car]) => car));
  expect([...held].sort()).toEqual([...stopped].sort());
  count(counter, given);
});

hardUse("the units that are shown change no verdict, finding, question, set or price", 0.005, shop, (given, counter) => {
  const inUnits = (units: "us" | "metric"): unknown[] => reportsOf(given, (catalogue) => ({ ...catalogue, key: `${catalogue.key} ${units}`, settings: { ...catalogue.settings, units } })).reports
    .map(({ verdict, findings, questions, price, runs, kit }) => [verdict, findings.map(({ code, severity, standing }) => `${code} ${severity} ${standing}`), questions.map(({ table, column, subject }) => `${table} ${column} ${subject}`), price, runs.map(({ length, tube }) => [length, tube]), kit.chosen?.cost]);
  expect(inUnits("metric")).toEqual(inUnits("us"));
  count(counter, given);
});

const costOf = (steps: readonly AdapterStep[] | undefined, jointCost: number): number | undefined => steps?.reduce((sum, { adapter }) => sum + (adapter.price ?? 1e6) + jointCost, 0);

hardUse("what joins one port to another joins them back, at the same cost", 0.005, fc.tuple(hostileCatalogue, fc.nat(), fc.nat()), ([tables, one, other], counter) => {
  const { components, nuts, adapters, settings } = parseCatalogue(tables).catalogue;
  const faces = [...components.values()].flatMap(({ ports }) => ports.flatMap(({ thread, seat, gender }): JointFace[] => (thread && seat ? [{ thread, seat, gender: gender ?? "female" }] : [])));
  const stock = { nuts, adapters, jointCost: settings.jointCost };
  const [a, b] = [faces[one % faces.length], faces[other % faces.length]];
  counter.rows += tables.length;
  if (!a || !b) return;
  const [there, back] = [costOf(joinFaces(stock, a, b), settings.jointCost), costOf(joinFaces(stock, b, a), settings.jointCost)];
  expect(back === undefined).toBe(there === undefined);
  expect(back ?? 0).toBeCloseTo(there ?? 0, 6);
});

/** An adapter of one end's thread and seat to the same again: no joint needs it. */
const needless = ({ nuts }: Catalogue): Adapter[] => nuts.map(({ name, face }) => ({ name: `needless ${name}`, a: face, b: { ...face, gender: opposite(face.gender) }, price: 0 }));

hardUse("needless adapters on the shelf lower no price", 0.005, shop, (given, counter) => {
  const pricesOf = (change: (catalogue: Catalogue) => Catalogue): (number | undefined)[] => reportsOf(given, change).reports.map(({ price }) => price);
  const without = pricesOf((same) => same);
  const beside = pricesOf((catalogue) => ({ ...catalogue, key: `${catalogue.key} and more`, adapters: [...catalogue.adapters, ...needless(catalogue)] }));
  expect(beside).toEqual(without);
  count(counter, given);
});
