import { NUTS, table, TUBE, type Shop } from "../../core/workshop";

/** Prices are invented. */
export const pricedShop: Shop = {
  more: [
    table(NUTS, "N38 | 0.1875 | 3/8-24 | inverted-flare-45 | male | 1.00", "N716 | 0.1875 | 7/16-24 | inverted-flare-45 | male | 1.25", "N12 | 0.1875 | 1/2-20 | inverted-flare-45 | male | 1.50", "N916 | 0.1875 | 9/16-18 | inverted-flare-45 | male | 2.00"),
    table(TUBE, "T1 | mild steel | 0.1875 | 0.028 | coil | 300 | 25"),
  ],
};
