/**
 * Names and prices are invented. Which thread goes with which tube is not: standard inverted-flare nuts as in SAE J512 (from
 * memory), oversize nuts and metric bubble nuts by common practice, no source.
 */
import { T1_4, T3_16, T3_8, T5_16, type DemoTable } from "./demo-table";

export const nuts: DemoTable = {
  name: "Nuts",
  headings: ["Nut", "Tube (in)", "Thread", "Seat", "Gender", "Price"],
  rows: [
    ["N-1/8-5/16-28", 1 / 8, "5/16-28", "inverted-flare-45", "male", 0.8],
    ["N-3/16-3/8-24", T3_16, "3/8-24", "inverted-flare-45", "male", 0.6],
    ["N-1/4-7/16-24", T1_4, "7/16-24", "inverted-flare-45", "male", 0.7],
    ["N-5/16-1/2-20", T5_16, "1/2-20", "inverted-flare-45", "male", 0.9],
    ["N-3/8-5/8-18", T3_8, "5/8-18", "inverted-flare-45", "male", 1.2],

    ["N-3/16-7/16-24 oversize", T3_16, "7/16-24", "inverted-flare-45", "male", 1.1],
    ["N-3/16-1/2-20 oversize", T3_16, "1/2-20", "inverted-flare-45", "male", 1.3],
    ["N-3/16-9/16-18 oversize", T3_16, "9/16-18", "inverted-flare-45", "male", 1.5],
    ["N-1/4-1/2-20 oversize", T1_4, "1/2-20", "inverted-flare-45", "male", 1.4],
    ["N-1/4-9/16-18 oversize", T1_4, "9/16-18", "inverted-flare-45", "male", 1.6],

    ["N-3/16-37", T3_16, "3/8-24", "flare-37", "female", 2.4],

    ["N-4.75-M10x1", T3_16, "M10x1", "bubble-iso", "male", 0.7],
    ["N-4.75-M11x1.5", T3_16, "M11x1.5", "bubble-iso", "male", 0.9],
    ["N-4.75-M12x1", T3_16, "M12x1", "bubble-iso", "male", 0.9],
    ["N-8-M14x1.5", T5_16, "M14x1.5", "bubble-iso", "male", 1.3],
  ],
};
