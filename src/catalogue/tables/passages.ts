/** Passages: what each way from an inlet to an outlet does to the pressure. */
import { DUTIES, type Duty } from "../../core/component";
import { blankMeans, choice, figure, name, quantity, yesNo, type Range } from "../column";
import { table, type RowOf } from "../table-spec";
import { pressure } from "../unit";

const SLOPE: Range = { least: 1e-6, most: 1, says: "above 0 and not above 1" };

const dutyColumns = {
  does: choice("Does", DUTIES, { "hold off": "hold-off", metering: "hold-off", adjustable: "adjustable-proportioning", "load sensing": "load-sensing-proportioning" }),
  opens: quantity("Opens", pressure),
  full: quantity("Full", pressure),
  split: quantity("Split", pressure),
  slope: figure("Slope", SLOPE),
  leastSplit: quantity("Least split", pressure),
  mostSplit: quantity("Most split", pressure),
  ladenSplit: quantity("Laden split", pressure),
  holds: quantity("Holds", pressure),
};

/** One duty of a passage; a passage with two duties has two rows. */
export interface PassageRow {
  readonly component: string;
  readonly from: string;
  readonly to: string;
  /** Undefined when the row does not say what the passage does. */
  readonly duty: Duty | undefined;
  readonly bypassOnFailure: boolean;
}

export const passagesTable = table({
  name: "Passages",
  holds: "one duty of one passage, in flow order",
  columns: {
    component: name("Component", "a component of the Components table"),
    from: name("From", "a port of this component"),
    to: name("To", "a port of this component"),
    ...dutyColumns,
    bypassOnFailure: blankMeans(yesNo("Bypass on failure"), false, "no"),
  },
  knownBy: [["component"], ["from"], ["to"], ["does"]],
  toCore: (row, refuse): PassageRow => {
    if (isBelow(row.full, row.opens)) refuse("full", "a pressure not below Opens");
    if (isBelow(row.mostSplit, row.leastSplit)) refuse("mostSplit", "a pressure not below Least split");
    return { component: row.component, from: row.from, to: row.to, duty: dutyOf(row), bypassOnFailure: row.bypassOnFailure };
  },
});

const isBelow = (most: number | undefined, least: number | undefined): boolean => most !== undefined && least !== undefined && most < least;

function dutyOf(row: RowOf<typeof dutyColumns>): Duty | undefined {
  const { does, opens, full, split, slope, leastSplit, mostSplit, ladenSplit, holds } = row;
  switch (does) {
    case undefined: return undefined;
    case "through": return { does };
    case "hold-off": return { does, opens, full };
    case "proportioning": return { does, split, slope };
    case "adjustable-proportioning": return { does, leastSplit, mostSplit, slope };
    case "load-sensing-proportioning": return { does, split, ladenSplit, slope };
    case "limiting": return { does, split };
    case "residual": return { does, holds };
    default: return does satisfies never;
  }
}
