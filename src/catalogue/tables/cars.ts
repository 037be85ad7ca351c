/** Cars: one row a customer's car. Read apart from the catalogue, and a cell that cannot be read never takes its row along. */
import { FLUIDS, SCOPES, type Car, type ValveSetting } from "../../core/car";
import { listOf, numberOf, textOf, wordKey } from "../cell";
import { blankMeans, choice, choices, column, list, name, Refusal, text, yesNo, year, type CellReader } from "../column";
import { table } from "../table-spec";
import { FLUID_WORDS, listedPart, listedParts, materials } from "../trade-columns";
import { pressure, type Unit } from "../unit";
import { figuresOf, platformFigureColumns } from "./platforms";
import type { Pascals } from "../../core/quantity";

const UNREDUCED = new Set(["none", "open", "no reduction"]);

/** The set split of an adjustable valve: a pressure in the heading's unit, or a word for wound right out. */
const readSetting: CellReader<ValveSetting> = (raw, unit) => {
  if (UNREDUCED.has(wordKey(textOf(raw) ?? ""))) return "no reduction";
  const number = numberOf(raw);
  return number !== undefined && number > 0 && unit ? { split: (unit as Unit<Pascals>).from(number) } : new Refusal();
};

/** `code: reason; code: reason`: the findings accepted for this car, each with why. */
const readAccepted: CellReader<ReadonlyMap<string, string>> = (raw) => {
  const pairs = listOf(textOf(raw) ?? "").map((one) => /^([^:]+):\s*(.+)$/.exec(one));
  return pairs.every((pair) => pair !== null) ? new Map(pairs.map((pair) => [(pair[1] ?? "").trim().toLowerCase(), (pair[2] ?? "").trim()])) : new Refusal();
};

export const carsTable = table({
  name: "Cars",
  holds: "one customer's car",
  columns: {
    name: name("Car", "a name of its own for each car"),
    customer: text("Customer"),
    platform: text("Platform"),
    year: year("Year"),
    frontBrake: text("Front brake"),
    rearBrake: text("Rear brake"),
    master: text("Master"),
    booster: listedPart("Booster"),
    valves: listedParts("Valves"),
    hoses: listedParts("Hoses"),
    materials: materials("Material"),
    scope: blankMeans(choice("Scope", SCOPES), "all", "all"),
    conversion: yesNo("Conversion"),
    fluids: choices("Fluid", FLUIDS, FLUID_WORDS),
    valveSetting: column("Valve split set", "a pressure above 0, or none when wound out to no reduction", readSetting, { quantity: pressure }),
    supply: list("Supply", "what the quote sells (several are split by ;)"),
    accepted: blankMeans(column("Accepted", "code: reason (several are split by ;)", readAccepted), new Map<string, string>(), "none"),
    notes: text("Notes"),
    ...platformFigureColumns,
  },
  knownBy: [["name"], ["master", "frontBrake", "rearBrake"], ["valves", "platform", "hoses"]],
  toCore: (row): Car => ({
    name: row.name,
    customer: row.customer ?? "",
    platform: known(row.platform),
    year: row.year,
    brakes: { front: known(row.frontBrake), rear: known(row.rearBrake) },
    master: known(row.master),
    booster: row.booster,
    valves: row.valves,
    hoses: row.hoses,
    material: row.materials[0],
    otherMaterials: row.materials.slice(1),
    scope: row.scope,
    conversion: row.conversion,
    fluids: row.fluids,
    valveSetting: row.valveSetting,
    supply: row.supply,
    accepted: row.accepted,
    notes: row.notes ?? "",
    platformFigures: figuresOf(row),
  }),
});

/** A `?` says that nobody knows, wherever it stands. */
const known = (typed: string | undefined): string | undefined => (typed === "?" ? undefined : typed);
