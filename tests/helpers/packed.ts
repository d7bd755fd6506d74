import { execFileSync } from "node:child_process"
import { cpSync, mkdirSync, mkdtempSync, readFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { fileURLToPath } from "node:url"

/** Root of the project. */
export const root: string = fileURLToPath(new URL("../../", import.meta.url))

/** package.json, as far as the tests read it. */
export const manifest = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as {
  readonly exports: Readonly<Record<string, unknown>>
}

/** Runs a program in a folder and returns what it printed. */
export function run(command: string, args: readonly string[], cwd: string = root): string {
  return execFileSync(command, args, { cwd, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] })
}

let packed: string | undefined

/** Packs the built package once and returns the path of the tarball. */
export function tarball(): string {
  if (packed) return packed
  const folder = mkdtempSync(join(tmpdir(), "alula-pack-"))
  const listing = run("npm", ["pack", "--ignore-scripts", "--json", "--pack-destination", folder])
  const [entry] = Object.values(JSON.parse(listing) as Record<string, { filename: string }>)
  packed = join(folder, entry!.filename)
  return packed
}

/** A folder of a user's project with the packed package installed in it (its own dependencies linked from here). */
export function userProject(): string {
  const folder = mkdtempSync(join(tmpdir(), "alula-user-"))
  run("tar", ["-xzf", tarball()], folder)
  mkdirSync(join(folder, "node_modules"), { recursive: true })
  cpSync(join(folder, "package"), join(folder, "node_modules", "alula"), { recursive: true })
  return folder
}
