/** What cars share never changes what is said of one of them. */
import fc from "fast-check";
import { freshCatalogue, shopCars, unlikeCars } from "../../bench/workload";
import { demoTables } from "../../src/catalogue/demo";
import { parseCars } from "../../src/catalogue/parse-cars";
import type { Car } from "../../src/core/car";
import { nameKey, type Catalogue } from "../../src/core/catalogue";
import { equippedAs } from "../../src/core/equipment";
import { reportOn, type CarReport } from "../../src/core/report";
import { balanceTable } from "../../src/functions/balance-tables";
import { property } from "./seeded";

const shared = freshCatalogue(0);
const parsed = (headings: readonly unknown[], rows: readonly (readonly unknown[])[]): Car[] => parseCars(headings, rows).cars.flatMap(({ car }) => car ?? []);
const [shop, unlike] = [shopCars(400, 40), unlikeCars(200)];
const demo = parsed(demoTables[0]?.headings ?? [], demoTables[0]?.rows ?? []);
const cars: readonly Car[] = [...demo, ...parsed(shop.headings, shop.rows), ...parsed(unlike.headings, unlike.rows)];

/** A car of the shop, of another year, with or without its platform. */
const anyCar = fc.record({ car: fc.constantFrom(...cars), year: fc.option(fc.integer({ min: 1940, max: 1999 }), { nil: undefined }), platform: fc.boolean(), name: fc.constantFrom("Car 5", "$&", "Harrow 4 Saloon", "MC-1", "") })
  .map(({ car, year, platform, name }): Car => ({ ...car, year, platform: platform ? car.platform : undefined, name: name === "" ? car.name : name, customer: `${name} and sons` }));

/** The same catalogue with nothing remembered. A car that Joins speaks of keeps its name throughout: here it does, with no joint stated. */
const aloneFor = (car: Car): Catalogue => ({ ...shared, joins: new Map([...shared.joins, [nameKey(car.name), shared.joins.get(nameKey(car.name)) ?? []]]) });

const plain = (report: CarReport): unknown => JSON.parse(JSON.stringify(report, (_, value: unknown) => (value instanceof Map || value instanceof Set ? [...(value as Iterable<unknown>)] : value)));

property("a report made beside hundreds of others says what one made alone says", 15, fc.array(anyCar, { minLength: 1, maxLength: 4 }), (some) => {
  for (const car of some) expect(plain(reportOn(shared, car))).toEqual(plain(reportOn(aloneFor(car), car)));
});

test("cars alike but for name, customer, notes and a year that nothing turns on share what is known of them", () => {
  const [car] = demo;
  if (!car) throw new Error("the demo has no car");
  expect(equippedAs(shared, { ...car, name: "other", customer: "other", notes: "other" })).toBe(equippedAs(shared, car));
  expect(equippedAs(shared, { ...car, scope: "rear" })).not.toBe(equippedAs(shared, car));
  expect(equippedAs(shared, { ...car, accepted: new Map([["metering-missing", "said so"]]) })).not.toBe(equippedAs(shared, car));
});

test("the years of a set part the cars of its platform and those of none, and no others", () => {
  const [car] = demo;
  if (!car) throw new Error("the demo has no car");
  const at = (platform: string | undefined, year: number): unknown => equippedAs(shared, { ...car, platform, year });
  const bounds = shared.lineSets.flatMap(({ platform, firstYear, lastYear }) => [firstYear, lastYear === undefined ? undefined : lastYear + 1].flatMap((year) => (year === undefined ? [] : [{ platform, year }])));
  expect(bounds.length).toBeGreaterThan(3);
  const turnsOn = (platform: string, year: number): boolean =>
    year === shared.settings.dualCircuitRuleYear || bounds.some((one) => nameKey(one.platform) === nameKey(platform) && one.year === year) || [shared.platforms.get(nameKey(platform))].some((one) => one?.firstYear === year || (one?.lastYear ?? 0) + 1 === year);
  for (const { platform, year } of bounds) {
    for (const one of [platform, undefined]) expect({ one, year, same: at(one, year - 1) === at(one, year) }).toEqual({ one, year, same: false });
    for (const { name } of shared.platforms.values()) expect({ name, year, same: at(name, year - 1) === at(name, year) }).toEqual({ name, year, same: !turnsOn(name, year) });
  }
});

test("BALANCE of many rows is what each row answers alone", () => {
  const rows = [...shop.rows.slice(0, 60), ...unlike.rows.slice(0, 60).map(([name, ...rest]) => [`${name} of its own`, ...rest])];
  const [, ...together] = balanceTable(shared, [[shop.headings], rows]);
  expect(rows.flatMap((row) => balanceTable({ ...shared }, [[shop.headings], [row]]).slice(1)).map((row) => row.slice(1))).toEqual(together.map((row) => row.slice(1)));
});
