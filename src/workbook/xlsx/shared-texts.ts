/** The part that holds the texts of all cells. */
import { mainNamespace, xmlHead, xmlText } from "./xml-text";

/** The texts of all cells, each once. */
export class SharedTexts {
  readonly #numbers = new Map<string, number>();
  #uses = 0;

  /** Number under which a cell refers to the text. */
  number(text: string): number {
    this.#uses++;
    const number = this.#numbers.get(text) ?? this.#numbers.size;
    this.#numbers.set(text, number);
    return number;
  }

  xml(): string {
    const items = [...this.#numbers.keys()].map((text) => `<si><t xml:space="preserve">${xmlText(text)}</t></si>`);
    return `${xmlHead}<sst xmlns="${mainNamespace}" count="${String(this.#uses)}" uniqueCount="${String(items.length)}">${items.join("")}</sst>`;
  }
}
