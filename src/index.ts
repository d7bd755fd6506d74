/**
 * Solvers for things that are worn, move and carry their own power. Each domain is also a subpath of
 * its own (`alula/wire`, `alula/linkage` …), quicker to load than the whole.
 *
 * @packageDocumentation
 */
export * as advice from "./advice/index.js"
export * as converter from "./converter/index.js"
export * as drive from "./drive/index.js"
export * as frame from "./frame/index.js"
export * as linkage from "./linkage/index.js"
export * as pack from "./pack/index.js"
export * as report from "./report/index.js"
export * as rig from "./rig/index.js"
export * from "./solver/index.js"
export * as thermoform from "./thermoform/index.js"
export * as wire from "./wire/index.js"
export * as worn from "./worn/index.js"
