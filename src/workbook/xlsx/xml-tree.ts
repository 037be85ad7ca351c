/** XML as a small tree, read by a library's parser, with limits. */
import { SaxesParser } from "saxes";

/** An element with its names stripped of prefixes; attributes of the relationships namespace keep "r:". */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
  /** The text directly inside. */
  readonly text: string;
}

/** More elements than this are refused: a cell takes two or three, and the tree of so many a gigabyte. */
export const mostElements = 5_000_000;

/** Thrown for a part that holds more than can be worked with. */
export class TooManyElements extends Error {}

/** Parses a part. Throws an Error with line and column when it is not well-formed, TooManyElements when there is too much of it. */
export function parseXml(text: string, most = mostElements): XmlElement {
  const root = open("", {});
  const path = [root];
  let count = 0;
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", (problem) => {
    throw problem;
  });
  // Entities of its own are how a small file becomes a large one; the format of workbooks has no use for them.
  parser.on("doctype", () => {
    throw new Error("it holds a document type of its own, which no workbook has");
  });
  parser.on("opentag", ({ local, attributes }) => {
    if (++count > most) throw new TooManyElements();
    const element = open(local, attributes);
    path[path.length - 1]?.children.push(element);
    path.push(element);
  });
  const addText = (piece: string): void => {
    const inner = path[path.length - 1];
    if (inner) inner.text += piece;
  };
  parser.on("text", addText);
  parser.on("cdata", addText);
  parser.on("closetag", () => path.pop());
  parser.write(text).close();
  const [first] = root.children;
  if (!first) throw new Error("There is nothing in it.");
  return first;
}

export const childNamed = (element: XmlElement | undefined, name: string): XmlElement | undefined =>
  element?.children.find((child) => child.name === name);

export const childrenNamed = (element: XmlElement | undefined, name: string): readonly XmlElement[] =>
  element?.children.filter((child) => child.name === name) ?? [];

/** On/off attributes read "1" or "true". */
export const isOn = (value: string | undefined): boolean => value === "1" || value === "true";

interface OpenElement {
  readonly name: string;
  readonly attributes: Record<string, string>;
  readonly children: OpenElement[];
  text: string;
}

function open(name: string, attributes: Readonly<Record<string, { local: string; uri: string; value: string }>>): OpenElement {
  const entries = Object.values(attributes).map(({ local, uri, value }) => [/\/relationships$/.test(uri) ? `r:${local}` : local, value]);
  return { name, attributes: Object.fromEntries(entries) as Record<string, string>, children: [], text: "" };
}
