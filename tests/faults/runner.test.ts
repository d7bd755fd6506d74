import { spawnSync } from "node:child_process"
import { mkdtempSync, readFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { beforeAll, describe, expect, it } from "vitest"
import { root } from "../helpers/packed.js"

// The fixture's few lines and tests are such that what becomes of every fault can be told by reading them.

interface Tried {
  readonly id: string
  readonly key: string
  readonly kind: string
  readonly before: string
  readonly after: string
  readonly end: string
  readonly by: string | null
}
interface Module {
  readonly tried: number
  readonly killed: number
  readonly equivalent: number
  readonly stale: readonly string[]
  readonly outside: readonly string[]
  readonly red: readonly string[]
  readonly sampled: readonly Tried[]
  readonly all: readonly Tried[]
}

function faults(args: readonly string[], env: Record<string, string> = {}): { status: number | null; text: string; module: Module } {
  const json = join(mkdtempSync(join(tmpdir(), "alula-faults-")), "report.json")
  const { status, stdout, stderr } = spawnSync(
    "node",
    [join(root, "scripts/faults.mjs"), "lamp", "--root", "tests/faults/fixture", "--limit", "2", "--json", json, ...args],
    { cwd: root, encoding: "utf8", env: { ...process.env, ...env } },
  )
  let modules: readonly Module[] = []
  try {
    modules = (JSON.parse(readFileSync(json, "utf8")) as { modules: Module[] }).modules
  } catch {
    // a run that refuses to report writes nothing
  }
  return { status, text: stdout + stderr, module: modules[0] as Module }
}

/** Every fault of the fixture: definition, before, after, and what its tests make of it. */
const expected = `
data.ts bulbs.small.watts 5 -> 5.15 killed
data.ts bulbs.large.watts 40 -> 41.2 survived
lamp.ts cautions current === 9 -> current !== 9 killed
lamp.ts cautions 9 -> 9.27 killed
lamp.ts cautions caution("hot", "warning", "It gets hot.") -> nothing killed
lamp.ts cautions "warning" -> "caution" killed
lamp.ts cautions out.each === 0.5 -> out.each !== 0.5 killed
lamp.ts cautions 0.5 -> 0.515 survived
lamp.ts cautions caution("dim", "note", "It is dim.") -> nothing unreached
lamp.ts cautions "note" -> "caution" unreached
lamp.ts solve count === 5 -> count !== 5 killed
lamp.ts solve 5 -> 5.15 killed
lamp.ts solve if (count === 5) return refuse("too-many", "Too many.", 1) -> never killed
lamp.ts solve 1 -> 1.03 survived
lamp.ts solve count === 4 -> count !== 4 killed
lamp.ts solve 4 -> 4.12 survived
lamp.ts solve if (count === 4) return refuse("many", "Many.", 1) -> never unreached
lamp.ts solve 1 -> 1.03 unreached
lamp.ts solve.each current / count -> current killed
lamp.ts lamp.input.current.max max: "10 A" -> max: "10.3 A" killed
lamp.ts lamp.input.count.min min: 1 -> min: 2 killed
lamp.ts lamp.input.count.max max: 5 -> max: 6 survived
lamp.ts lamp.input.count.default default: 1 -> default: 2 killed
lamp.ts lamp.check current === 3 -> current !== 3 killed
lamp.ts lamp.check 3 -> 3.09 killed
lamp.ts lamp.check count === 3 -> count !== 3 killed
lamp.ts lamp.check 3 -> 3.09 killed
lamp.ts lamp.check inconsistent(["count"], "three and three", "another") -> nothing killed
shade/fields.ts shadeFields.width.min min: 1 -> min: 1.03 killed
shade/fields.ts shadeFields.width.max max: 2 -> max: 2.06 killed
shade/fields.ts shadeFields.width.min min: 1, max: 2 -> min: 2, max: 1 killed
shade/index.ts shade.edge 4 * width -> width killed
shade/index.ts shade.edge 4 * width -> 4 killed
shade/index.ts shade.edge 4 -> 4.12 killed
sums.ts spare 7 -> 7.21 survived
sums.ts drop volts - loss -> volts + loss killed
sums.ts drop volts - loss -> volts killed
sums.ts least Math.min -> Math.max killed
sums.ts most Math.max -> Math.min unreached
sums.ts bearing y, x -> x, y killed
sums.ts isDim lux < 10 -> lux <= 10 unreached
sums.ts isDim lux < 10 -> lux >= 10 killed
sums.ts isDim 10 -> 10.3 survived
sums.ts isFull level >= 1 -> level > 1 killed
sums.ts isFull level >= 1 -> level < 1 killed
sums.ts isFull 1 -> 1.03 killed
sums.ts settled x > 1 -> x >= 1 killed
sums.ts settled x > 1 -> x <= 1 killed
sums.ts settled 1 -> 1.03 survived
sums.ts settled x / 2 -> x hung
sums.ts settled 2 -> 2.06 killed
sums.ts total sum += value -> sum -= value killed
sums.ts size width, height -> width: height, height: width killed
sums.ts unused -x -> x unreached
`
  .trim()
  .split("\n")

describe("planted faults in a fixture", () => {
  let run: ReturnType<typeof faults>
  beforeAll(() => {
    run = faults(["--all", "--at-least", "50"])
  }, 120_000)
  const told = ({ key, before, after, end }: Tried) => {
    const [file, definition] = key.split(" | ") as [string, string]
    return `${file.replace("src/lamp/", "")} ${definition} ${before} -> ${after} ${end}`
  }

  it("end as reading says, every one", () => {
    expect(run.module.sampled.map(told).sort()).toEqual([...expected].sort())
  })

  it("are counted; what is argued equivalent leaves the base, up to 5 %", () => {
    const killed = expected.filter((line) => /killed$|hung$/.test(line)).length
    expect(run.module).toMatchObject({ tried: expected.length, killed, equivalent: 1 })
    expect(run.text).toContain(`${((100 * killed) / (expected.length - 1)).toFixed(1)} % noticed (95 % interval`)
  })

  it("show wrong and stale arguments, tests left out, and what must not survive", () => {
    expect(run.module.stale).toEqual(["src/lamp/sums.ts | gone | sign | a - b -> a + b | 1"])
    expect(run.text).toContain("argued equivalent, yet noticed (take the entry out): src/lamp/sums.ts | drop | sign")
    expect(run.module.outside).toEqual(["tests/lamp/lamp.test.ts: starts another program"])
    expect(run.module.all.map((one) => `${one.kind} ${one.end}`).sort()).toEqual([
      "between killed",
      "caution killed",
      "caution unreached",
      "refusal killed",
      "refusal unreached",
    ])
    expect(run.text).toContain("lamp: a removed caution, refusal survives")
    expect(run.status).toBe(1)
  })

  it("can be chosen again by id, and name the test that noticed", () => {
    const drop = run.module.sampled.find((one) => one.before === "volts - loss") as Tried
    const again = faults(["--fault", drop.id])
    expect(again.module.sampled.map((one) => one.key)).toEqual([drop.key])
    expect(again.module.sampled[0]?.by).toContain("12 and 2")
    expect(again.status).toBe(0)
  })

  it("are not reported on while a test fails without any, unless it is set aside by name", () => {
    const red = faults(["--sample", "1"], { LAMP_BROKEN: "1" })
    expect(red.status).not.toBe(0)
    expect(red.text).toContain("1 tests fail without any fault")
    expect(red.module).toBeUndefined()
    const aside = faults(["--sample", "1", "--red-aside", "--at-least", "0"], { LAMP_BROKEN: "1" })
    expect(aside.module.red).toEqual(["tests/lamp/lamp.test.ts: fails by itself"])
    expect(aside.status).toBe(1)
  })
})
