import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import { headingsText } from "../scripts/answer-headings";
import { functionFiles, metadataText, readFunctionMetadata } from "../scripts/function-metadata";
import { functionsPage } from "../scripts/functions-page";
import { programParts, whenLoaded } from "../src/functions/parts";
import { worksheetFunctions } from "../src/functions/registry";

describe("the worksheet functions", () => {
  test("functions.json is not stale; if it is: npm run metadata", async () => {
    const written = readFileSync(resolve(__dirname, "../src/functions/functions.json"), "utf8");
    expect(metadataText(await readFunctionMetadata(functionFiles()))).toBe(written);
  });

  test("headings.json is not stale; if it is: npm run metadata", () => {
    expect(headingsText()).toBe(readFileSync(resolve(__dirname, "../src/functions/headings.json"), "utf8"));
  });

  test("every function of functions.json is in the registry under its id, and the registry holds no other", async () => {
    const { associate } = await generateCustomFunctionsMetadata([...functionFiles()]);
    expect(associate.map(({ id, functionName }) => [id, functionName.toUpperCase()])).toEqual(associate.map(({ id }) => [id, id]));
    expect(Object.keys(worksheetFunctions).sort()).toEqual(associate.map(({ id }) => id).sort());
  });

  // Excel fills what was left out with null, which no default takes the place of, and adds an argument of its own at the end, which a rest would take in.
  test("each takes the arguments of its description by name, without a default and without a rest", async () => {
    const { functions } = await readFunctionMetadata(functionFiles());
    expect(functions.map(({ id }) => [id, worksheetFunctions[id]?.length])).toEqual(functions.map(({ id, parameters }) => [id, parameters.length]));
  });

  test("each answers with a table, and CATALOG, VALVEOUT and PEDAL with one cell", async () => {
    const { functions } = await readFunctionMetadata(functionFiles());
    const single = functions.filter(({ result }) => result.dimensionality !== "matrix");
    expect(single.map(({ id, result }) => [id, result.type])).toEqual([["CATALOG", "string"], ["VALVEOUT", "number"], ["PEDAL", "number"]]);
  });

  test("error cells reach a function, so that one of them costs its own row only", async () => {
    expect(await readFunctionMetadata(functionFiles())).toMatchObject({ allowErrorForDataTypeAny: true });
    const ranges = (await readFunctionMetadata(functionFiles())).functions.flatMap(({ id, parameters }) => parameters.filter(({ type }) => type !== "any").map(({ name }) => `${id} ${name}`));
    expect(ranges).toEqual([]); // the platform passes errors to arguments of any type alone
  });

  test("the add-in's late functions are the registry's own, each in the part that names it", async () => {
    const late = await Promise.all(programParts.map(async ({ load, functions }) => ({ functions, loaded: await load() })));
    expect(late.flatMap(({ functions }) => functions).sort()).toEqual(Object.keys(worksheetFunctions).sort());
    for (const { functions, loaded } of late) {
      expect(Object.keys(loaded).map((name) => name.toUpperCase()).sort()).toEqual([...functions].sort());
      for (const id of functions) expect(loaded[id.toLowerCase()]).toBe(worksheetFunctions[id]);
    }
  });

  test("a late function answers as its twin does, its errors included", async () => {
    const load = () => import("../src/functions/physics-functions");
    await expect(whenLoaded("VALVEOUT", load)(800, 400, 0.5, null, null, null, null)).resolves.toBe(600);
    await expect(whenLoaded("VALVEOUT", load)(800, 400, 2, null, null, null, null)).rejects.toThrow('slope: read "2"');
  });

  test("a part that does not come answers #N/A with a sentence, and is asked for again by the next call", async () => {
    let reachable = false;
    const load = () => (reachable ? import("../src/functions/physics-functions") : Promise.reject(new Error("Loading chunk physics failed.")));
    const valveout = whenLoaded("VALVEOUT", load);
    await expect(valveout(800, 400, 0.5)).rejects.toMatchObject({ kind: "notAvailable", message: expect.stringContaining("answers VALVEOUT could not be loaded") as string });
    reachable = true;
    await expect(valveout(800, 400, 0.5)).resolves.toBe(600);
  });

  test("each has a help address that the help page answers", async () => {
    const metadata = await readFunctionMetadata(functionFiles(), "https://lines.example");
    const page = functionsPage(metadata);
    expect(metadata.functions.length).toBeGreaterThan(0);
    for (const { id, helpUrl } of metadata.functions) {
      expect(helpUrl).toBe(`https://lines.example/functions.html#${id}`);
      expect(page).toContain(`<section id="${id}">`);
    }
  });
});

describe("a declaration is refused:", () => {
  test.each([
    ["no description", declaration({ description: "" }), "PROBE: the function has no description."],
    ["an argument without one", declaration({ argument: "" }), "PROBE: argument size has no description."],
    ["a short id", declaration({ id: "AB" }), "AB: an id is upper case, three characters or more."],
    ["an id that starts with a digit", declaration({ id: "3PROBE" }), "should start with an alphabetic character"],
    ["a type that a spreadsheet lacks", declaration({ type: "Map<string, number>" }), "does not support type"],
  ])("%s", async (_, text, problem) => {
    await expect(withFile(text, (path) => readFunctionMetadata([path]))).rejects.toThrow(problem);
  });

  test("declared twice", async () => {
    await expect(withFile(declaration({}), (path) => readFunctionMetadata([path, path]))).rejects.toThrow("PROBE: declared twice.");
  });

  test("a complete one is not", async () => {
    const { functions } = await withFile(declaration({}), (path) => readFunctionMetadata([path]));
    expect(functions.map(({ id }) => id)).toEqual(["PROBE"]);
  });
});

function declaration({ id = "PROBE", description = "Measures.", argument = "How large.", type = "number" }): string {
  return `/**\n * ${description}\n * @customfunction ${id}\n * @param size ${argument}\n */\nexport function probe(size: ${type}): number { return 0; }\n`;
}

async function withFile<T>(text: string, use: (path: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "plumbline-metadata-"));
  const path = join(folder, "probe.ts");
  writeFileSync(path, text);
  try {
    return await use(path);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
