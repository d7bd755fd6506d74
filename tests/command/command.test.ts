import { type ChildProcess, spawn } from "node:child_process"
import {
  closeSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { build } from "esbuild"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { starters, starterText } from "../../src/starters/index.js"
import { root } from "../helpers/packed.js"

const folder = mkdtempSync(join(tmpdir(), "alula-command-"))
const file = join(root, "node_modules/.cache/command", `${process.pid}.mjs`)

beforeAll(async () => {
  mkdirSync(join(root, "node_modules/.cache/command"), { recursive: true })
  await build({
    entryPoints: [join(root, "src/command/main.ts")],
    outfile: file,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    minify: true,
    logLevel: "warning",
  })
})
afterAll(() => {
  rmSync(folder, { recursive: true, force: true })
  rmSync(file, { force: true })
})

interface Ended {
  readonly code: number | null
  readonly signal: NodeJS.Signals | null
  readonly out: string
  readonly err: string
}

/** Starts the command as a shell does, without a terminal. */
function started(args: readonly string[], stdin: string | null = ""): { readonly child: ChildProcess; readonly ended: Promise<Ended> } {
  const child = spawn(process.execPath, [file, ...args], { cwd: folder, env: { PATH: process.env.PATH } })
  if (stdin !== null) child.stdin?.end(stdin)
  const ended = new Promise<Ended>((resolve) => {
    let [out, err] = ["", ""]
    child.stdout?.on("data", (part) => (out += part))
    child.stderr?.on("data", (part) => (err += part))
    child.on("close", (code, signal) => resolve({ code, signal, out, err }))
  })
  return { child, ended }
}
const alula = (...args: string[]) => started(args).ended
const put = (name: string, text: string) => writeFileSync(join(folder, name), text)

describe("the command", () => {
  it("carries a starter rig from the first file to its answer, report and build sheet", async () => {
    const made = await alula("new", "tail")
    expect(made).toMatchObject({ code: 0, out: "" })
    expect(made.err).toContain("alula check tail.jsonc")
    expect(readFileSync(join(folder, "tail.jsonc"), "utf8")).toBe(starterText(starters.tail))
    const [again, checked, why, report, sheet, played] = await Promise.all([
      alula("new", "tail"),
      alula("check", "tail.jsonc", "--all"),
      alula("why", "tail.jsonc", "--json"),
      alula("report", "tail.jsonc"),
      alula("sheet", "tail.jsonc", "-o", "bench.md"),
      alula("perform", "tail.jsonc"),
    ])
    expect(again).toMatchObject({ code: 2, out: "" })
    expect(again.err).toContain("--force")
    expect(checked).toMatchObject({ code: 0, err: "" })
    expect(checked.out).toContain("Every check made is met")
    // in a pipe: no colour, one finding a line
    expect(checked.out).not.toContain("\u001b")
    expect(checked.out.split("\n").filter((line) => line.startsWith("  ✓ ")).length).toBeGreaterThan(20)
    const { motions } = JSON.parse(why.out) as { motions: { name: string; move: { out: { duration: number } } }[] }
    expect(motions.map((m) => m.name)).toEqual(["tail"])
    expect(motions[0]?.move.out.duration).toBeGreaterThan(0.5)
    expect(JSON.parse(why.out)).toMatchObject({ remedies: expect.any(Array), compromises: expect.any(Array), complete: true })
    // both steps of the programme, each as long as the motion takes
    expect(played).toMatchObject({ code: 0, err: "" })
    expect(played.out.split("\n").filter((line) => /^tail {2,}\d.* to .* s {2}/.test(line))).toHaveLength(2)
    expect(report).toMatchObject({ code: 0, out: "", err: "tail-report.html\n" })
    expect(readFileSync(join(folder, "tail-report.html"), "utf8")).toMatch(/^<!doctype html>/)
    expect(sheet).toMatchObject({ code: 0, out: "" })
    expect(readFileSync(join(folder, "bench.md"), "utf8")).toMatch(/^# Build sheet: Reed newt/)
  })

  it("tells every fault of a document with its line and column, as text and as JSON", async () => {
    const text = starterText(starters.wings).replace('"120 N"', '"120 kg"').replace('"stroke"', '"strok"').replace('"0.9 m"', '"900 m"')
    put("bad.jsonc", text)
    const [told, json] = await Promise.all([alula("check", "bad.jsonc"), alula("sheet", "bad.jsonc", "--json")])
    const lines = text.split("\n")
    /** Where a piece of the text stands, found by looking. */
    const place = (piece: string) => {
      const line = lines.findIndex((one) => one.includes(piece))
      return `${line + 1}:${(lines[line] as string).indexOf(piece) + 1}`
    }
    expect(told).toMatchObject({ code: 2, out: "" })
    const found = told.err.split("\n").slice(1, -1)
    // what is missing is told where the part begins that it belongs to
    const drive = place('"drive": {').split(":").map(Number) as [number, number]
    expect(found.map((line) => line.trim().split("  ")[0])).toEqual([
      `${drive[0]}:${drive[1] + 9}`,
      place('"80 mm"'),
      place('"120 kg"'),
      place('"900 m"'),
    ])
    expect(told.err).toContain("did you mean 'stroke'?")
    expect(json.code).toBe(2)
    const { faults } = JSON.parse(json.out) as { faults: { path: string; line: number; column: number }[] }
    expect(faults.map((f) => f.path)).toEqual([
      "motions[0].drive.stroke",
      "motions[0].drive.strok",
      "motions[0].drive.ratedForce",
      "power.buses[0].run.length",
    ])
    expect(`${faults[3]?.line}:${faults[3]?.column}`).toBe(place('"900 m"'))
    expect(readdirSync(folder).filter((f) => f.startsWith("bad-"))).toEqual([])
  })

  it("answers 1 where something falls short, 3 where a motion is stopped, 2 where the command line is wrong", async () => {
    put("heavy.json", JSON.stringify(starters.tail.rig).replace('"45 g"', '"40 kg"'))
    put("wings.json", JSON.stringify(starters.wings.rig))
    const [short, stopped, ...wrong] = await Promise.all([
      alula("check", "wings.json", "--json"),
      alula("why", "heavy.json"),
      alula("check", "nowhere.json"),
      alula(),
    ])
    expect(short.code).toBe(1)
    expect((JSON.parse(short.out) as { counts: { fallsShort: number } }).counts.fallsShort).toBe(1)
    expect(stopped).toMatchObject({ code: 3, err: "" })
    expect(stopped.out).toMatch(/tail: stopped\n {2}\S/)
    // what stops it is the tip: a lighter one, or why no one change moves it, is told below
    expect(stopped.out).toMatch(/^What (to change|no change)[^\n]*\n {2}\S/m)
    expect(wrong.map(({ code, out }) => [code, out])).toEqual([
      [2, ""],
      [2, ""],
    ])
    expect(wrong[0]?.err).toBe("nowhere.json: there is no such file\n")
    expect(wrong[1]?.err).toContain("alula check <file>")
  })

  it("writes no answer over the document it came from, nor into a name that says no format", async () => {
    const text = starterText(starters.tail)
    put("mine.jsonc", text)
    symlinkSync(join(folder, "mine.jsonc"), join(folder, "other.html"))
    const told = await Promise.all([
      alula("report", "mine.jsonc", "-o", "mine.jsonc"),
      alula("sheet", "mine.jsonc", "-o", "./mine.jsonc", "--format", "markdown"),
      alula("report", "mine.jsonc", "-o", "other.html"),
      alula("sheet", "mine.jsonc", "-o", "sheet.pdf"),
      alula("report", "mine.jsonc", "-o", "no/such/report.html"),
    ])
    expect(told.map(({ code, out }) => [code, out])).toEqual(told.map(() => [2, ""]))
    for (const { err } of told.slice(0, 3)) expect(err).toMatch(/^--output: expected another file than the document itself/)
    expect(told[3]?.err).toMatch(/\.html, \.md or \.json/)
    expect(told[4]?.err).toBe("no/such/report.html: its folder does not exist\n")
    expect(readFileSync(join(folder, "mine.jsonc"), "utf8")).toBe(text)
  })

  it("takes a text as a word processor, a web page or another system's shell leaves it, or says what is wrong with it", async () => {
    const text = starterText(starters.tail)
    writeFileSync(join(folder, "wide.jsonc"), Buffer.from(`\uFEFF${text}`, "utf16le"))
    writeFileSync(join(folder, "narrow.jsonc"), Buffer.from(text.replace("Reed", "Réed"), "latin1"))
    put("curly.jsonc", text.replace('"12 V"', "“12 V”"))
    put("blank.jsonc", text.replace('"version"', '\u00a0"version"'))
    const [wide, narrow, curly, blank] = await Promise.all(
      ["wide", "narrow", "curly", "blank"].map((name) => alula("check", `${name}.jsonc`)),
    )
    expect(wide).toMatchObject({ code: 0, err: "" })
    expect(narrow).toMatchObject({ code: 2, out: "" })
    expect(narrow?.err).toMatch(/UTF-8/)
    expect(curly?.err).toMatch(/\n {2}\d+:\d+ {2}expected a value.*“ is no straight double quote/)
    expect(blank?.err).toMatch(/\n {2}\d+:3 {2}expected a name.*the blank here is no plain one/)
  })

  it.skipIf(!existsSync("/dev/full"))("tells in a line that there is no room for its answer", async () => {
    put("room.jsonc", starterText(starters.tail))
    const full = openSync("/dev/full", "w")
    const child = spawn(process.execPath, [file, "check", "room.jsonc"], { cwd: folder, stdio: ["ignore", full, "pipe"] })
    let err = ""
    child.stderr?.on("data", (part) => (err += part))
    expect(await new Promise((resolve) => child.on("close", resolve))).toBe(2)
    expect(err).toBe("standard output: there is no room left\n")
    closeSync(full)
  })

  it("diagnoses readings of a file, and asks for them one by one where there is none", async () => {
    put("built.json", JSON.stringify(starters.wings.rig))
    put("read.json", '[{ "type": "time", "value": "9 s" }, { "type": "voltage", "at": "pack", "during": "rest", "value": "12 V" }]')
    put("wrong.json", '[\n { "type": "time", "value": "9 V" },\n { "type": "voltage", "at": "pak", "value": "12 V" }\n]')
    const [json, text, wrong, asked, nothing] = await Promise.all([
      alula("diagnose", "built.json", "read.json", "--json"),
      alula("diagnose", "built.json", "read.json"),
      alula("diagnose", "built.json", "wrong.json"),
      started(["diagnose", "built.json"], "1\n9\n1\n9 s\nx\n\n").ended,
      alula("diagnose", "built.json"),
    ])
    const found = JSON.parse(json.out) as { outcome: string; verdict: string; readings: number }
    expect([json.code, found.outcome, found.readings]).toEqual([1, "one-fault", 2])
    expect(text.out).toContain(found.verdict)
    expect(text).toMatchObject({ code: 1, err: "" })
    expect(wrong).toMatchObject({ code: 2, out: "" })
    expect(wrong.err).toContain("\n  2:29  ")
    // a value without its unit is asked for again, and so is what is no number of the list
    expect(asked.code).toBe(1)
    expect(asked.err).toContain("unit")
    expect(asked.err).toContain("So far: one fault explains it. Read next number ")
    expect(asked.err).toContain('received "x"')
    expect(asked.out).toMatch(/^Most plausible/m)
    expect(asked.out + asked.err).not.toContain("\u001b")
    expect(nothing).toMatchObject({ code: 2, out: "" })
  })

  it("reads standard input and writes JSON to a pipe", async () => {
    const text = starterText(starters.skirt)
    const [sheet, broken] = await Promise.all([
      started(["sheet", "-", "--json"], text).ended,
      started(["check", "-"], `${text.slice(0, 900)}]`).ended,
    ])
    expect(sheet).toMatchObject({ code: 0, err: "" })
    expect((JSON.parse(sheet.out) as { circuits: unknown[] }).circuits).toHaveLength(1)
    expect(broken.code).toBe(2)
    expect(broken.err).toMatch(/^standard input: 1 fault\n {2}\d+:\d+ {2}expected/)
  })

  it("stops at once when it is interrupted, and leaves no half file", async () => {
    const { rig } = starters.fan
    const motions = Array.from({ length: 30 }, (_, i) => ({ ...rig.motions[0], name: `fan ${i}` }))
    put("long.json", JSON.stringify({ ...rig, motions, programme: [] }))
    const [long, waiting] = [started(["report", "long.json"]), started(["sheet", "-", "-o", "waited.html"], null)]
    await new Promise((resolve) => setTimeout(resolve, 700))
    for (const { child } of [long, waiting]) child.kill("SIGINT")
    for (const { ended } of [long, waiting]) expect(await ended).toMatchObject({ code: null, signal: "SIGINT", out: "" })
    expect(readdirSync(folder).filter((f) => /long-report|waited|\.part/.test(f))).toEqual([])
  })

  it("explains every type that a rig's document names, with one from a starter rig where there is one", async () => {
    const [hinge, drum, solver, list, move, json] = await Promise.all([
      alula("explain", "hinge"),
      alula("explain", "rig.drum"),
      alula("explain", "winch"),
      alula("explain"),
      alula("explain", "move"),
      alula("explain", "slider-crank", "--json"),
    ])
    expect(hinge.out).toMatch(/^hinge \(motions\[\]\.mechanisms\[\] of a rig's document\)/)
    expect(hinge.out).toMatch(/movingPivot\.radius .* 1 mm to 2 m/)
    expect(hinge.out).toContain('"type": "hinge"')
    // of a transmission on it the types are told, not every field of every type
    expect(hinge.out).not.toContain("drumDiameter")
    expect(drum.out).toMatch(/drumDiameter .* 3 mm to 1 m/)
    expect(solver.out).toMatch(/^winch \(alula\/drive\)/)
    for (const type of ["gearmotor", "hobby-servo", "four-bar", "folding-chain", "bank", "controller"])
      expect(list.out).toMatch(new RegExp(`^ {2}rig\\.${type} `, "m"))
    expect(move.out).toMatch(/motions\[\]\.mechanisms\[\] .* by its type/)
    expect(move.out.indexOf("motions[]")).toBeLessThan(move.out.indexOf("wearer.bodyMass"))
    expect(move.out).toContain("alula explain hinge")
    const { place, inputs } = JSON.parse(json.out) as { place: string; inputs: { name: string }[] }
    expect(place).toBe("motions[].mechanisms[]")
    expect(inputs.map(({ name }) => name)).toContain("crank")
    for (const { code, err } of [hinge, drum, solver, list, move, json]) expect([code, err]).toEqual([0, ""])
  })

  it("helps, and explains any solver from its descriptions", async () => {
    const [help, on, page, list] = await Promise.all([
      alula("--help"),
      alula("check", "--help"),
      alula("explain", "wire.voltageDrop"),
      alula("explain", "--json"),
    ])
    for (const word of ["new", "check", "why", "perform", "diagnose", "report", "sheet", "explain"])
      expect(help.out).toContain(`alula ${word} `)
    for (const code of ["0", "1", "2", "3", "130"]) expect(on.out).toMatch(new RegExp(`^ {2}${code} `, "m"))
    expect(page.out).toMatch(/length +L +length one way +0 to 1000 m/)
    expect(page.out).toMatch(/contactResistance +R_1 .* default 5 mΩ/)
    expect(page.out).toContain("U = I * R")
    expect(page.out).toMatch(/IEC 60028/)
    expect((JSON.parse(list.out) as unknown[]).length).toBeGreaterThan(70)
    for (const { code, err } of [help, on, page, list]) expect([code, err]).toEqual([0, ""])
  })
})
