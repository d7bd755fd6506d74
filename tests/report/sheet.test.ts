import { describe, expect, it } from "vitest"
import { buildSheet } from "../../src/report/index.js"
import { circuitsOf } from "../../src/report/sheet/wiring.js"
import { assessRig, move } from "../../src/rig/index.js"
import { starters } from "../../src/starters/index.js"
import { creature } from "../helpers/rigs.js"

const wings = buildSheet(starters.wings.rig)
const jaw = buildSheet(starters.jaw.rig)

type Sheet = ReturnType<typeof buildSheet>
const reading = ({ content }: Sheet, step: string, where: string) =>
  content.firstPower.find((s) => s.title.startsWith(step))?.readings.find((r) => r.where === where)?.value as number

describe("readings to expect", () => {
  // two wires of AWG 18 (ASTM B258: 0.127 mm · 92^((36 − n)/39)) in copper of 58 MS/m, 0.393 % a kelvin, four contacts of 5 mΩ,
  // switch and fuse; three cells of 40 mΩ and 30 mΩ of leads
  const across = 0.127e-3 * 92 ** (18 / 39)
  const wire = (2 * 0.9 * (1 + 0.00393 * 5)) / 58e6 / ((Math.PI / 4) * across ** 2)
  const path = 3 * 0.04 + 0.03 + wire + 4 * 0.005 + 0.015 + 0.015
  const open = reading(wings, "The source alone", "pack")

  it("are Ohm's law where nothing is regulated", () => {
    expect(reading(wings, "Fuses in", "wing line")).toBeCloseTo(open, 12)
    expect(reading(wings, "Fuses in", "out of pack")).toBe(0)
    expect(reading(wings, "Loads connected", "out of pack")).toBeCloseTo(0.34, 12)
    expect(reading(wings, "Loads connected", "wing line")).toBeCloseTo(open - 0.34 * path, 4)
    expect(reading(wings, "Drives connected", "wing line")).toBeCloseTo(open - 0.34 * path, 4)
  })
  it("while moving are what the full calculation of the move finds", () => {
    const { out, back } = move(starters.wings.rig)
    const amps = Math.max(out.peakCurrent, back.peakCurrent) + 0.34
    expect(reading(wings, "wings: first move", "out of pack")).toBeCloseTo(amps, 3)
    expect(reading(wings, "wings: first move", "wing line")).toBeCloseTo(open - amps * path, 3)
  })
  it("behind a converter are its balance of power", () => {
    // 0.12 A at 5.5 V; 80 % at 0.1 A and 90 % at 1 A in a straight line; 8 mA for itself
    const efficiency = 0.8 + (0.1 * 0.02) / 0.9
    const [input, amps] = [reading(jaw, "Loads connected", "servo line, converter in"), reading(jaw, "Loads connected", "out of pack")]
    expect(reading(jaw, "Loads connected", "servo line, converter out")).toBe(5.5)
    expect((amps - 0.008) * input * efficiency).toBeCloseTo(0.12 * 5.5, 9)
    expect(reading(jaw, "Fuses in", "out of pack")).toBeCloseTo(0.008, 12)
  })
  it("are nothing behind an open fuse or switch, and all there is where the document names neither", () => {
    expect(reading(jaw, "Source connected", "servo line, converter out")).toBe(0)
    const rig = structuredClone(starters.jaw.rig) as unknown as { power: { buses: object[] }; motions: { bus: string | null }[] }
    const [main] = rig.power.buses
    if (main) Object.assign(main, { fuseRating: null, fuseResistance: 0, switchRating: null, switchResistance: 0 })
    if (rig.motions[0]) rig.motions[0].bus = null
    const bare = buildSheet(rig as never)
    expect(reading(bare, "Source connected", "main line")).toBeCloseTo(reading(bare, "The source alone", "pack"), 1)
    expect(reading(bare, "Source connected", "servo line, converter out")).toBe(5.5)
    expect(bare.content.circuits[0]?.wires.map((w) => `${w.from} ${w.polarity} ${w.to}`)).toEqual(["pack + main line", "pack − main line"])
    const move = bare.content.firstPower.find((step) => step.title.startsWith("jaw"))
    expect(move?.readings).toEqual([])
    expect(move?.act).toContain("no bus for jaw")
  })
  it("give up where the supply does, and say so", () => {
    const rig = structuredClone(starters.jaw.rig) as unknown as { power: { loads: { current?: string }[] } }
    const [load] = rig.power.loads
    if (load) load.current = "30 A"
    const sheet = buildSheet(rig as never)
    expect(sheet.markdown).toContain("none: what stops it has to be mended first")
    expect(sheet.markdown).not.toMatch(/NaN|Infinity|undefined|null/)
  })
})

describe("wires", () => {
  it.each(Object.entries(starters))(
    "of %s lead from each consumer to its source, plus through the fuse and minus past it",
    (_, { rig }) => {
      const circuits = circuitsOf(assessRig.read(rig) as never)
      const all = circuits.flatMap((c) => c.wires)
      expect(new Set(all.map((w) => w.mark)).size).toBe(all.length)
      const back = (to: string, polarity: string): string[] => {
        const wire = all.find((w) => w.to === to && w.polarity === polarity)
        if (!wire) return [to]
        // the converter's own inside joins its two sides
        const from = wire.from.endsWith("converter out") ? wire.from.replace("out", "in") : wire.from
        return [to, ...back(from, polarity)]
      }
      const ends = [...(rig.power?.loads?.map((l) => l.name) ?? []), ...all.map((w) => w.to).filter((to) => to.includes(": drive"))]
      for (const end of new Set(
        ends
          .filter((one) => !all.some((w) => w.to === one && w.polarity === "signal"))
          .concat(...(rig.power?.loads?.map((l) => l.name) ?? [])),
      )) {
        const [plus, minus] = [back(end, "+"), back(end, "−")]
        expect(plus.at(-1)).toBe("pack")
        expect(minus.at(-1)).toBe("pack")
        const fuse = plus.findIndex((p) => p.endsWith(": fuse"))
        const toggle = plus.findIndex((p) => p.endsWith(": switch"))
        // nearer to the source than the switch
        expect(fuse).toBeGreaterThan(toggle)
        expect(toggle).toBeGreaterThan(0)
        expect(minus.filter((p) => /fuse|switch$/.test(p))).toEqual([])
      }
      // the jaw's second run hangs on the first one's fuse; what is behind a converter hangs on none before it
      if (circuits.length > 1) {
        expect(circuits.map((c) => c.fuseBefore)).toEqual([null, { bus: "main line", rating: 3 }])
        const behind = structuredClone(rig) as unknown as { power: { buses: object[] } }
        behind.power.buses.push({ name: "lamp line", from: "servo line" })
        expect(circuitsOf(assessRig.read(behind as never) as never).at(-1)?.fuseBefore).toBeNull()
      }
      for (const { bus, fuse } of circuits) expect(fuse === null).toBe(!rig.power?.buses.find((b) => b.name === bus)?.fuseRating)
    },
  )
})

/** Crosses of a template in millimetres of the paper, with the sheet they are on. */
const crosses = (pages: readonly string[]) =>
  pages.flatMap((page, sheet) => {
    const [, tx = "0", ty = "0"] = /translate\((-?[\d.]+) (-?[\d.]+)\)/.exec(page) ?? []
    return [...page.matchAll(/d="M(-?[\d.]+) (-?[\d.]+)h14[^"]*"[^>]*class="hole"/g)].map(([, x, y]) => ({
      sheet,
      x: Number(x) + 7 + Number(tx),
      y: Number(y) + Number(ty),
    }))
  })

describe("templates", () => {
  const [frame, arm] = wings.templates
  it("stand a millimetre for a millimetre, with both bars of the scale on every page", () => {
    expect(wings.templates.map((t) => t.name)).toEqual(["frame plate, wing of wings", "arm, wing of wings", "curve of the wing tip"])
    for (const page of wings.templates.flatMap((t) => t.pages)) {
      expect(page).toMatch(
        /^<svg [^>]*viewBox="0 0 180 240" width="180mm" height="240mm" role="img" aria-label="[^"]{5,}"><title>[^<]+<\/title><desc>[^<]+<\/desc>/,
      )
    }
    for (const page of [...(frame?.pages ?? []), ...(arm?.pages ?? [])]) {
      expect(page).toContain('d="M14 234h100"')
      expect(page).toContain('d="M14 234v-50"')
    }
  })
  it("put the holes where the document has them, each whole on some sheet", () => {
    // hinge at (50, 0), fixed pivot at (−10, −180): 60 mm inwards and 180 mm down
    expect(wings.content.plates[0]?.holes).toEqual([
      { name: "hinge", x: 0, y: 0, pin: 0.006 },
      { name: "fixed pivot", x: expect.closeTo(-0.06, 12), y: expect.closeTo(-0.18, 12), pin: null },
    ])
    const places = crosses(frame?.pages ?? [])
    const perSheet = frame?.pages.length ?? 0
    expect(places).toHaveLength(2 * perSheet)
    const [a, b] = places as [(typeof places)[number], (typeof places)[number]]
    expect(b.x - a.x).toBeCloseTo(-60, 2)
    expect(b.y - a.y).toBeCloseTo(180, 2)
    for (let hole = 0; hole < 2; hole++)
      expect(places.filter((_, i) => i % 2 === hole).some(({ x, y }) => x > 7 && x < 173 && y > 7 && y < 171)).toBe(true)
  })
  it("lay the arm along its own line", () => {
    const [, moving] = wings.content.plates[1]?.holes ?? []
    expect(moving?.x).toBeCloseTo(0.068 * Math.cos(Math.PI / 18), 12)
    expect(moving?.y).toBeCloseTo(-0.068 * Math.sin(Math.PI / 18), 12)
    expect(wings.content.plates[1]).toMatchObject({ count: 2, mirrored: 1 })
  })
  it("drill one hole where several feathers turn on one bolt, and each where they do not", () => {
    const { plates } = buildSheet(starters.fan.rig).content
    expect(plates).toEqual([])
    const rig = structuredClone(starters.fan.rig) as unknown as { motions: { mechanisms: object[] }[] }
    Object.assign(rig.motions[0]?.mechanisms[0] ?? {}, { pitch: "12 mm", pitchAngle: "-90 deg", vanes: 4 })
    const [plate] = buildSheet(rig as never).content.plates
    expect(plate?.holes.map((h) => [h.name, Math.round(h.x * 1e6), Math.round(h.y * 1e6)])).toEqual([
      ["pivot 1", 0, 0],
      ["pivot 2", 0, -12000],
      ["pivot 3", 0, -24000],
      ["pivot 4", 0, -36000],
    ])
  })
  it("of a servo's rod give the length that it is cut to, the same in every pose", () => {
    // shafts 80 mm apart, horns of 20 and 28 mm square to it and 90° from the arm's −25° + 115°
    const rod = jaw.content.cuts.find((c) => c.what.startsWith("rod"))
    expect(rod?.length).toBeCloseTo(Math.hypot(0.08, 0.028 - 0.02), 12)
  })
})

describe("lists", () => {
  it("count what the document counts", () => {
    const { parts, price, needs, cuts } = wings.content
    expect(parts.map((p) => p.count)).toEqual([1, 2, 1, 1])
    expect(price).toBe(42 + 2 * 36 + 44 + 24)
    expect(needs.find((n) => n.what.startsWith("cell"))).toMatchObject({ count: 3, for: "pack" })
    expect(needs.find((n) => n.what === "linear actuator")).toMatchObject({ count: 2, for: "wings" })
    expect(cuts.map(({ count, length }) => [count, length])).toContainEqual([2, 0.8])
    // legs measured to the backs of a bend of 50°: longer than the tube by what the corner saves
    const tube = cuts.find((c) => c.what.startsWith("tube"))?.length as number
    expect(tube).toBeGreaterThan(0.4)
    expect(tube).toBeLessThan(0.48)
    const tail = buildSheet(starters.tail.rig).content.cuts
    expect(tail.find((c) => c.what === "cable")).toMatchObject({ count: 2, length: 0.8 })
    const fan = buildSheet(starters.fan.rig).content.cuts.filter((c) => c.what.startsWith("thread"))
    expect(fan).toHaveLength(6)
  })
  it("come from any creature, and no name of a document becomes markup", () => {
    const rig = structuredClone(creature("four-bar-dragon")) as unknown as {
      name: string
      parts: { name: string }[]
      power: { loads: { name: string }[] }
    }
    rig.name = "<b>dragon</b> | a"
    if (rig.parts[0]) rig.parts[0].name = "frame | <img src=x>"
    const { html, markdown, content } = buildSheet(rig as never)
    expect(html).not.toMatch(/<b>dragon|<img/)
    expect(markdown).not.toMatch(/(?<!\\)<|^#+ <b>/m)
    for (const line of markdown.split("\n").filter((l) => l.startsWith("| "))) expect(line.match(/(?<!\\)\|/g)?.length).toBeGreaterThan(2)
    expect(JSON.parse(JSON.stringify(content))).toEqual(content)
    expect(html).not.toMatch(/NaN|Infinity|undefined/)
  })
})

describe("the first power-up followed to the letter", () => {
  const act = ({ content }: Sheet, step: string) => content.firstPower.find((s) => s.title.startsWith(step))?.act as string
  const { power } = starters.wings.rig
  const [bus] = power?.buses ?? []
  const { fuseRating: _, fuseResistance: __, ...fuseless } = bus as NonNullable<typeof bus>
  const without = buildSheet({ ...starters.wings.rig, power: { ...power, buses: [fuseless] } as NonNullable<typeof power> })

  it("asks for a fuse before anything is connected, where the document names none on the way", () => {
    expect(act(without, "No source connected")).toMatch(/no fuse on the way to wing line/)
    expect(act(wings, "No source connected")).not.toMatch(/no fuse/)
  })
  it("says how to measure current before the first reading of one", () => {
    const steps = wings.content.firstPower
    const first = steps.findIndex((s) => s.readings.some((r) => r.quantity === "current"))
    expect(steps[first]?.act).toMatch(/in line.*Never touch plus and minus/s)
  })
  it("puts fuses in while switches are off, and swaps leads behind the driver, off", () => {
    expect(act(wings, "Fuses in")).toMatch(/^With the switches off/)
    expect(act(wings, "wings: first move")).toMatch(/switch off.*swap the two leads.*never those that feed the driver/s)
  })
  it("has nobody's hands on the arms, and no fuse pulled under load, as power is lost", () => {
    expect(act(wings, "Stop and power lost")).not.toMatch(/held by a helper|pull the fuse/)
  })
})
