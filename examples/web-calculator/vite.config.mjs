// Builds the calculators into out/web: static files that also work without a network, once they were loaded.
import { fileURLToPath } from "node:url"
import { defineConfig } from "vite"

const here = (path) => fileURLToPath(new URL(path, import.meta.url))

const rooms = {
  linkage: "Linkages and hinges",
  drive: "Motors and drives",
  pack: "Cells and packs",
  converter: "Converters",
  wire: "Wires, fuses, switches",
  frame: "Tubes and joints",
  thermoform: "Bending with heat",
  worn: "The body that wears it",
}

/** Names and titles of every solver, so that the list does not load them. */
function catalogue() {
  const name = "virtual:alula-catalogue"
  return {
    name,
    resolveId: (id) => (id === name ? `\0${name}` : null),
    async load(id) {
      if (id !== `\0${name}`) return null
      const found = []
      for (const [room, heading] of Object.entries(rooms)) {
        const all = await import(here(`../../dist/${room}/index.js`))
        const solvers = Object.entries(all).filter(([, one]) => typeof one === "function" && "~standard" in one)
        found.push({
          room,
          heading,
          solvers: solvers.map(([solver, { title }]) => ({ name: solver, title })).sort((a, b) => (a.title < b.title ? -1 : 1)),
        })
      }
      return `export default ${JSON.stringify(found)}`
    },
  }
}

/** A service worker that keeps every file of this build: the next build has another name and takes its place. */
function keepsFiles() {
  return {
    name: "keeps-files",
    apply: "build",
    generateBundle(_, bundle) {
      const files = ["./", ...Object.keys(bundle).filter((file) => !file.endsWith(".map"))]
      const key = Object.keys(bundle).sort().join()
      const version = [...key].reduce((sum, c) => (sum * 31 + c.charCodeAt(0)) >>> 0, 7).toString(36)
      const source = `const KEEP = "alula-${version}"
const FILES = ${JSON.stringify(files)}
addEventListener("install", (e) => e.waitUntil(caches.open(KEEP).then((c) => c.addAll(FILES)).then(() => skipWaiting())))
addEventListener("activate", (e) => e.waitUntil(caches.keys().then((all) => Promise.all(all.filter((k) => k.startsWith("alula-") && k !== KEEP).map((k) => caches.delete(k))))))
addEventListener("fetch", (e) => { if (e.request.method === "GET") e.respondWith(caches.match(e.request, { ignoreSearch: true }).then((kept) => kept ?? fetch(e.request))) })
`
      this.emitFile({ type: "asset", fileName: "keep.js", source })
    },
  }
}

export default defineConfig({
  root: here("."),
  base: "./",
  logLevel: "warn",
  resolve: {
    alias: [{ find: /^alula\/(.*)$/, replacement: here("../../dist/$1/index.js") }],
  },
  plugins: [catalogue(), keepsFiles()],
  worker: { format: "es" },
  build: {
    outDir: here("../../out/web"),
    emptyOutDir: true,
    target: "es2022",
    chunkSizeWarningLimit: 900,
    modulePreload: { polyfill: false },
  },
})
