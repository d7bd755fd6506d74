// For node the package is few files, since it loads each one by itself: the base, one for each domain, and those of rig and
// what stands on it, which share theirs.
import { dirname, relative, resolve, sep } from "node:path"

/** Rooms that everything stands on. */
export const base = new Set(["quantity", "numeric", "drawing", "solver"])
/** Rooms with a file of their own, which holds what their index offers. */
export const domains = new Set(["linkage", "drive", "pack", "converter", "wire", "frame", "thermoform", "worn"])
const source = resolve("src")

/** The room of `src` that a file is in. */
const roomOf = (path: string) => relative(source, path).split(sep)[0] as string

/** The part of esbuild's plugin interface that is used. */
interface Build {
  onResolve(
    options: { filter: RegExp },
    find: (asked: { readonly path: string; readonly importer: string }) => { path: string; external: true } | null,
  ): void
}

const toBase = { path: "./base.js", external: true } as const

/** For esbuild: what a public path of the base hands on is in the base's file. */
export const handedOn = {
  name: "handed on by the base",
  setup(build: Build): void {
    build.onResolve({ filter: /^\./ }, ({ importer }) => (importer === "" ? null : toBase))
  },
}

/** For esbuild: what is imported from another room is left to that room's file. */
export const nodeFiles = {
  name: "one file for each room",
  setup(build: Build): void {
    build.onResolve({ filter: /^\.\.?\/.*\.js$/ }, ({ path, importer }) => {
      if (importer.includes("/node_modules/") || !importer.startsWith(source + sep)) return null
      const target = resolve(dirname(importer), path)
      const [room, from] = [roomOf(target), roomOf(importer)]
      // the root hands on what the public path does, no more
      if (from === "index.ts" && target.endsWith(`solver${sep}index.js`)) return { path: "./solver.js", external: true }
      if (base.has(room) && !base.has(from)) return toBase
      if (!domains.has(room) || room === from) return null
      // a kernel or a table that the rig takes from below a domain's index is in its own file a second time: none keeps anything
      if (!target.endsWith(`${room}${sep}index.js`)) return null
      return { path: `./${room}.js`, external: true }
    })
  },
}
