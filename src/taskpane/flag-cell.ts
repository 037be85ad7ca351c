/** Which cell of a car's row a flag is about, as far as one cell is at fault. */
import type { Finding, FindingCode } from "../core/finding";

const BY_CODE: Readonly<Partial<Record<FindingCode, string>>> = {
  "metering-doubled": "Valves", "metering-on-rear": "Valves", "metering-on-drums": "Valves", "metering-on-four-discs": "Valves", "metering-missing": "Valves",
  "proportioning-doubled": "Valves", "proportioning-one-sided": "Valves", "proportioning-on-front": "Valves", "proportioning-upstream-of-both": "Valves",
  "residual-on-disc": "Valves", "residual-shared": "Valves", "residual-missing-drum": "Valves", "residual-doubled": "Valves", "residual-order": "Valves",
  "outlet-shortage": "Valves", "circuit-unfed": "Valves", "port-left-open": "Valves", "switch-port-open": "Valves", "warning-missing": "Valves", "stop-lamp-lost": "Valves",
  "anti-lock-present": "Valves", "bleed-tool": "Valves", "drum-master-on-disc": "Master", "single-circuit": "Master", "hose-missing": "Hoses",
  "material-copper": "Material", "material-mixed": "Material", "fluid-mixed": "Fluid", "parking-brake-lost": "Rear brake",
};

/** A heading of Cars; undefined when the fault lies in another table or between several cells. */
export function cellAtFault({ code, place }: Pick<Finding, "code" | "place">): string | undefined {
  const named = /^Cars: ([^(]+)/.exec(place)?.[1]?.trim();
  return named ?? BY_CODE[code];
}
