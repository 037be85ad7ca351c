/** Stands in for a part or port that nobody has listed: it takes a line, and its thread is not known. */
import type { Component, ComponentKind, Port } from "../component";

export const unlistedPort = (flow: Port["flow"], name: string = flow): Port => ({
  name, flow, circuit: "any", serves: "any", gender: "female", plugged: false, use: "line",
});

export const standIn = (description: string, kind: ComponentKind, ports: readonly Port[]): Component => ({ name: description, kind, description, ports, passages: [] });

export const unstatedBrake = standIn("brake not stated", "disc", [unlistedPort("in")]);
export const unstatedHose = standIn("hose not stated", "hose", [unlistedPort("in"), unlistedPort("out")]);
export const unlistedTee = standIn("tee", "tee", [unlistedPort("in"), unlistedPort("out", "out 1"), unlistedPort("out", "out 2")]);

/** A brake whose ports nobody listed still takes a line. */
export const withInlet = (component: Component): Component =>
  component.ports.some((port) => port.flow === "in" && port.use === "line") ? component : { ...component, ports: [...component.ports, unlistedPort("in")] };
