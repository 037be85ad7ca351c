/** The plain text of a cell whose letters have looks of their own. */
import { fromXmlText } from "./xml-text";
import { childNamed, type XmlElement } from "./xml-tree";

/** Text of a shared or inline string: all its runs, without the phonetic ones. */
export function richText(element: XmlElement): string {
  const pieces = element.children.flatMap((child) => {
    if (child.name === "t") return [child.text];
    return child.name === "r" ? [childNamed(child, "t")?.text ?? ""] : [];
  });
  return fromXmlText(pieces.join(""));
}
