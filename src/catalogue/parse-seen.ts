/** From the rows of Seen to bodies with their ports. */
import { nameKey } from "../core/catalogue";
import type { SeenBody } from "../core/seen-body";
import { groupBy } from "../core/group-by";
import { readTableLeavingOutCells } from "./read-table";
import type { TableError } from "./table-error";
import { seenTable } from "./tables/seen";

export interface NamedBody extends SeenBody {
  readonly car: string;
  readonly body: string;
  /** Cells that could not be read and count as not measured. */
  readonly errors: readonly TableError[];
}

/** Gathers the ports of each body, in order; a cell that cannot be read is left out and reported. */
export function parseSeen(headings: readonly unknown[], rows: readonly (readonly unknown[])[]): { readonly bodies: readonly NamedBody[]; readonly errors: readonly TableError[] } {
  const read = readTableLeavingOutCells(seenTable, { headings, rows }, seenTable.name);
  const sound = read.rows.flatMap(({ value, errors }) => (value ? [{ ...value, errors }] : []));
  const bodies = [...groupBy(sound, ({ car, body }) => `${nameKey(car)}|${nameKey(body)}`).values()].map((ports): NamedBody => {
    const [first] = ports;
    return {
      car: first?.car ?? "", body: first?.body ?? "", ports: ports.map(({ port }) => port),
      place: ports.find(({ place }) => place !== undefined)?.place, wire: ports.find(({ wire }) => wire !== undefined)?.wire,
      errors: ports.flatMap(({ errors }) => errors),
    };
  });
  return { bodies, errors: [...read.headingErrors, ...read.rows.filter(({ value }) => !value).flatMap(({ errors }) => errors)] };
}
