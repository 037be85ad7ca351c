/** Whether the keyboard's focus is seen: everything that takes it is focused in turn, and its mark measured. */
import type { Page } from "playwright-core";

/**
 * A focus is seen by an outline two pixels wide, on the thing itself or on what stands for it, that differs from the ground around it by 3 to 1 (WCAG 2.2, 1.4.11 and 2.4.13)
 * and that no edge around it cuts off.
 * @returns a sentence for each thing whose focus is not seen
 */
export const unseenFocus = (page: Page): Promise<readonly string[]> => page.evaluate(() => {
  const shown = (node: Element): boolean => node.checkVisibility({ visibilityProperty: true }) && !node.matches(":disabled");
  const taking = [...document.querySelectorAll<HTMLElement>("a[href], button, input, select, textarea, summary, [tabindex]")].filter((node) => node.tabIndex >= 0 && shown(node));
  const channels = (color: string): number[] => color.match(/[\d.]+/g)?.map(Number) ?? [];
  const light = (color: string): number => {
    const [red = 0, green = 0, blue = 0] = channels(color).map((one) => (one / 255 <= 0.04045 ? one / 255 / 12.92 : ((one / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const groundOf = (node: Element | null): string => {
    for (let at = node; at; at = at.parentElement) {
      const { backgroundColor } = getComputedStyle(at);
      if ((channels(backgroundColor)[3] ?? 1) === 1) return backgroundColor;
    }
    return getComputedStyle(document.documentElement).colorScheme.includes("dark") ? "rgb(0, 0, 0)" : "rgb(255, 255, 255)";
  };
  const cutOff = (node: Element, reach: number): boolean => {
    const box = node.getBoundingClientRect();
    for (let at = node.parentElement; at; at = at.parentElement) {
      const edge = at.getBoundingClientRect();
      if (/hidden|clip/.test(getComputedStyle(at).overflow) && (box.left - reach < edge.left - 0.5 || box.right + reach > edge.right + 0.5)) return true;
    }
    return false;
  };
  const faultOf = (node: HTMLElement): string | undefined => {
    // The button of a choice is out of sight, and its label stands for it.
    const marked = [node.matches(".unseen") ? node.closest("label") : node].find((one) => one && getComputedStyle(one).outlineStyle !== "none");
    if (!marked) return "has no outline";
    const { outlineWidth, outlineOffset, outlineColor } = getComputedStyle(marked);
    const [width, offset] = [parseFloat(outlineWidth), parseFloat(outlineOffset)];
    if (width < 2) return `has an outline of ${outlineWidth}`;
    const ground = groundOf(offset >= 0 ? marked.parentElement : marked);
    const [low = 0, high = 0] = [light(outlineColor), light(ground)].sort((a, b) => a - b);
    if ((high + 0.05) / (low + 0.05) < 3) return `has an outline of ${outlineColor} on ${ground}`;
    return cutOff(marked, width + offset) ? "has an outline that is cut off" : undefined;
  };
  return taking.flatMap((node) => {
    node.focus({ preventScroll: true, focusVisible: true });
    const fault = document.activeElement === node ? faultOf(node) : "takes no focus";
    return fault === undefined ? [] : [`${node.outerHTML.slice(0, 120)} ${fault}`];
  });
});
