import { inches, millimetres } from "../../src/core/quantity";
import { sayOnTape } from "../../src/core/say-quantity";

// Sixteenths in lowest terms, as a tape is marked.
test.each([[101.5, "101 1/2 in"], [0.0625, "1/16 in"], [3, "3 in"], [0, "0 in"], [2.75, "2 3/4 in"], [2.97, "3 in"], [7.3125, "7 5/16 in"], [12.625, "12 5/8 in"]])("%p in is %p", (length, said) => expect(sayOnTape({ units: "us" }, inches(length))).toBe(said));
test("a metric tape is read in whole millimetres", () => expect(sayOnTape({ units: "metric" }, millimetres(2578.1))).toBe("2578 mm"));
