/** Where a finding is marked, by the words of its place; the places are those that the rules of src/core/checks write. */
import { parseCars } from "../../../src/catalogue/parse-cars";
import { parseCatalogue } from "../../../src/catalogue/parse-catalogue";
import { demoTables } from "../../../src/catalogue/demo";
import { finding, type Finding } from "../../../src/core/finding";
import { reportOn } from "../../../src/core/report";
import { faultsOf } from "../../../src/taskpane/drawing/faults";

const { catalogue } = parseCatalogue(demoTables.filter(({ name }) => name !== "Cars"));
const carsTable = demoTables.find(({ name }) => name === "Cars");

function assemblyOf(name: string) {
  const row = parseCars(carsTable?.headings ?? [], carsTable?.rows ?? []).cars.find((one) => one.name === name);
  if (!row?.car) throw new Error(`The demo has no ${name}.`);
  return reportOn(catalogue, row.car).assembly;
}

const at = (place: string): Finding => finding("data-missing", { place, seen: "seen" });

/** Car 12 has HV-1 and CV-L in the front line, PV-F in the rear one; Car 6 has PV-M in both circuits; Car 20 has BLK-5W with one outlet left. */
test.each([
  ["Car 12", "HV-1 and CV-L, to LF, RF", ["part|HV-1", "part|CV-L"]],
  ["Car 12", "CV-L Rear out", ["port|CV-L|Rear out"]],
  ["Car 12", "LF, RF", ["wheel|LF", "wheel|RF"]],
  ["Car 12", "LR, RR (rear circuit)", ["wheel|LR", "wheel|RR"]],
  ["Car 12", "DR-10, DC-1", ["wheel|LR", "wheel|RR", "wheel|LF", "wheel|RF"]],
  ["Car 12", "HOSE-FC@LF In", ["wheel|LF"]],
  ["Car 12", "HOSE-R", ["part|HOSE-R"]],
  ["Car 12", "rear circuit", ["circuit|rear"]],
  ["Car 12", "front circuit", ["circuit|front"]],
  ["Car 12", "both circuits", ["car"]],
  ["Car 12", "Cars: Valves", ["car"]],
  ["Car 12", "LS-H4-EARLY", ["car"]],
  ["Car 12", "SW-PD", ["car"]],
  ["Car 6", "PV-M", ["part|PV-M@1", "part|PV-M@2"]],
  ["Car 6", "PV-M@2 In", ["port|PV-M@2|In"]],
  ["Car 20", "BLK-5W: Out 4", ["port|BLK-5W|Out 4"]],
  ["Car 20", "BLK-5W: Out 3, Out 4", ["port|BLK-5W|Out 3", "port|BLK-5W|Out 4"]],
])("%s: %s", (car, place, expected) => {
  expect([...(faultsOf(assemblyOf(car), [at(place)])[0]?.on ?? [])].sort()).toEqual([...expected].sort());
});

test("a joint is marked on its line", () => {
  const assembly = assemblyOf("Car 14");
  const index = assembly.joints.findIndex(({ from, to }) => from.port.name === "Front out" && to.port.name === "Rear in");
  expect(faultsOf(assembly, [at("MC-1 Front out → CV-L Rear in")])[0]?.on).toEqual([`line|${index}`]);
});

test("accepted and switched-off findings have no letter, and letters go on after z", () => {
  const open = Array.from({ length: 28 }, () => at("HV-1"));
  const assembly = assemblyOf("Car 12");
  expect(faultsOf(assembly, [{ ...at("HV-1"), standing: "accepted" }, { ...at("HV-1"), standing: "off" }])).toEqual([]);
  expect(faultsOf(assembly, open).map(({ letter }) => letter).slice(24)).toEqual(["y", "z", "aa", "ab"]);
});
