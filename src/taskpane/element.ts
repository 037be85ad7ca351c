/** Makes page elements. Attributes only, no inline style and no inline handler, so that a strict content security policy holds. */

type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;
type Child = Node | string | undefined;

/**
 * @param attributes `true` sets an attribute without a value; `false` and undefined leave it out
 * @param children texts become text nodes, never markup
 */
export function element<K extends keyof HTMLElementTagNameMap>(tag: K, attributes: Attributes = {}, ...children: readonly Child[]): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  setAttributes(made, attributes);
  made.append(...present(children));
  return made;
}

export function drawing<K extends keyof SVGElementTagNameMap>(tag: K, attributes: Attributes = {}, ...children: readonly Child[]): SVGElementTagNameMap[K] {
  const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
  setAttributes(made, attributes);
  made.append(...present(children));
  return made;
}

const present = (children: readonly Child[]): (Node | string)[] => children.filter((child) => child !== undefined);

function setAttributes(made: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined && value !== false) made.setAttribute(name, value === true ? "" : String(value));
  }
}
