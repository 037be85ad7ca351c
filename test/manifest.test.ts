import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { OfficeAddinManifest } from "office-addin-manifest";
import { manifestProblems } from "./manifest/rules";

const path = resolve(__dirname, "../manifest.xml");
const manifest = readFileSync(path, "utf8");

test("the platform's own reader reads it", async () => {
  const read = await OfficeAddinManifest.readManifestFile(path);
  expect(read).toMatchObject({ displayName: "Plumbline", officeAppType: "TaskPaneApp", hosts: ["Workbook"], permissions: "ReadWriteDocument" });
});

test("it keeps every rule that the schema misses", () => expect(manifestProblems(manifest)).toEqual([]));

test("it keeps them on another host", () => {
  expect(manifestProblems(manifest.replaceAll("https://localhost:3000", "https://lines.example"))).toEqual([]);
});

describe("a manifest that breaks a rule is refused:", () => {
  test.each<readonly [string, string | RegExp, string, string]>([
    ["an address without https", "https://localhost:3000/taskpane.js", "http://localhost:3000/taskpane.js", "is not https"],
    ["two hosts", "https://localhost:3000/taskpane.js", "https://elsewhere.example/taskpane.js", "several hosts: elsewhere.example, localhost:3000"],
    ["an address of nothing", "3000/functions.json", "3000/metadata.json", "metadata.json leads to nothing"],
    ["no support page", /<SupportUrl.*\/>/, "", "no SupportUrl"],
    ["an icon of another size", "assets/icon-32.png", "assets/icon-64.png", "icon-64.png is 64 × 64 pixels where 32 are wanted"],
    ["an icon that is not there", "assets/icon-16.png", "assets/icon-17.png", "The icon of 16 pixels is missing"],
    ["an icon with a size left out", /<bt:Image size="80".*\/>/, "", "no image of 80 pixels"],
    ["a resid of nothing", 'Label resid="Group.Label"', 'Label resid="Group.Name"', "resid Group.Name is not defined"],
    ["a resource for nobody", 'Label resid="Group.Label"', 'Label resid="OpenPanel.Label"', "resource Group.Label is not used"],
    ["a resource defined twice", 'id="Icon.16" D', 'id="Icon.32" D', "resource Icon.32 is defined twice"],
    ["a long resource id", /Icon\.16/g, "Icon.16.that.is.sixteen.pixels.wide", "more than 32 characters"],
    ["a long label", '"Brake lines"', `"${"Brake lines ".repeat(11)}"`, "OpenPanel.Label has more than 125"],
    ["a long tip", '"Opens the panel', `"${"Opens the panel ".repeat(16)}`, "OpenPanel.Tip has more than 250"],
    ["a long description", '"Finds the brake', `"${"Finds the brake ".repeat(16)}`, "Description has more than 250"],
    ["a second runtime", 'FunctionFile resid="Panel.Url"', 'FunctionFile resid="Support.Url"', "FunctionFile does not name the page"],
    ["a panel elsewhere", /(<\/TaskpaneId>\s*<SourceLocation resid=")Panel/, "$1Support", "ShowTaskpane does not name the page"],
    ["functions elsewhere", /(<Page>\s*<SourceLocation resid=")Panel/, "$1Support", "Page does not name the page"],
    ["a short life", 'lifetime="long"', 'lifetime="short"', "lifetime is not long"],
    ["a cell address as namespace", '"PLUMB"', '"PLM1"', "namespace PLM1 is not"],
    ["no custom functions asked for", /<Set Name="CustomFunctionsRuntime".*\/>/, "", "CustomFunctionsRuntime 1.1 is missing"],
    ["another id", "5da435a1", "5da435a2", "The Id is not the one"],
    ["a version of its own", /<Version>.*<\/Version>/, "<Version>0.0.9.0</Version>", "The version is 0.0.9.0"],
  ])("%s", (_, from, to, problem) => {
    const broken = manifest.replace(from, to);
    expect(broken).not.toBe(manifest);
    expect(manifestProblems(broken).join("\n")).toContain(problem);
  });
});
