/** Money as it is written: as many decimals as the shop's rounding step has, and two at least. */
import type { Settings } from "./settings";

/** @returns decimals of a price */
export const decimalsOfMoney = ({ roundingStep }: Pick<Settings, "roundingStep">): number => Math.max(2, (String(roundingStep).split(".")[1] ?? "").length);

/** Number format of a cell that holds money. */
export const moneyFormat = (settings: Pick<Settings, "roundingStep">): string => `#,##0.${"0".repeat(decimalsOfMoney(settings))}`;
