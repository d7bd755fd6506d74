#!/usr/bin/env node
// The command, as node starts it.
import manifest from "../../package.json" with { type: "json" }
import { deskOf, EXIT } from "./desk.js"
import { reasonOf } from "./files.js"
import { run } from "./run.js"

// a reader that has seen enough closes the pipe: no fault
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0)
  process.stderr.write(`standard output: ${reasonOf(error)}\n`)
  process.exit(EXIT.bad)
})

// no handler for an interrupt: what runs is stopped at once, and a file is only there when it is whole
process.exitCode = run(deskOf(process), process.argv.slice(2), (manifest as { readonly version: string }).version)
