import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { check } from "../../src/command/check.js"
import { columnsOf, type Desk, deskOf, wrapped } from "../../src/command/desk.js"
import { perform } from "../../src/command/perform.js"
import { placeAt, placesOf } from "../../src/command/places.js"
import { run } from "../../src/command/run.js"
import { starters } from "../../src/starters/index.js"

describe("places in a document's text", () => {
  it("are those of its values, whatever it holds", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), fc.constantFrom(0, 1, 3), (value, indent) => {
        const text = JSON.stringify(value, null, indent)
        const { places, fault, twice } = placesOf(text)
        expect([fault, twice]).toEqual([null, []])
        const walk = (one: unknown, path: string): void => {
          // names that spell another path apart: they stand at one place in the list
          const at = places.get(path) as number
          if (typeof one !== "object" || one === null) expect(text.startsWith(JSON.stringify(one), at) || /[.[\]]|^$/.test(path)).toBe(true)
          else
            for (const [key, inner] of Object.entries(one))
              if (/^\w+$/.test(key)) walk(inner, Array.isArray(one) ? `${path}[${key}]` : path ? `${path}.${key}` : key)
        }
        walk(value, "")
      }),
    )
  })
  it("take what JSON takes, and nothing else", () => {
    const texts = [
      "",
      "{",
      "[1,]",
      '{"a":1,}',
      '{"a" 1}',
      "{a:1}",
      "[1 2]",
      "01",
      "-",
      "1.",
      "1e",
      '"a',
      '"\\x"',
      '"\\u12"',
      "nul",
      "[]]",
      "{} {}",
      "'a'",
      "[1]",
      '{"a":{"b":[]}}',
      "-0.5e+3",
      '"\\u00e9\\n"',
      "true",
      " null ",
    ]
    for (const text of texts) {
      let sound = true
      try {
        JSON.parse(text)
      } catch {
        sound = false
      }
      expect([text, placesOf(text).fault === null]).toEqual([text, sound])
    }
    expect(placesOf("[".repeat(100_000)).fault).not.toBeNull()
  })
  it("tell a name that stands twice, and count lines of any kind", () => {
    const text = '{\r\n "a": 1,\r\n  "a": 2\n}'
    const [second] = placesOf(text).twice
    expect(second?.path).toBe("a")
    expect(placeAt(text, second?.offset as number)).toEqual({ line: 3, column: 3 })
  })
})

describe("looks", () => {
  const ends = (isTTY: boolean, env: Record<string, string> = {}, columns = 60) => {
    const said: string[] = []
    const end = { isTTY, columns, write: (text: string) => said.push(text) }
    return { said, desk: deskOf({ env, stdout: end, stderr: end }) }
  }
  it("have colour and wrapped lines on a terminal only, and none where none is wanted", () => {
    expect(ends(true).desk).toMatchObject({ colour: true, watched: true, columns: 60 })
    expect(ends(true, { NO_COLOR: "1" }).desk).toMatchObject({ colour: false, columns: 60 })
    expect(ends(true, { TERM: "dumb" }).desk).toMatchObject({ colour: false, watched: false })
    expect(ends(false).desk).toMatchObject({ colour: false, watched: false, columns: null })
    const { desk, said } = ends(true)
    expect(check(desk, starters.tail.rig, { json: false, all: true })).toBe(0)
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colours are what is looked at
    const plain = said.join("").replace(/\u001b\[\d+m/g, "")
    expect(said.join("")).not.toBe(plain)
    const wide = plain.split("\n").filter((line) => line.length > 60 && !/[✗△?✓] /.test(line))
    expect(wide).toEqual([])
  })
  it("tell a programme that leaves a step too little time by 1, and one that goes by 0", () => {
    const { desk, said } = ends(false)
    const { rig } = starters.tail
    expect(perform(desk, rig, { json: false })).toBe(0)
    expect(said.join("")).toContain("Every step arrives")
    const hasty = {
      ...rig,
      programme: [
        { at: "0 s", motion: "tail", to: 1 },
        { at: "0.3 s", motion: "tail", to: 0 },
      ],
    } as const
    expect(perform(desk, hasty, { json: true })).toBe(1)
    expect((JSON.parse(said.at(-1) ?? "") as { steps: { duration: number | null }[] }).steps[0]?.duration).toBeNull()
  })
  it("let no text of a document move the cursor", () => {
    const { desk, said } = ends(true)
    const rig = { ...starters.tail.rig, name: "tail \u001b[2J\u0007" }
    check({ ...desk, colour: false } as Desk, rig, { json: false, all: true })
    expect(said.join("")).not.toContain("\u001b")
    expect(wrapped("a\u001b[1m b", null, "")).not.toContain("\u001b")
    expect(columnsOf([["a\tb\u0007"]])).toEqual(["a b\ufffd"])
  })
  it.each([
    [["chek", "a"], "did you mean check"],
    [["check"], "expected one file"],
    [["check", "a", "b"], "expected one file"],
    [["check", "a", "--colour"], "--colour"],
    [["check", "a", "--format", "html"], "no --format"],
    [["report", "a", "--format", "pdf"], "html, markdown or json"],
    [["report", "a", "--json", "--format", "html"], "--json"],
    [["diagnose", "a", "--json"], "a file of readings"],
    [["diagnose", "-"], "a file of readings"],
    [["diagnose", "-", "-"], "received both"],
    [["new"], "a kind of creature"],
    [["new", "wing"], "did you mean wings"],
    [["explain", "voltagedrop"], "did you mean voltageDrop"],
    [["explain", "pack.voltageDrop"], "no solver"],
  ])("say what is wrong with %j", (args, words) => {
    const { desk, said } = ends(false)
    expect(run(desk, args, "1.2.3")).toBe(2)
    expect(said.join("")).toContain(words)
  })
  it("tell progress only to somebody who watches", () => {
    const { desk, said } = ends(true)
    const code = run(desk, ["explain", "nothing"], "1.2.3")
    expect([code, said.join("")]).toEqual([2, expect.stringContaining("no solver")])
    expect(run(desk, ["--version"], "1.2.3")).toBe(0)
    expect(said.at(-1)).toBe("1.2.3\n")
  })
})
