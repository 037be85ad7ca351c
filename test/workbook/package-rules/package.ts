/** The parts of an .xlsx package, read without any code of ours. */
import { posix } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { JSDOM } from "jsdom";

export interface Part {
  readonly path: string;
  readonly xml: Element;
}

export class Package {
  readonly files: Readonly<Record<string, Uint8Array>>;
  private readonly parser = new (new JSDOM("").window.DOMParser)();
  private readonly read = new Map<string, Element>();

  constructor(bytes: Uint8Array) {
    this.files = unzipSync(bytes);
  }

  /** @throws Error when there is no such part or it is no XML */
  xml(path: string): Element {
    const known = this.read.get(path);
    if (known) return known;
    const file = this.files[path];
    if (!file) throw new Error(`There is no part ${path}.`);
    const root = this.parser.parseFromString(strFromU8(file), "text/xml").documentElement;
    if (root.getElementsByTagName("parsererror").length > 0) throw new Error(`${path} is no XML.`);
    this.read.set(path, root);
    return root;
  }

  parts(folder: string): readonly Part[] {
    return Object.keys(this.files).filter((path) => new RegExp(`^${folder}[^/]+\\.xml$`).test(path)).map((path) => ({ path, xml: this.xml(path) }));
  }

  /** Links of a part: where each id leads to, and of what kind. */
  links(path: string): ReadonlyMap<string, { readonly target: string; readonly kind: string }> {
    const rels = posix.join(posix.dirname(path), "_rels", `${posix.basename(path)}.rels`);
    if (!this.files[rels]) return new Map();
    return new Map(all(this.xml(rels), "Relationship").map((link) => {
      const target = link.getAttribute("Target") ?? "";
      const whole = target.startsWith("/") ? target.slice(1) : posix.join(posix.dirname(path), target);
      return [link.getAttribute("Id") ?? "", { target: whole, kind: posix.basename(link.getAttribute("Type") ?? "") }];
    }));
  }
}

export const all = (element: Element, name: string): readonly Element[] => below(element).filter(({ localName }) => localName === name);

/** The elements inside one, in the order of the text. */
export const below = (element: Element): readonly Element[] => children(element).flatMap((inner) => [inner, ...below(inner)]);

export function children(element: Element | undefined): readonly Element[] {
  const found: Element[] = [];
  // From one to the next: the lists of a page's document are slow to read by number.
  for (let at = element?.firstElementChild; at; at = at.nextElementSibling) found.push(at);
  return found;
}

export const child = (element: Element | undefined, name: string): Element | undefined => children(element).find(({ localName }) => localName === name);

/** 0-based column and row of "B3". */
export function place(address: string): { readonly row: number; readonly column: number } | undefined {
  const [, letters = "", digits] = /^([A-Z]{1,3})([1-9]\d*)$/.exec(address) ?? [];
  return digits === undefined ? undefined : { row: Number(digits) - 1, column: [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1 };
}

export interface Block {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Undefined when "A1:C5" is no range. */
export function block(range: string): Block | undefined {
  const [from, to = from] = range.split(":").map(place);
  return from && to && to.row >= from.row && to.column >= from.column ? { top: from.row, left: from.column, bottom: to.row, right: to.column } : undefined;
}

export const overlap = (a: Block, b: Block): boolean => a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;

/** Pairs that overlap. */
export const overlapping = <T extends { readonly block: Block }>(blocks: readonly T[]): readonly (readonly [T, T])[] =>
  blocks.flatMap((a, index) => blocks.slice(index + 1).filter((b) => overlap(a.block, b.block)).map((b) => [a, b] as const));

export const repeated = (texts: readonly string[]): readonly string[] => [...new Set(texts.filter((text, index) => texts.indexOf(text) !== index))];
