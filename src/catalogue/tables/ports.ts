/** Ports: every threaded hole or end of a component. */
import { PORT_CIRCUITS, SERVES, type Port } from "../../core/component";
import { usualPortGender } from "../../core/joint";
import { blankMeans, choice, filled, name, quantity, text, yesNo } from "../column";
import { table } from "../table-spec";
import { distance, gender, seat, thread } from "../trade-columns";
import { pressure, volume } from "../unit";

const WHEEL_WORDS = { "left front": "LF", "right front": "RF", "left rear": "LR", "right rear": "RR" } as const;

export interface PortRow {
  readonly component: string;
  readonly port: Port;
}

export const portsTable = table({
  name: "Ports",
  holds: "one port of a component",
  columns: {
    component: name("Component", "a component of the Components table"),
    name: name("Port"),
    flow: filled(choice("Flow", ["in", "out"], { inlet: "in", outlet: "out" })),
    circuit: blankMeans(choice("Circuit", PORT_CIRCUITS), "any", "any"),
    serves: blankMeans(choice("Serves", SERVES, WHEEL_WORDS), "any", "any"),
    thread: thread("Thread"),
    seat: seat("Seat"),
    gender: gender("Gender"),
    side: text("Side"),
    plugged: blankMeans(yesNo("Plugged"), false, "no"),
    use: blankMeans(choice("Use", ["line", "switch", "bleed"]), "line", "line"),
    builtInResidual: quantity("Built-in residual", pressure),
    reservoir: quantity("Reservoir", volume),
    stroke: distance("Stroke"),
  },
  knownBy: [["component"], ["name"], ["flow"]],
  toCore: ({ component, ...port }): PortRow => ({ component, port: { ...port, gender: port.gender ?? usualPortGender(port.seat) } }),
});
