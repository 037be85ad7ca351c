import { isOfYear, possibleSets, valvesKey } from "../../src/core/possible-sets";
import { carOf, catalogueOf, table, type CarCells } from "./workshop";

const catalogue = catalogueOf({
  more: [table("Set | Platform | First year | Last year | Valves | Front | Rear | Material",
    "EARLY | P | 1960 | 1967 | BLK; HO | disc | drum | mild steel",
    "LATER | P | 1968 | 1974 | CV | disc | drum | mild steel",
    "STAINLESS | P | 1968 | 1974 | CV | disc | drum | stainless",
    "DRUMS | P | 1960 | 1974 | BLK | drum | drum | mild steel",
    "ANY | P | | | ? | | | ",
    "OTHER | I | 1968 | 1975 | CV | disc | drum | mild steel")],
});
const possible = (cells: CarCells): string => possibleSets(catalogue, carOf({ Valves: "CV; TEE", ...cells })).map(({ name }) => name).join(" ");

test.each<[string, CarCells, string]>([
  ["everything known", {}, "LATER ANY"],
  ["the material not known", { Material: "" }, "LATER STAINLESS ANY"],
  ["the year not known", { Year: "" }, "LATER ANY"],
  ["a year before the set's", { Year: "1967" }, "ANY"],
  ["the valves not known", { Valves: "?" }, "LATER ANY"],
  ["valves and year not known", { Valves: "?", Year: "" }, "EARLY LATER ANY"],
  ["the platform not known", { Platform: "" }, "LATER ANY OTHER"],
  ["the platform in other letters", { Platform: "p " }, "LATER ANY"],
  ["the front brakes not known", { Valves: "BLK; TEE", "Front brake": "" }, "DRUMS ANY"],
  ["drums in front", { Valves: "BLK; TEE", "Front brake": "WF" }, "DRUMS ANY"],
  ["discs in front, where the only set for the block is for drums", { Valves: "BLK; TEE" }, "ANY"],
  ["the valves in another order", { Valves: "HO; TEE; BLK", Year: "1966" }, "EARLY ANY"],
  ["no valves at all", { Valves: "none" }, "ANY"],
])("with %s these sets are possible", (_, cells, names) => expect(possible(cells)).toBe(names));

test("a year at either end of a stretch is in it, an open end has no bound, and a year not known rules nothing out", () => {
  expect([1967, 1968, 1974, 1975].map((year) => isOfYear({ firstYear: 1968, lastYear: 1974 }, year))).toEqual([false, true, true, false]);
  expect([isOfYear({ firstYear: 1968 }, 2000), isOfYear({ lastYear: 1974 }, 1900), isOfYear({ firstYear: 1968, lastYear: 1974 }, undefined)]).toEqual([true, true, true]);
});

test("valves are compared without tees, unions and switches, without order and without regard to case; two of one are not one", () => {
  expect(valvesKey(catalogue, ["TEE", "ho", "BLK", "SW", "UN"])).toBe(valvesKey(catalogue, ["BLK", "HO"]));
  expect(valvesKey(catalogue, ["PV-ANY", "PV-ANY"])).not.toBe(valvesKey(catalogue, ["PV-ANY"]));
  expect(valvesKey(catalogue, ["TEE"])).toBe("");
});
