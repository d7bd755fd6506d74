/**
 * Solvers for things that are worn, move and carry their own power: everything at once. Each domain is also a subpath of
 * its own (`alula/wire`, `alula/linkage` …), quicker to load than the whole.
 *
 * @packageDocumentation
 */
export * from "./advice/index.js"
export * from "./converter/index.js"
export * from "./drive/index.js"
export * from "./frame/index.js"
export * from "./linkage/index.js"
export * from "./pack/index.js"
export * from "./report/index.js"
export * from "./rig/index.js"
export * from "./solver/index.js"
export * from "./study/index.js"
export * from "./thermoform/index.js"
export * from "./wire/index.js"
export * from "./worn/index.js"
