/** The squared paper is a drawn background, on which axe judges no contrast, so the palette is judged here. */
import { join } from "node:path";
import { readStyleSheet } from "../../scripts/style-sheet";

const css = readStyleSheet(join(__dirname, "../../src/taskpane/panel.css")).text;
const [light, dark, darkByHost] = [...css.matchAll(/\.plumbline(?::where\([^{]*\))? \{\s+(--[^}]*)\}/g)].map(([, block]) => paletteOf(block ?? ""));

const onPaper = ["ink", "ink-soft", "accent", "stop", "decide", "watch", "note"];
const pairs = [
  ...["paper", "paper-rule", "ticket", "accent-wash"].flatMap((ground) => onPaper.map((colour) => [colour, ground] as const)),
  ["ink", "desk"], ["ink-soft", "desk"], ["on-accent", "accent"],
] as const;

describe.each([["light", light], ["dark", dark]])("in %s", (_, palette) => {
  // WCAG 2.2, success criterion 1.4.3
  test.each(pairs)("the text colour %s reads on %s", (colour, ground) => {
    expect(contrast(palette, colour, ground)).toBeGreaterThanOrEqual(4.5);
  });

  // WCAG 2.2, success criterion 1.4.11
  test.each(["paper", "ticket", "desk"])("the edge of a control is told from %s", (ground) => {
    expect(contrast(palette, "edge", ground)).toBeGreaterThanOrEqual(3);
  });

  // The same criterion: the lines of the drawing, which lie on the paper of a ticket.
  test.each(["front", "rear", "ink"])("a line of the drawing in the colour %s is told from its paper", (colour) => {
    expect(contrast(palette, colour, "ticket")).toBeGreaterThanOrEqual(3);
  });
});

test("the host's dark is the system's dark", () => {
  expect(darkByHost?.size).toBe(17);
  expect(darkByHost).toEqual(dark);
});

// black on white is 21 : 1 and #777777 on white 4.48 : 1 by the formula of WCAG 2.2, "contrast ratio"
test.each([["#000000", 21], ["#777777", 4.48]])("contrast of %s on white", (colour, expected) => {
  expect(contrast(new Map([["a", colour], ["b", "#ffffff"]]), "a", "b")).toBeCloseTo(expected, 2);
});

function paletteOf(block: string): ReadonlyMap<string, string> {
  return new Map([...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, name, colour]) => [name ?? "", colour ?? ""]));
}

function contrast(palette: ReadonlyMap<string, string> | undefined, a: string, b: string): number {
  const [dim = 0, bright = 0] = [a, b].map((name) => luminance(palette?.get(name) ?? "")).sort((x, y) => x - y);
  return (bright + 0.05) / (dim + 0.05);
}

/** Relative luminance of an sRGB colour (WCAG 2.2, "relative luminance"). */
function luminance(colour: string): number {
  if (colour === "") throw new Error("The palette lacks this colour.");
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => linear(parseInt(colour.slice(at, at + 2), 16) / 255));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const linear = (channel: number): number => (channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4);
