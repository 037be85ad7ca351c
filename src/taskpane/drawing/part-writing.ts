/** The writing in the box of a part and at its ports. */
import type { Scene } from "./scene";
import { BADGE_LINE, HOSE, isSlender, nameRoom, NAME_LINE, PAD, partName, portName, sideNames, type Block, type Edge } from "./block";
import { onPart, onPort } from "./faults";
import { BADGE, BESIDE, MOST_LETTERS, NUT_ROOM, widthOf } from "./measures";
import { badgesAt, label, type PlacedPart, type Written } from "./placed";
import { faultsOn, runAt, together } from "./run-writing";
import type { Sketch } from "./sketch";
import { shortened } from "./text-width";

/** Names of part and ports in the box. */
export function inBox(sketch: Sketch, { part, box, ports }: PlacedPart): Written {
  const owner = onPart(part.label);
  const faults = faultsOn(sketch, owner);
  const on = (edge: Edge) => ports.filter((one) => one.edge === edge).map(({ port }) => ({ port, nut: "", badges: 0, run: undefined }));
  const edges = { top: on("top"), bottom: on("bottom"), left: on("left"), right: on("right") };
  const [top, bottom] = [nameRoom(edges.top), nameRoom(edges.bottom)];
  const middle = box.y + PAD + top + (box.height - 2 * PAD - top - bottom - (faults.length > 0 ? BADGE_LINE : 0) - sideNames(edges)) / 2;
  const hanging = isSlender(part, edges) ? HOSE : 0;
  const x = box.x + (box.width + hanging) / 2;
  const names = ports.filter(({ port }) => portName(port) !== "").map(({ port, at, edge }) => {
    const text = portName(port);
    if (edge === "left" || edge === "right") return label(text, "port", { x: at.x + (edge === "left" ? 6 : -6), y: at.y + 3, anchor: edge === "left" ? "start" : "end", owner: onPort(port.key) });
    return label(text, "port", { x: at.x, y: edge === "top" ? box.y + PAD + NAME_LINE - 3 : box.y + box.height - PAD - 1, anchor: "middle", owner: onPort(port.key) });
  });
  return {
    labels: [label(partName(part), "part", { x, y: middle - 3, anchor: "middle", owner }), label(part.kind, "kind", { x, y: middle + 11, anchor: "middle", owner }), ...names],
    badges: badgesAt(faults, { x: x - (faults.length * BADGE.width) / 2, y: middle + 16 + BADGE_LINE / 2 }),
  };
}

/** Nuts beside their lines, and the run where it leaves its upper end. */
export function atPorts(scene: Scene, { ports }: PlacedPart, block: Block | undefined): Written {
  const written = ports.map(({ port, at, edge }): Written => {
    const slot = block?.slots[edge].find((one) => one.port === port);
    if (!slot) return { labels: [] };
    const owner = onPort(port.key);
    const faults = faultsOn(scene.sketch, owner);
    const nut = shortened(slot.nut, MOST_LETTERS.nut);
    const back = edge === "left" || (edge !== "right" && block?.mirrored === true);
    const x = at.x + (back ? -BESIDE : BESIDE);
    const y = edge === "bottom" ? at.y + NUT_ROOM - 2 : edge === "top" ? at.y - 4 : at.y - 5;
    const taken = nut === "" ? 0 : widthOf(nut, "nut");
    const marks = badgesAt(faults, { x: back ? x - taken - faults.length * BADGE.width : x + taken, y: y - 4 });
    const line = scene.sketch.lines.find(({ ends }) => ends.some(({ key }) => key === port.key));
    const run = slot.run && line ? runAt(scene.sketch, line, { x, y: at.y + NUT_ROOM, anchor: back ? "end" : "start" }) : undefined;
    return { labels: [...(nut === "" ? [] : [label(nut, "nut", { x, y, anchor: back ? "end" : "start", owner })]), ...(run?.labels ?? [])], tags: run?.tags ?? [], badges: [...marks, ...(run?.badges ?? [])] };
  });
  return together(written);
}
