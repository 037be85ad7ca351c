/** The demo scenario: an invented marque family, a shop's tables and 29 customer cars, as a user would type them. */
import { adapters } from "./adapters";
import { boosters } from "./boosters";
import { cars } from "./cars";
import { components } from "./components";
import type { DemoTable } from "./demo-table";
import { joins } from "./joins";
import { lengths } from "./lengths";
import { lineSets, setRuns } from "./line-sets";
import { nuts } from "./nuts";
import { passages } from "./passages";
import { platforms } from "./platforms";
import { ports } from "./ports";
import { fluids, kits, operations } from "./quoting";
import { seen } from "./seen";
import { settings } from "./settings";
import { pipeline, priceBreaks, usage } from "./stock-history";
import { tube } from "./tube";
import { wheelBrakes } from "./wheel-brakes";

export { DEMO_DATES, DEMO_TODAY } from "./stock-history";
export type { DemoCell, DemoTable } from "./demo-table";

/** Every table of the demo workbook, Cars first. */
export const demoTables: readonly DemoTable[] = [
  cars, platforms, lengths, components, ports, passages, boosters, wheelBrakes, nuts, adapters, tube, lineSets, setRuns, joins, settings, seen, priceBreaks, fluids, kits, operations, usage, pipeline,
];
