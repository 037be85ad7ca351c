import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import { functionFiles, metadataText, readFunctionMetadata } from "../scripts/function-metadata";
import { functionsPage } from "../scripts/functions-page";
import * as exported from "../src/functions/functions";
import { worksheetFunctions } from "../src/functions/registry";

describe("the worksheet functions", () => {
  test("functions.json is not stale; if it is: npm run metadata", async () => {
    const written = readFileSync(resolve(__dirname, "../src/functions/functions.json"), "utf8");
    expect(metadataText(await readFunctionMetadata(functionFiles()))).toBe(written);
  });

  test("every exported function has metadata, and every metadata entry an export of functions.ts", async () => {
    const { associate } = await generateCustomFunctionsMetadata([...functionFiles()]);
    expect(Object.keys(exported).sort()).toEqual(associate.map(({ functionName }) => functionName).sort());
  });

  test("the registry holds exactly these functions, each under its id", async () => {
    const { associate } = await generateCustomFunctionsMetadata([...functionFiles()]);
    const byName: Readonly<Record<string, unknown>> = exported;
    const expected = Object.fromEntries(associate.map(({ id, functionName }) => [id, byName[functionName]]));
    expect(worksheetFunctions).toEqual(expected);
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
