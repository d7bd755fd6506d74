import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { remedies } from "../../src/advice/index.js"
import { escapeMarkdown, escapeXml } from "../../src/drawing/index.js"
import { si } from "../../src/quantity/index.js"
import { type ReportState, report } from "../../src/report/index.js"
import { assessRig, move, type Rig, readRig, rigWith, writeRig } from "../../src/rig/index.js"
import { type AnyFields, InputError } from "../../src/solver/index.js"
import { inputs } from "../helpers/arbitrary.js"
import { creatureNames, demo, demoNames } from "../helpers/rigs.js"
import { kit } from "../rig/second/kit.js"

const names = [...demoNames, ...creatureNames]
const rigOf = (name: string): Rig => rigWith().read(demo(name))

const points = (d: string) => [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const)
const drawn = (html: string, kind: string) =>
  [...html.matchAll(new RegExp(`<path d="([^"]+)" class="${kind}"`, "g"))].map(([, d]) => d as string)

describe.each(names)("the report of %s", (name) => {
  const rig = rigOf(name)
  const { html, markdown, content } = report(rigOf(name))
  const { findings, fallsShort, unknown, cautions } = assessRig(rig)

  it("is one self-contained page, every element closed, every picture named", () => {
    expect(html).not.toMatch(/<script|<link|<img|src=|href=|url\(|@import/)
    expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/)
    expect(markdown).not.toMatch(/NaN|undefined|Infinity|\[object/)
    expect(html).toMatch(/^<!doctype html>\n<html lang="en">/)
    for (const needed of ['name="viewport"', "@media print", "prefers-color-scheme:dark"]) expect(html).toContain(needed)
    const pictures = [...html.matchAll(/<svg[^>]*>/g)]
    expect(pictures.length).toBe(1)
    for (const [tag] of pictures) expect(tag).toMatch(/role="img".*aria-label="[^"]+"|aria-label="[^"]+".*role="img"/)
    for (const tag of [
      "section",
      "table",
      "tbody",
      "tr",
      "td",
      "th",
      "figure",
      "svg",
      "ul",
      "li",
      "main",
      "div",
      "g",
      "details",
      "summary",
    ])
      expect((html.match(new RegExp(`<${tag}[ >]`, "g")) ?? []).length, tag).toBe((html.match(new RegExp(`</${tag}>`, "g")) ?? []).length)
  })
  it("answers first: state, times, what falls short first, what could hurt, one picture, then the checks", () => {
    const places = [
      'class="answer',
      ">Times, the worst",
      ">What ",
      " could hurt somebody</h2>",
      "<svg",
      "<h2>Checks</h2>",
      "<h2>Cautions</h2>",
    ].map((one) => html.indexOf(one))
    expect(places.every((p) => p > 0)).toBe(true)
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(content.first).toEqual(fallsShort ? findings[0] : null)
    if (content.first) expect(html.indexOf(escapeXml(content.first.sentence.slice(1)))).toBeLessThan(html.indexOf("<h2>Checks</h2>"))
    // a maker does not have to scroll for the picture: little stands before it
    expect(html.slice(html.indexOf("<main>"), html.indexOf("<svg")).replace(/<[^>]*>/g, " ").length).toBeLessThan(2500)
  })
  it("tells each motion's worst time, no less than it takes as stated, against what was wanted", () => {
    expect(content.motions.map((m) => m.name)).toEqual(rig.motions.map((m) => m.name))
    for (const { name: motion, out, back } of content.motions) {
      const stated = move({ ...rig, motion })
      for (const [way, least, id] of [
        [out, stated.outDuration, "duration-out"],
        [back, stated.backDuration, "duration-back"],
      ] as const) {
        expect(way.duration).toBeGreaterThanOrEqual(least * (1 - 1e-3))
        const found = findings.find((f) => f.id === id && f.subject === motion)
        expect(way.wanted).toBe(found?.limit ?? null)
        if (found?.value !== null) expect(way.duration).toBe(found?.value)
      }
    }
  })
  it("holds every finding once by its subject, with its relation, in page and Markdown", () => {
    expect(content.subjects.flatMap((s) => s.findings.map((f) => `${f.id} ${f.subject}`)).sort()).toEqual(
      findings.map((f) => `${f.id} ${f.subject}`).sort(),
    )
    for (const { subject, findings: own } of content.subjects)
      for (const f of own) {
        expect(f.subject).toBe(subject)
        expect(markdown).toContain(escapeMarkdown(f.title))
        expect(html).toContain(escapeXml(f.title.slice(1)))
        if (f.relation === "at-most") expect(f.shownLimit).toMatch(/^≤ /)
        if (f.relation === "at-least") expect(f.shownLimit).toMatch(/^≥ /)
        if (f.shownLimit && f.because === null) expect(html).toContain(`<td class="n">${escapeXml(f.shownLimit)}</td>`)
        if (f.shownLimit && f.because) expect(html).toContain(`must be ${escapeXml(f.shownLimit)}</span>`)
        if (f.missing)
          for (const text of [html, markdown]) expect(text).toContain(text === html ? escapeXml(f.missing) : escapeMarkdown(f.missing))
      }
  })
  it("says of every caution which checks raised it, and tells none twice", () => {
    expect(content.cautions.map((c) => c.message).sort()).toEqual(cautions.map((c) => c.message).sort())
    expect(new Set(content.cautions.map((c) => c.message)).size).toBe(content.cautions.length)
    const standing = content.cautions.filter((c) => c.raisedBy.length === 0)
    expect(standing.length).toBe(unknown ? 2 : 1)
    for (const { raisedBy } of content.cautions)
      for (const by of raisedBy) expect(findings.some((f) => f.title === by.title && f.subject === by.subject)).toBe(true)
    expect(content.cautions[0]?.message).toMatch(/not a clearance.*take it off/)
  })
  it("clips nothing of its picture", () => {
    const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(html) as unknown as [string, string, string]
    for (const kind of ["figure", "leading", "other", "way"])
      for (const d of drawn(html, kind))
        for (const [x, y] of points(d)) {
          expect(x).toBeGreaterThanOrEqual(0)
          expect(x).toBeLessThanOrEqual(Number(width))
          expect(y).toBeGreaterThanOrEqual(0)
          expect(y).toBeLessThanOrEqual(Number(height))
        }
  })
  it("is the same as JSON, and brought to version 2 first", () => {
    expect(JSON.parse(JSON.stringify(content))).toEqual(content)
    expect(report(rig).content).toEqual(content)
  })
})

describe("the answer", () => {
  const base = rigOf("nine-feather-fan")
  const part = (motion: number, more: object): Rig =>
    ({ ...base, motions: base.motions.map((m, i) => (i === motion ? { ...m, ...more } : m)) }) as unknown as Rig
  // a servo that locks leaves nothing of the fan that falls short
  const jaw = base.motions[1] as Rig["motions"][number]
  const sound = part(1, { drive: { ...jaw.drive, holdingTorque: "1 N m" } })
  const rows: readonly (readonly [ReportState, Rig, RegExp])[] = [
    ["not-all-judged", sound, /^Nothing falls short of what could be judged\. \d+ checks could not be made\.$/],
    ["could-hurt", base, /^Moves, but could hurt somebody: 1 safety check falls short/],
    ["misses-wishes", { ...sound, budget: { price: 20 } }, /^Works, but 1 wish is missed/],
    ["could-hurt", { ...base, budget: { price: 20 } }, /1 safety check falls short, and 1 wish is missed/],
    [
      "does-not-work",
      part(0, {
        mechanisms: base.motions[0]?.mechanisms.map((m) => ({ ...m, masses: [{ name: "lead", mass: "12 kg", radius: "0.3 m" }] })),
      }),
      /^Does not work yet: \d+ checks fall short/,
    ],
  ]
  it.each(rows)("%s", (state, rig, answer) => {
    const { content, html } = report(rig)
    expect(content.state).toBe(state)
    expect(content.answer).toMatch(answer)
    expect(html).toContain(escapeXml(content.answer))
  })
  it("a motion that is stopped has no time, and the page says so and why", () => {
    const { content, html } = report(rows[4]?.[1] as Rig)
    expect(content.motions[0]?.out.duration).toBeNull()
    expect(html).toContain("✗ stopped")
    expect(html).toContain("Mend first: passes its whole travel (fan)")
    expect(content.subjects.find((s) => s.subject === "fan")?.findings.find((f) => f.id === "passes")?.verdict).toBe("falls short")
  })
  it("never reads as permission, also where nothing falls short", () => {
    const { html, markdown } = report(sound)
    for (const text of [html, markdown]) expect(text).toMatch(/not a clearance/)
    expect(html).toMatch(/safety checks could not be made/)
  })
  it("counts what rests on defaults: each value said takes one of them away, a section more brings its own", () => {
    const { defaults } = report(sound).content
    const said = part(0, {
      drive: { ...sound.motions[0]?.drive, count: 1 },
      mechanisms: sound.motions[0]?.mechanisms.map((m, i) => (i === 0 ? { ...m, count: 1, mount: { ...m.mount, tilt: 0 } } : m)),
    })
    expect(report({ ...said, motions: [said.motions[0], sound.motions[1]] as Rig["motions"] }).content.defaults).toEqual({
      taken: defaults.taken - 3,
      of: defaults.of,
    })
    const more = report({ ...sound, posture: { leanLeft: "2 deg" } }).content.defaults
    expect(more).toEqual({ taken: defaults.taken - 1, of: defaults.of })
    expect(report({ ...sound, budget: { price: 300, mass: "5 kg", parts: 30 } }).content.defaults).toEqual({
      taken: defaults.taken,
      of: defaults.of + 1,
    })
  })
  it("refuses a faulty document with every fault", () => {
    const faulty = { ...base, wearer: { bodyMass: "68 km", stature: "1.7 m" }, wnd: {} } as unknown as Rig
    try {
      report(faulty)
      throw new Error("not refused")
    } catch (error) {
      expect(error).toBeInstanceOf(InputError)
      expect((error as InputError).issues.map((i) => i.path.join("."))).toEqual(["wearer.bodyMass", "wnd"])
    }
  })
})

describe("the report of a kit of one's own", () => {
  const rig = {
    version: 2,
    name: "Bell of the parade",
    motions: [
      {
        name: "bell",
        drive: {
          type: "shaft-motor",
          turn: "3 rad",
          torqueConstant: 1,
          backEmfConstant: 1.4,
          windingResistance: "1 ohm",
          frictionCurrent: "0.2 A",
        },
        transmission: [{ type: "drum", drumDiameter: "40 mm", lineDiameter: "1 mm" }],
        mechanisms: [{ name: "yoke", type: "slide-crank", crank: "0.3 m", mass: "0.4 kg", startLength: "0 m" }],
      },
    ],
  } as const
  it("goes through the same typed door", () => {
    const { content, html } = report(rig, kit)
    const out = kit.move(rig)
    expect(content.motions[0]?.out.duration).toBeCloseTo(out.outDuration, 8)
    expect(html).toContain("<svg")
    // @ts-expect-error a member that the rig's own verbs do not know
    expect(() => report(rig)).toThrow(InputError)
  })
})

describe("the picture", () => {
  const rig: Rig = {
    version: 2,
    name: "One arm",
    motions: [
      {
        name: "arm",
        drive: {
          type: "hobby-servo",
          fromAngle: "-50 deg",
          toAngle: "25 deg",
          firstVoltage: "6 V",
          firstStallTorque: "2 N m",
          firstTime: "0.2 s",
          stallCurrent: "8 A",
        },
        mechanisms: [
          {
            name: "arm",
            type: "turned-arm",
            startAngle: "-50 deg",
            length: "0.4 m",
            masses: [{ name: "hand", mass: "0.1 kg", radius: "0.2 m" }],
          },
        ],
      },
    ],
  }
  const barOf = (html: string) => {
    const [, , length] = drawn(html, "scale")[0]?.match(/h(-?[\d.]+)v-5$|h([\d.]+)v-5/) ?? []
    const word = /class="word"[^>]*>([^<]+)</.exec(html)?.[1] as string
    return { pixels: Number(length ?? drawn(html, "scale")[0]?.match(/h([\d.]+)/)?.[1]), metres: si("length", word) }
  }
  it("has the arm where it starts and ends, to scale, and its tip on an arc between", () => {
    const { html } = report(rig)
    const { pixels, metres } = barOf(html)
    const [from, to] = drawn(html, "leading").map((d) => {
      const [[x1, y1], [x2, y2]] = points(d) as unknown as [[number, number], [number, number]]
      expect((Math.hypot(x2 - x1, y2 - y1) / pixels) * metres).toBeCloseTo(0.4, 2)
      return (Math.atan2(y1 - y2, x2 - x1) * 180) / Math.PI
    })
    expect(from).toBeCloseTo(-50, 1)
    expect(to).toBeCloseTo(25, 1)
    const [hinge] = points(drawn(html, "leading")[0] as string)
    const way = points(drawn(html, "way")[0] as string)
    expect(way.length).toBe(25)
    for (const [x, y] of way) expect((Math.hypot(x - (hinge?.[0] ?? 0), y - (hinge?.[1] ?? 0)) / pixels) * metres).toBeCloseTo(0.4, 2)
  })
  it("takes the side from which the motion is seen to move", () => {
    expect(report(rig).html).toContain("Seen from the front")
    const ahead = {
      ...rig,
      motions: rig.motions.map((m) => ({ ...m, mechanisms: m.mechanisms.map((one) => ({ ...one, mount: { heading: 0 } })) })),
    }
    expect(report(ahead).html).toContain("Seen from the wearer&#39;s right side")
  })
})

describe("rig documents", () => {
  it.each(demoNames)("%s survives a round trip unchanged", (name) => {
    const rig = rigOf(name)
    const text = writeRig(rig)
    expect(readRig(text)).toEqual(rig)
    expect(writeRig(readRig(text))).toBe(text)
  })
  it("random documents survive it too", () => {
    fc.assert(
      fc.property(
        inputs(assessRig.input as unknown as AnyFields, rigOf("nine-feather-fan") as unknown as Record<string, unknown>),
        (input) => {
          try {
            assessRig.read(input as unknown as Rig)
          } catch {
            return
          }
          expect(readRig(writeRig(input as unknown as Rig))).toEqual(JSON.parse(JSON.stringify(input)))
        },
      ),
      { numRuns: 20 },
    )
  })
  it.each([
    ["{", /JSON/],
    ["[]", /a document with version and name/],
    ['{"name":"x"}', /version: expected the version of the document's form/],
    ['{"version":2}', /name: expected/],
    ['{"version":3,"name":"x"}', /written for a later release/],
    ['{"version":0,"name":"x"}', /a later one was written/],
    ['{"version":2,"name":"x","motions":[],"wearr":null}', /did you mean 'wearer'/],
  ] as const)("%s is refused", (text, message) => {
    expect(() => readRig(text)).toThrow(InputError)
    expect(() => readRig(text)).toThrow(message)
  })
})

describe("a report with what to change", () => {
  const rig = { ...rigOf("folding-skew-wing") }
  const found = remedies(rig, { allowed: ["motions[].drive"] })
  const { content, html, markdown } = report(rig, { remedies: found })

  it("tells the first change on its first screen, and beside each finding its own", () => {
    const [first] = found.remedies
    expect(first).toBeDefined()
    expect(html.indexOf(escapeXml(first?.text ?? ""))).toBeLessThan(html.indexOf("<svg"))
    expect(markdown).toContain(escapeMarkdown(first?.text ?? ""))
    const told = content.subjects.flatMap(({ findings }) => findings).filter(({ change }) => change !== null)
    expect(told.map(({ change }) => change).sort()).toEqual(
      found.assessment.findings.flatMap(({ change }) => (change === null ? [] : [change])).sort(),
    )
    for (const { text } of found.unmended) expect(html).toContain(escapeXml(text))
    expect(report(rig).content.changes).toBeNull()
  })
  it("takes no other rig's", () => {
    expect(() => report(rigOf("umbrella-legs"), { remedies: found })).toThrow(TypeError)
  })
})
