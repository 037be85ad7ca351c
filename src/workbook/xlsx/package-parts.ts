/** The parts of an .xlsx package, unpacked when they are asked for and held to limits. */
import { strFromU8 } from "fflate";
import { unzip, ZipError } from "./unzip";
import { mostElements, parseXml, TooManyElements, type XmlElement } from "./xml-tree";

/** A file that cannot be opened, with a sentence for the user. */
export class WorkbookFileError extends Error {
  override readonly name = "WorkbookFileError";
}

/** The parts of an .xlsx package by path, with links followed. */
export interface PackageParts {
  /** Paths that the part's links of this kind lead to, by link id. */
  links(part: string, kind: string): ReadonlyMap<string, string>;
  /** The part's XML; undefined when the package has no such part. */
  xml(path: string): XmlElement | undefined;
  /** A picture's bytes; undefined when the package has no such part. */
  bytes(path: string): Uint8Array | undefined;
}

/** Bytes after unpacking: no workbook of this job comes near, and a larger one is refused before it fills the memory. */
export const largestWorkbook = 400_000_000;

/** Opens the zip. Throws WorkbookFileError when it is none, is cut short, or is larger than a workbook should be. */
export function packageParts(bytes: Uint8Array, largest = largestWorkbook): PackageParts {
  const files = unpack(bytes, largest);
  const xml = (path: string): XmlElement | undefined => {
    const content = files.get(path.toLowerCase());
    if (!content) return undefined;
    if (marksIn(content) > 2 * mostElements) throw new WorkbookFileError(sentences["too large"]);
    try {
      return parseXml(strFromU8(content));
    } catch (problem) {
      if (problem instanceof TooManyElements) throw new WorkbookFileError(sentences["too large"]);
      throw new WorkbookFileError(`The file is damaged: its part ${path} cannot be read (${(problem as Error).message.trim()}).`);
    }
  };
  return { xml, bytes: (path) => files.get(path.toLowerCase()), links: (part, kind) => linksOf(xml(relationshipsPath(part)), part, kind) };
}

function unpack(bytes: Uint8Array, largest: number): ReadonlyMap<string, Uint8Array> {
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf) {
    throw new WorkbookFileError("The file is an old .xls workbook or is protected with a password. Save it as a plain .xlsx first.");
  }
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) throw new WorkbookFileError("The file is not an .xlsx workbook.");
  try {
    const files = unzip(bytes, (path) => /\.(xml|rels|png)$/i.test(path), { total: largest, ...mostRatio });
    return new Map([...files].map(([path, content]) => [path.replace(/^\//, "").replaceAll("\\", "/").toLowerCase(), content]));
  } catch (problem) {
    throw new WorkbookFileError(sentences[problem instanceof ZipError ? problem.reason : "damaged"]);
  }
}

/** Sheets of nothing but equal rows pack 100 to 1; a bomb 1000 to 1. */
const mostRatio = { ratio: 400, ratioFrom: 10_000_000 };

const sentences: Readonly<Record<ZipError["reason"], string>> = {
  damaged: "The file is damaged: it cannot be unpacked. It may have been cut short while copying.",
  locked: "The file is protected with a password. Save it as a plain .xlsx first.",
  "too large": "The workbook is too large to open here.",
};

/** How often "<" stands in a part: twice an element at most, so that too many are known before the tree of them is begun. */
function marksIn(content: Uint8Array): number {
  let count = 0;
  // eslint-disable-next-line @typescript-eslint/prefer-for-of -- over the millions of bytes of a large part an iterator takes several times as long
  for (let at = 0; at < content.length; at++) if (content[at] === 0x3c) count++;
  return count;
}

const relationshipsPath = (part: string): string => part.replace(/([^/]*)$/, "_rels/$1.rels");

function linksOf(relationships: XmlElement | undefined, part: string, kind: string): ReadonlyMap<string, string> {
  const found = (relationships?.children ?? []).filter(
    ({ attributes }) => attributes["Type"]?.endsWith(`/${kind}`) && attributes["TargetMode"] !== "External",
  );
  return new Map(found.map(({ attributes }) => [attributes["Id"] ?? "", resolved(part, attributes["Target"] ?? "")]));
}

/** A link's target, relative to the part that holds it unless it starts with "/". */
function resolved(part: string, target: string): string {
  const steps = target.startsWith("/") ? [] : part.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") steps.pop();
    else if (step !== "" && step !== ".") steps.push(step);
  }
  return steps.join("/");
}
