/** The grid library saves a step of several cells with Object.groupBy, which Node 20 and browsers before 2024 do not have. */
export function provideGroupBy(): void {
  const object = Object as { groupBy?: typeof groupBy };
  object.groupBy ??= groupBy;
}

function groupBy<T>(items: Iterable<T>, keyOf: (item: T, index: number) => PropertyKey): Record<PropertyKey, T[]> {
  const groups = Object.create(null) as Record<PropertyKey, T[]>;
  let index = 0;
  for (const item of items) (groups[keyOf(item, index++)] ??= []).push(item);
  return groups;
}
