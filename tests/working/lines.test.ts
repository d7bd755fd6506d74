import { all, create } from "mathjs"
import { describe, expect, it } from "vitest"
import { type WorkedStep, workingOfSi } from "../../src/working/index.js"
import { solvers } from "../helpers/solvers.js"

// whole mathjs, apart from the part that made the lines
const calculator = create(all as never)
const UNITS = ["m", "s", "kg", "A", "K", "N", "J", "W", "V", "C", "F", "H", "Hz", "Pa", "rad", "ohm"]

/** A printed line keyed in as it stands: units dropped, which only one system of units lets one do. */
function keyedIn(text: string): unknown {
  const plain = text
    .replace(/²/g, "^2")
    .replace(/³/g, "^3")
    .replace(/⁴/g, "^4")
    .replace(/·/g, "*")
    .replace(/Ω/g, "ohm")
    .replace(/([\d\])]) \//g, "$1/")
  return calculator.evaluate(plain, Object.fromEntries(UNITS.map((unit) => [unit, 1])))
}
const list = (value: unknown): number[] =>
  calculator.isMatrix(value) ? (value.toArray() as unknown[]).flat().map(Number) : [Number(value)]

/** Whether a number comes to what is printed, in its last figure. */
function comesTo(found: number, printed: string): boolean {
  const last = 10 ** (Math.floor(Math.log10(Math.abs(Number(printed)) || 1)) - 3)
  return Math.abs(found - Number(printed)) <= 0.501 * last
}
/** The sides of an equation: where its equals sign stands in no parentheses. */
function sidesOf(text: string): [string, string] {
  const ends = [...text.matchAll(/ = /g)].map(({ index }) => index)
  const at = ends.find((i) => text.slice(0, i).split("(").length === text.slice(0, i).split(")").length) as number
  return [text.slice(0, at), text.slice(at + 3)]
}
const numbersIn = (text: string): string[] => text.match(/-?\d[\d.]*(?:e[+-]?\d+)?(?![²³⁴])/g) ?? []

describe("a pocket calculator follows every line of every solver's example", () => {
  let [followed, cut] = [0, 0]
  it.each(solvers.map(({ id, solver }) => [id, solver] as const))("%s", (_, solver) => {
    const { steps } = workingOfSi(solver, solver.read(solver.example))
    const off: string[] = []
    const follow = (step: WorkedStep, numbers: string, answer: string) => {
      if (numbers.includes("…") || answer.includes("…")) {
        cut++
        return
      }
      const printed = answer.startsWith("[") ? numbersIn(answer.slice(0, answer.indexOf("]"))) : numbersIn(answer).slice(0, 1)
      try {
        const found = list(keyedIn(numbers))
        followed++
        if (found.length !== printed.length || !found.every((v, i) => comesTo(v, printed[i] as string)))
          off.push(`${step.symbol}: ${numbers} is ${found.join()}, printed ${answer}`)
      } catch (error) {
        off.push(`${step.symbol}: ${numbers}: ${String(error)}`)
      }
    }
    for (const step of steps) {
      if (step.kind === "formula") follow(step, step.numbers, step.inSi)
      if (step.kind !== "equation") continue
      const [left, right] = sidesOf(step.numbers)
      const [l, r] = step.inSi.split(" = ") as [string, string]
      follow(step, left, l)
      follow(step, right, r)
    }
    expect(off).toEqual([])
  })
  it("and few are too long to be printed whole", () => {
    expect(followed).toBeGreaterThan(1000)
    expect(cut).toBeLessThan(followed / 10)
  })
})
