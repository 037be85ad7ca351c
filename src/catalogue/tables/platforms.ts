/** Platforms: the cars as built, with the figures that the physics needs. */
import type { Platform, PlatformFigures } from "../../core/car";
import { inches } from "../../core/quantity";
import { choice, figure, name, quantity, yesNo, year, type Range } from "../column";
import { table, type Refuse, type RowOf } from "../table-spec";
import { axleShare, distance, split } from "../trade-columns";
import { length, mass, vacuum } from "../unit";

/** A master under the floor has its reservoir below the calipers, so this height may be negative. */
const HEIGHT: Range = { least: inches(-80), most: inches(80), says: "from -80 in to 80 in (-2032 to 2032 mm)" };

/** Figures of a platform, which a car's own row may state too. */
export const platformFigureColumns = {
  split: split("Split"),
  wheelbase: distance("Wheelbase"),
  mass: quantity("Weight", mass),
  frontShare: axleShare("Front share"),
  centreOfGravityHeight: distance("CG height"),
  ladenMass: quantity("Laden weight", mass),
  ladenFrontShare: axleShare("Laden front share"),
  ladenCentreOfGravityHeight: distance("Laden CG height"),
  tyreRadius: distance("Tyre radius", { aliases: ["Tire radius"] }),
  reservoirAboveCalipers: quantity("Reservoir above calipers", length, HEIGHT),
  pedalRatio: figure("Pedal ratio", { least: 1, most: 20, says: "from 1 to 20" }),
  pedalTravel: distance("Pedal travel"),
  vacuum: quantity("Vacuum", vacuum),
  driverSide: choice("Driver side", ["left", "right"], { lhd: "left", rhd: "right" }),
  drivelineParkingBrake: yesNo("Driveline parking brake"),
};

const FIGURES = Object.keys(platformFigureColumns) as readonly (keyof PlatformFigures)[];

/** The figures that a row states; the ones it leaves blank are absent. */
export const figuresOf = (row: RowOf<typeof platformFigureColumns>): Partial<PlatformFigures> =>
  Object.fromEntries(FIGURES.filter((figureName) => row[figureName] !== undefined).map((figureName) => [figureName, row[figureName]]));

export const yearColumns = { firstYear: year("First year", { aliases: ["From"] }), lastYear: year("Last year", { aliases: ["To"] }) };

export const platformsTable = table({
  name: "Platforms",
  holds: "one platform: a car as built",
  columns: { name: name("Platform"), ...yearColumns, ...platformFigureColumns, frequency: figure("Frequency") },
  knownBy: [["name"], ["firstYear", "lastYear", ...FIGURES]],
  toCore: (row, refuse): Platform => {
    refuseYears(row, refuse);
    return { name: row.name, firstYear: row.firstYear, lastYear: row.lastYear, frequency: row.frequency, figures: figuresOf(row) };
  },
});

/** A range of years runs forward. */
export function refuseYears(row: RowOf<typeof yearColumns>, refuse: Refuse<keyof typeof yearColumns>): void {
  if (row.firstYear !== undefined && row.lastYear !== undefined && row.lastYear < row.firstYear) refuse("lastYear", `a year from ${row.firstYear} on`);
}
