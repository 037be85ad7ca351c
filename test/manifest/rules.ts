import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { JSDOM } from "jsdom";

const projectFolder = resolve(__dirname, "../..");

/** What the build writes beside the icons; an address in the manifest leads to one of these. */
const builtFiles = ["taskpane.html", "taskpane.js", "functions.json", "functions.html", "support.html", "privacy.html"];

/**
 * What a manifest gets wrong that the platform's schemas do not see, each as a sentence.
 * Limits: the platform's manifest reference (resid 32 characters, ShortStrings 125, LongStrings and Description 250).
 */
export function manifestProblems(text: string): readonly string[] {
  // Selectors match a prefixed name with its prefix; the rules are plainer without.
  const manifest = new JSDOM(text.replaceAll(/(<\/?)bt:/g, "$1"), { contentType: "text/xml" }).window.document;
  return [addresses, icons, resources, stringLengths, sharedRuntime, namespace, requirements, identity].flatMap((rule) => rule(manifest));
}

function addresses(manifest: Document): readonly string[] {
  const urls = allAddresses(manifest);
  const hosts = new Set(urls.map((url) => new URL(url).host));
  return [
    ...urls.filter((url) => !url.startsWith("https://")).map((url) => `${url} is not https.`),
    ...(hosts.size > 1 ? [`Addresses stand on several hosts: ${[...hosts].sort().join(", ")}.`] : []),
    ...urls.filter((url) => !isBuilt(new URL(url).pathname.slice(1))).map((url) => `${url} leads to nothing that the build writes.`),
    ...(manifest.querySelector("SupportUrl") ? [] : ["There is no SupportUrl."]),
  ];
}

const isBuilt = (path: string): boolean => builtFiles.includes(path) || (path.startsWith("assets/") && existsSync(resolve(projectFolder, path)));

function icons(manifest: Document): readonly string[] {
  const addressOf = new Map(elements(manifest, "Image").map((each) => [each.getAttribute("id"), each.getAttribute("DefaultValue")]));
  const wanted: (readonly [string | null | undefined, number])[] = [
    [manifest.querySelector("IconUrl")?.getAttribute("DefaultValue"), 32],
    [manifest.querySelector("HighResolutionIconUrl")?.getAttribute("DefaultValue"), 64],
    ...elements(manifest, "Image")
      .filter((each) => each.hasAttribute("size"))
      .map((each) => [addressOf.get(each.getAttribute("resid")), Number(each.getAttribute("size"))] as const),
  ];
  return [...wanted.flatMap(([url, size]) => iconProblems(url ?? "", size)), ...elements(manifest, "Icon").flatMap(missingSizes)];
}

function iconProblems(url: string, size: number): readonly string[] {
  const path = URL.canParse(url) ? resolve(projectFolder, new URL(url).pathname.slice(1)) : "";
  if (!existsSync(path)) return [`The icon of ${size} pixels is missing.`];
  const [width, height] = pngSize(readFileSync(path));
  return width === size && height === size ? [] : [`${url} is ${width} × ${height} pixels where ${size} are wanted.`];
}

/** A PNG starts with 8 bytes of signature, then the IHDR chunk: length, name, width and height of 4 bytes each (RFC 2083, 4.1.1). */
function pngSize(file: Buffer): readonly [number, number] {
  if (file.toString("latin1", 1, 4) !== "PNG" || file.toString("latin1", 12, 16) !== "IHDR") return [0, 0];
  return [file.readUInt32BE(16), file.readUInt32BE(20)];
}

function missingSizes(icon: Element): readonly string[] {
  const sizes = elements(icon, "Image").map((each) => each.getAttribute("size"));
  return ["16", "32", "80"].filter((size) => !sizes.includes(size)).map((size) => `An Icon has no image of ${size} pixels.`);
}

function resources(manifest: Document): readonly string[] {
  const defined = elements(manifest, "Resources > * > *");
  const ids = defined.map((each) => each.getAttribute("id") ?? "");
  const used = elements(manifest, "[resid]").map((each) => each.getAttribute("resid") ?? "");
  return [
    ...used.filter((id) => !ids.includes(id)).map((id) => `resid ${id} is not defined.`),
    ...ids.filter((id) => !used.includes(id)).map((id) => `The resource ${id} is not used.`),
    ...ids.filter((id, place) => ids.indexOf(id) !== place).map((id) => `The resource ${id} is defined twice.`),
    ...ids.filter((id) => id.length > 32).map((id) => `The resource id ${id} has more than 32 characters.`),
  ];
}

function stringLengths(manifest: Document): readonly string[] {
  const tooLong = (selector: string, limit: number) =>
    elements(manifest, selector)
      .filter((each) => (each.getAttribute("DefaultValue") ?? "").length > limit)
      .map((each) => `${each.getAttribute("id") ?? each.localName} has more than ${limit} characters.`);
  return [...tooLong("ShortStrings > *", 125), ...tooLong("LongStrings > *", 250), ...tooLong("Description[DefaultValue]", 250)];
}

/** Functions and panel share one runtime, and so one catalogue cache, only when all of these name one page. */
function sharedRuntime(manifest: Document): readonly string[] {
  const places = {
    Runtime: "Runtime",
    Page: "Page > SourceLocation",
    FunctionFile: "FunctionFile",
    ShowTaskpane: "TaskpaneId ~ SourceLocation",
  };
  const found = Object.entries(places).map(([name, selector]) => [name, manifest.querySelector(selector)?.getAttribute("resid")] as const);
  const [, page] = found[0] ?? [];
  const lifetime = manifest.querySelector("Runtime")?.getAttribute("lifetime");
  return [
    ...found.filter(([, resid]) => !resid || resid !== page).map(([name]) => `${name} does not name the page of the shared runtime.`),
    ...(lifetime === "long" ? [] : ["The Runtime's lifetime is not long."]),
  ];
}

/** Letters only: with digits a namespace could be read as a cell address, and R and C alone are references too. */
function namespace(manifest: Document): readonly string[] {
  const resid = manifest.querySelector("Namespace")?.getAttribute("resid");
  const name = elements(manifest, "String").find((each) => each.getAttribute("id") === resid)?.getAttribute("DefaultValue") ?? "";
  return /^[A-Z]{2,}$/.test(name) ? [] : [`The namespace ${name} is not two or more upper-case letters.`];
}

function requirements(manifest: Document): readonly string[] {
  const found = elements(manifest, "OfficeApp > Requirements Set").map((each) => `${each.getAttribute("Name")} ${each.getAttribute("MinVersion")}`);
  return ["SharedRuntime 1.1", "CustomFunctionsRuntime 1.1"].filter((set) => !found.includes(set)).map((set) => `The requirement set ${set} is missing.`);
}

function identity(manifest: Document): readonly string[] {
  const version = manifest.querySelector("Version")?.textContent ?? "";
  const packageVersion = (JSON.parse(readFileSync(resolve(projectFolder, "package.json"), "utf8")) as { version: string }).version;
  return [
    ...(manifest.querySelector("Id")?.textContent === "5da435a1-e3a7-423f-8969-1fde4909eb51" ? [] : ["The Id is not the one that installed copies know."]),
    ...(version === `${packageVersion}.0` ? [] : [`The version is ${version} where package.json says ${packageVersion}.`]),
  ];
}

function allAddresses(manifest: Document): readonly string[] {
  return elements(manifest, "[DefaultValue]")
    .map((each) => each.getAttribute("DefaultValue") ?? "")
    .filter((value) => URL.canParse(value) && value.includes("://"));
}

const elements = (root: ParentNode, selector: string): readonly Element[] => [...root.querySelectorAll(selector)];
