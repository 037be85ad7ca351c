/** All of this is invented: every port of every part of the demo. */
import type { DemoTable } from "./demo-table";
import { PORT_HEADINGS } from "./ports-of";
import { portsOfMastersAndValves } from "./ports-of-masters-and-valves";
import { portsOfTeesHosesAndBrakes } from "./ports-of-tees-hoses-and-brakes";

export const ports: DemoTable = {
  name: "Ports",
  headings: PORT_HEADINGS,
  rows: [...portsOfMastersAndValves, ...portsOfTeesHosesAndBrakes],
};
