/** All of this is invented: the marque, its platforms, their years and every figure. */
import type { DemoTable } from "./demo-table";

export const platforms: DemoTable = {
  name: "Platforms",
  headings: [
    "Platform", "First year", "Last year", "Split", "Wheelbase (in)", "Weight (lb)", "Front share (%)", "CG height (in)",
    "Laden weight (lb)", "Laden front share (%)", "Laden CG height (in)", "Tyre radius (in)", "Reservoir above calipers (in)",
    "Pedal ratio", "Pedal travel (in)", "Vacuum (inHg)", "Driver side", "Driveline parking brake", "Frequency",
  ],
  rows: [
    ["Harrow Roadster", 1949, 1957, "front/rear", 98, 2150, 50, 19, 2550, 47, 19.5, 12.4, -4, 6.2, 6, 18, "left", "no", 3],
    ["Harrow 2 Saloon", 1956, 1967, "front/rear", 105, 2780, 54, 21, 3480, 51, 22, 12.6, 14, 6, 6, 18, "left", "no", 9],
    ["Harrow 4 Saloon", 1967, 1973, "front/rear", 110, 3260, 55, 21.5, 4020, 52, 22.5, 12.9, 15, 3.6, 5.5, 18, "left", "no", 14],
    ["Harrow 4 Estate", 1968, 1973, "front/rear", 112, 3540, 53, 22.5, 4380, 49, 23.5, 13.1, 15, 3.6, 5.5, 18, "left", "no", 5],
    ["Harrow 6 Coupe", 1974, 1981, "front/rear", 108, 3380, 57, 20.5, 4040, 52, 21.5, 12.8, 15, 3.5, 5.5, 17, "left", "no", 11],
    ["Harrow Carrier", 1964, 1979, "front/rear", 120, 3920, 56, 26, 5400, 50, 28, 14, 17, 3.8, 6, 17, "left", "yes", 8],
    ["Pellin Saloon", 1975, 1986, "diagonal", 97, 1980, 61, 20, 2780, 53, 21, 11.2, 13, 4, 5.5, 19, "right", "no", 10],
    ["Pellin Estate", 1977, 1987, "diagonal", 98.5, 2120, 59, 20.5, 2880, 53, 21.5, 11.3, 13, 4, 5.5, 19, "right", "no", 4],
    ["Pellin Van", 1978, 1989, "front/rear", 104, 2480, 58, 24, 3520, 50, 25.5, 12, 16, 4.2, 6, 19, "left", "no", 6],
  ],
};
