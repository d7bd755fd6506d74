// Adjustables of what is worn and of the day: parts, straps, padding, the switch's place, rests, programme and what is asked.
import { formatQuantity } from "../../quantity/index.js"
import { expand, namesAlong, valueAt } from "./paths.js"
import { choiceRow, type Ladder, numberRow, type Row, type RowRig } from "./rows.js"
import { PAUSES, STRAPS } from "./steps.js"

type Names = readonly string[]
const named =
  (what: string) =>
  ([name = "it"]: Names) =>
    `${what} ${name}`
const plain = (what: string) => () => what
const aside = [0.05, 0.1, 0.2, -0.05, -0.1, -0.2]

/** Parts, straps and padding. */
const partRows: readonly Row[] = [
  numberRow({
    name: "part-mass",
    path: "parts[].mass",
    kind: "mass",
    unit: "g",
    of: named("for"),
    steps: { times: [0.9, 0.8, 0.65, 0.5] },
    work: "rebuilding",
  }),
  numberRow({
    name: "part-place",
    path: "parts[].forward",
    kind: "length",
    unit: "mm",
    of: named("ahead of the hips for"),
    steps: { by: aside },
    work: "rebuilding",
    peaked: true,
  }),
  numberRow({
    name: "part-place",
    path: "parts[].left",
    kind: "length",
    unit: "mm",
    of: named("left of the middle for"),
    steps: { by: aside },
    work: "rebuilding",
    peaked: true,
  }),
  numberRow({
    name: "strap-width",
    path: "straps.strapWidth",
    kind: "length",
    unit: "mm",
    of: plain("as the width of the straps"),
    steps: { sizes: STRAPS, way: "up" },
    work: "small part",
  }),
  numberRow({
    name: "belt-share",
    path: "straps.beltShare",
    kind: "ratio",
    unit: "%",
    of: plain("of the weight on the hip belt"),
    steps: { sizes: [0.2, 0.3, 0.4, 0.5, 0.6, 0.7], way: "both" },
    work: "setting",
    peaked: true,
  }),
  numberRow({
    name: "mass-centre",
    path: "straps.centreOffset",
    kind: "length",
    unit: "mm",
    of: plain("from the back panel to the centre of mass"),
    steps: { times: [0.9, 0.75, 0.6] },
    work: "rebuilding",
  }),
  numberRow({
    name: "padding",
    path: "contact.paddingThickness",
    kind: "length",
    unit: "mm",
    of: plain("of padding where it could strike"),
    steps: { sizes: [5, 10, 15, 20, 30, 40, 50, 60].map((mm) => mm / 1000), way: "up" },
    work: "small part",
  }),
  numberRow({
    name: "padding-stiffness",
    path: "contact.paddingStiffness",
    kind: "forcePerLength",
    unit: "N/mm",
    of: plain("as the stiffness of the padding"),
    steps: { times: [0.75, 0.5, 0.25] },
    work: "small part",
  }),
  ...(["forward", "outward", "up"] as const).map((field) =>
    numberRow({
      name: "switch-place",
      path: `reach.${field}`,
      kind: "length",
      unit: "mm",
      of: plain(`${{ forward: "ahead", outward: "to the side", up: "up" }[field]} to the switch`),
      steps: { by: [0.1, 0.2, 0.4, -0.1, -0.2, -0.4] },
      work: "small part",
      peaked: true,
    }),
  ),
  numberRow({
    name: "stance",
    path: "stance.stagger",
    kind: "length",
    unit: "mm",
    of: plain("from foot to foot, one behind the other"),
    steps: { by: [0.1, 0.2, 0.3] },
    work: "asking less",
  }),
  numberRow({
    name: "bend-radius",
    path: "formed[].bend.radius",
    kind: "length",
    unit: "mm",
    of: named("as the radius of the bend of"),
    steps: { times: [1.1, 1.25, 1.5, 2] },
    work: "rebuilding",
  }),
  choiceRow({
    name: "bend-support",
    path: "formed[].bend.support",
    order: ["empty", "filled"],
    words: { empty: "bent empty", filled: "bent with sand in it" },
    of: named("for"),
    work: "setting",
  }),
  numberRow({
    name: "heat-source",
    path: "formed[].heat.sourceTemperature",
    kind: "temperature",
    of: named("as the oven or air that heats"),
    steps: { by: [-10, -20, -30, -50, -70] },
    work: "setting",
  }),
]

/** Durations of the wearing plan: rests longer, the rest shorter. */
const scheduleRow: Row = {
  name: "plan",
  paths: ["schedule.plan[].duration"],
  ladders: ({ si }) =>
    expand(si, "schedule.plan[]").flatMap((path): Ladder[] => {
      const { activity, duration } = (valueAt(si, path) ?? {}) as Readonly<Record<string, unknown>>
      if (typeof duration !== "number") return []
      const rests = activity === "off"
      const sizes = rests ? PAUSES.filter((one) => one > duration + 1) : PAUSES.filter((one) => one < duration - 1).reverse()
      const shown = (seconds: number) => formatQuantity("time", seconds, "min")
      const rungs = sizes.slice(0, 4).map((one) => ({
        settings: [{ path: `${path}.duration`, value: shown(one) }],
        was: shown(duration),
        becomes: shown(one),
      }))
      return rungs.length
        ? [{ name: "plan", of: named("for")(namesAlong(si, path)), work: rests ? "setting" : "asking less", peaked: false, rungs }]
        : []
    }),
}

const DELAYS = [1, 2, 5, 10, 15, 20, 30, 45, 60]

/** Steps of the programme later, with all that come after them. */
const staggerRow: Row = {
  name: "stagger",
  paths: ["programme[].at"],
  ladders: ({ si }) => {
    const steps = si.programme.map((step, i) => ({ ...step, i })).sort((a, b) => a.at - b.at)
    return steps.slice(1).map(({ i, at, motion }, k): Ladder => {
      const later = steps.slice(k + 1)
      const shown = (seconds: number) => formatQuantity("time", seconds, "s", 6)
      return {
        name: "stagger",
        of: `as the begin of step ${i + 1} of the programme (${motion}), with all after it`,
        work: "setting",
        peaked: false,
        rungs: DELAYS.map((delay) => ({
          settings: later.map((one) => ({ path: `programme[${one.i}].at`, value: shown(one.at + delay) })),
          was: shown(at),
          becomes: shown(at + delay),
        })),
      }
    })
  },
}

/** Motions that are fed together, one after another. */
const turnsRow: Row = {
  name: "one-after-another",
  paths: ["programme"],
  ladders: ({ si, cycle }: RowRig) => {
    if (si.programme.length || si.motions.length < 2) return []
    const lengths = si.motions.map((_, i) => cycle(i))
    if (lengths.some((one) => one === null)) return []
    let at = 0
    const programme = si.motions.flatMap(({ name }, i) => {
      // each has its whole time out and back, and a fifth more
      const half = Math.ceil(0.6 * (lengths[i] as number)) + 1
      const steps = [
        { at, motion: name, to: 1 },
        { at: at + half, motion: name, to: 0 },
      ]
      at += 2 * half
      return steps
    })
    return [
      {
        name: "one-after-another",
        of: "for the motions, by a programme",
        work: "setting",
        peaked: false,
        rungs: [{ settings: [{ path: "programme", value: programme }], was: "all together", becomes: "one after another" }],
      },
    ]
  },
}

/** What the day asks. */
const dayRows: readonly Row[] = [
  numberRow({
    name: "moves",
    path: "day.moves",
    kind: "number",
    whole: true,
    say: (text) => `${text} times out and back`,
    of: plain("on one charge"),
    steps: { times: [0.8, 0.6, 0.4] },
    work: "asking less",
  }),
]

/** Adjustables of what is worn and of the day. */
export const wornRows: readonly Row[] = [...partRows, scheduleRow, staggerRow, turnsRow, ...dayRows]
