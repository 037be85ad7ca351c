/** Brings the children of an element up to date and leaves alone those that say the same as before, so that focus and scroll stay. */

export interface KeyedChild {
  /** Names the child among its brothers. */
  readonly key: string;
  /** Two children of one key and one content look the same. */
  readonly content: string;
  readonly make: () => HTMLElement;
}

export interface KeyedChildren {
  update(children: readonly KeyedChild[]): void;
}

interface Kept {
  readonly content: string;
  readonly node: HTMLElement;
}

/** @param parent holds nothing but these children */
export function keyedChildren(parent: HTMLElement): KeyedChildren {
  let kept = new Map<string, Kept>();
  return {
    update: (children) => {
      const active = activeElementIn(parent);
      const next = new Map(children.map((child) => [child.key, keepOrMake(kept.get(child.key), child)]));
      for (const [key, { node }] of kept) if (!next.has(key)) node.remove();
      placeInOrder(parent, [...next.values()].map(({ node }) => node));
      if (active && active !== activeElementIn(parent) && parent.contains(active)) active.focus({ preventScroll: true });
      kept = next;
    },
  };
}

function keepOrMake(old: Kept | undefined, { content, make }: KeyedChild): Kept {
  if (old?.content === content) return old;
  const made = { content, node: make() };
  if (old) replaceKeepingFocus(old.node, made.node);
  return made;
}

/** Focus in the old node goes to the first thing of the new one that can have it. */
function replaceKeepingFocus(old: HTMLElement, made: HTMLElement): void {
  const hadFocus = activeElementIn(old) !== undefined;
  old.replaceWith(made);
  if (hadFocus) made.querySelector<HTMLElement>("button, [tabindex], a[href]")?.focus({ preventScroll: true });
}

/** Moves only nodes that stand in the wrong place: a moved node loses its focus and its animations. */
function placeInOrder(parent: HTMLElement, nodes: readonly HTMLElement[]): void {
  for (const [index, node] of nodes.entries()) {
    const there = parent.children[index];
    if (there !== node) parent.insertBefore(node, there ?? null);
  }
}

function activeElementIn(node: HTMLElement): HTMLElement | undefined {
  const { activeElement } = node.getRootNode() as Document | ShadowRoot;
  return activeElement instanceof HTMLElement && node.contains(activeElement) ? activeElement : undefined;
}
