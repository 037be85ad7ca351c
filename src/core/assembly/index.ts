/** One car's hydraulic circuit as a graph, and the paths through it. */
export * from "./assemble";
export * from "./graph";
export * from "./paths";
export * from "./places";
