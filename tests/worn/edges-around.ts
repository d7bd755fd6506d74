import { contactSeverity, heatStress, overturning, passage, pinchGap, touchTemperature, windLoad } from "../../src/worn/index.js"
import type { Edges } from "../helpers/edges.js"

const always = (solver: unknown, code: string) => ({ solver, code, severity: "warning", shown: {}, notShown: null }) as const

/** Heights and widths as the sources print them, m. */
const IN = 0.0254

const walker = { width: 0.7, forward: 0.25, backward: 0.4, height: 1.9 }
const moth = { width: 1.2, forward: 0.3, backward: 0.6, height: 2 }

/** A bar that comes straight down on another from `open` to `closed`, no thickness. */
const closing = (open: number, closed: number) => ({
  movingBars: [{ x1: 0, y1: 0, x2: 0.5, y2: 0 }],
  fixedBars: [{ x1: 0, y1: 0, x2: 0.5, y2: 0 }],
  poses: [
    { x: 0, y: open, angle: 0 },
    { x: 0, y: closed, angle: 0 },
  ],
  movingThickness: 0,
  fixedThickness: 0,
})
/** The same bar standing still. */
const still = (gap: number) => closing(gap, gap)

const heat = { wetBulbTemperature: undefined, globeTemperature: undefined, wbgt: 20, clothing: "work-clothes" }
const padded = { paddingStiffness: "4 N/mm", paddingThickness: "20 mm" }

/** Published tables again, by hand, for the second computations. */
const clothing: Readonly<Record<string, number>> = {
  "work-clothes": 0,
  "cloth-coverall": 0,
  "double-layer": 3,
  "vapour-barrier": 11,
  "vapour-barrier-over-clothes": 12,
}

type Si = Record<string, never>
interface Standing {
  readonly bodyMass: number
  readonly rigMass: number
  readonly stature: number
  readonly rigCentreHeight: number | null
  readonly windFrom: string
  readonly footLength: number
  readonly stagger: number
  readonly stanceWidth: number
  readonly heelShare: number
  readonly weightOffset: number
  readonly usableShare: number
  readonly slope: number
  readonly slopeDirection: number
  readonly stepHeight: number
}
/** How far past the usable edge an unseen drop brings the centre of mass: both as complex numbers, turned with the ground. */
function past(si: Standing): number {
  const [from, base] = si.windFrom === "side" ? [0.5, si.stanceWidth] : [si.heelShare, si.footLength + si.stagger]
  const edge =
    si.usableShare *
    (si.windFrom === "behind" ? (1 - from) * base - si.weightOffset : from * base + (si.windFrom === "front" ? si.weightOffset : 0))
  const rig = si.rigCentreHeight ?? 0.818 * si.stature
  const centre = (0.56 * si.stature * si.bodyMass + rig * si.rigMass) / (si.bodyMass + si.rigMass)
  const tilt = Math.atan2(si.stepHeight, base)
  const slope = Math.atan(Math.tan(si.slope) * Math.cos(si.slopeDirection))
  return 2e-9 * edge + centre * Math.cos(Math.PI / 2 - tilt) - edge * Math.sin(Math.PI / 2 - tilt - slope)
}
/** Height of a push where none is given: the shoulders at 0.818 of stature. */
const shoulders = (si: { readonly pushHeight: number | null; readonly stature: number }): number => si.pushHeight ?? 0.818 * si.stature
interface Packed {
  folded: { width: number; height: number }
  raised: { width: number; height: number } | null
}

/** Highest published drag coefficient of a shape, worked out again. */
function highestDrag({ shape, span, chord }: { shape: string; span: number; chord: number }): number {
  if (shape === "trough") return 2.3
  if (shape === "bowl") return 1.42
  const ratio = Math.max(span, chord) / Math.min(span, chord)
  const along = (rows: readonly (readonly [number, number])[], x: number): number => {
    for (let i = 1; i < rows.length; i++) {
      const [[x0, y0], [x1, y1]] = [rows[i - 1], rows[i]] as [[number, number], [number, number]]
      if (x <= x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
    }
    return (rows.at(-1) as [number, number])[1]
  }
  if (shape === "pole")
    return along(
      [
        [0, 1.2],
        [0.025, 0.98],
        [0.1, 0.82],
        [1, 0.63],
      ],
      1 / ratio,
    )
  if (ratio >= 30) return 2
  const white = along(
    [
      [0, 2],
      [0.05, 1.5],
      [0.1, 1.3],
      [0.2, 1.2],
      [1, 1.18],
    ],
    1 / ratio,
  )
  return Math.max(white, 1.1 + 0.02 * (ratio + 1 / ratio), 1.28)
}

/** Every caution and fault of what is around the wearer, at its threshold. */
export const edges: Edges = {
  cautions: [
    ...[heatStress].flatMap((s) => [always(s, "take-it-off"), always(s, "heat-can-kill"), always(s, "adults-only")]),
    ...[windLoad, overturning, passage, pinchGap, contactSeverity, touchTemperature].map((s) => always(s, "not-a-clearance")),
    ...[pinchGap, touchTemperature].map((s) => always(s, "adults-only")),

    // class 2 of an unacclimatized person: 26 °C, the curve at 300 W 24.97
    { solver: heatStress, code: "too-hot", severity: "warning", shown: { ...heat, wbgt: 24.98 }, notShown: { ...heat, wbgt: 24.96 } },
    {
      solver: heatStress,
      code: "too-hot",
      severity: "warning",
      shown: { ...heat, wbgt: 33 },
      notShown: { ...heat, wbgt: 24.96 },
      apart: "the words where not even rest helps",
    },
    // at 234 W the curve gives 26.49 where the class gives 29; at 360 W 23.86 where the class gives 26
    {
      solver: heatStress,
      code: "limits-disagree",
      severity: "note",
      shown: { ...heat, metabolicRate: 301 },
      notShown: { ...heat, metabolicRate: 298 },
    },
    {
      solver: heatStress,
      code: "own-adjustment",
      severity: "caution",
      shown: { clothing: "double-layer", clothingAdjustment: 2.98 },
      notShown: { clothing: "double-layer", clothingAdjustment: 3 },
    },
    {
      solver: heatStress,
      code: "costumes-are-tight",
      severity: "caution",
      shown: { clothingAdjustment: 10.9 },
      notShown: { clothingAdjustment: 11 },
    },
    {
      solver: heatStress,
      code: "tight-suit",
      severity: "caution",
      shown: { clothingAdjustment: 11 },
      notShown: { clothingAdjustment: 10.9 },
    },
    {
      solver: heatStress,
      code: "standard-person",
      severity: "caution",
      shown: {},
      notShown: { bodyMass: 60, stature: 1.7 },
      apart: "mass and stature are given together",
    },
    { solver: heatStress, code: "outside-range", severity: "caution", shown: { metabolicRate: 99.5 }, notShown: { metabolicRate: 100 } },
    { solver: heatStress, code: "outside-range", severity: "caution", shown: { metabolicRate: 601 }, notShown: { metabolicRate: 600 } },
    { solver: heatStress, code: "acclimatized", severity: "note", shown: { acclimatized: true }, notShown: {} },

    { solver: windLoad, code: "drag-spread", severity: "note", shown: {}, notShown: { shape: "pole" } },
    { solver: windLoad, code: "drag-spread", severity: "note", shown: {}, notShown: { dragCoefficient: 1.1 } },
    {
      solver: windLoad,
      code: "drag-below-published",
      severity: "caution",
      shown: { dragCoefficient: 1.279 },
      notShown: { dragCoefficient: 1.28 },
    },
    {
      solver: windLoad,
      code: "dangerous-gust",
      severity: "warning",
      shown: { gustFactor: 2, windSpeed: 10 },
      notShown: { gustFactor: 2, windSpeed: 9.99 },
    },
    {
      solver: windLoad,
      code: "unbalancing-gust",
      severity: "warning",
      shown: { gustFactor: 2, windSpeed: 7.5 },
      notShown: { gustFactor: 2, windSpeed: 7.49 },
    },
    {
      solver: windLoad,
      code: "unbalancing-gust",
      severity: "warning",
      shown: { gustFactor: 2, windSpeed: 9.99 },
      notShown: { gustFactor: 2, windSpeed: 10 },
    },
    { solver: windLoad, code: "uncomfortable-wind", severity: "caution", shown: { windSpeed: 5 }, notShown: { windSpeed: 4.99 } },
    {
      solver: windLoad,
      code: "uncomfortable-wind",
      severity: "caution",
      shown: { gustFactor: 2, windSpeed: 7.49 },
      notShown: { gustFactor: 2, windSpeed: 7.5 },
    },
    { solver: windLoad, code: "low-gust-factor", severity: "caution", shown: { gustFactor: 1.659 }, notShown: { gustFactor: 1.66 } },

    {
      solver: overturning,
      code: "dangerous-gust",
      severity: "warning",
      shown: { gustFactor: 2, windSpeed: 10 },
      notShown: { gustFactor: 2, windSpeed: 9.99 },
    },
    {
      solver: overturning,
      code: "unbalancing-gust",
      severity: "warning",
      shown: { gustFactor: 2, windSpeed: 7.5 },
      notShown: { gustFactor: 2, windSpeed: 7.49 },
    },
    // without a rig only the published limits count: 15 m/s in gusts less the walk, and 10 m/s as a mean
    {
      solver: overturning,
      code: "fold-now",
      severity: "warning",
      shown: { dragArea: 0, windSpeed: 8.2 },
      notShown: { dragArea: 0, windSpeed: 8.19 },
    },
    {
      solver: overturning,
      code: "fold-now",
      severity: "warning",
      shown: { dragArea: 0, walkingSpeed: 0, gustFactor: 1.2, windSpeed: 10 },
      notShown: { dragArea: 0, walkingSpeed: 0, gustFactor: 1.2, windSpeed: 9.99 },
    },
    // walking at which a rig of 20 m² at 3 m uses up the stance
    {
      solver: overturning,
      code: "never-open",
      severity: "warning",
      shown: { dragArea: 20, forceHeight: 3, walkingSpeed: 0.803 },
      notShown: { dragArea: 20, forceHeight: 3, walkingSpeed: 0.798 },
    },
    {
      solver: overturning,
      code: "never-open",
      severity: "warning",
      shown: { pushForce: 30 },
      notShown: { pushForce: 3 },
      apart: "the words where the push is what uses up the stance",
    },
    { solver: overturning, code: "no-push", severity: "note", shown: { pushForce: 0 }, notShown: { pushForce: 0.001 } },
    {
      solver: overturning,
      code: "no-push",
      severity: "note",
      shown: { bumpMass: 50, bumpSpeed: 0 },
      notShown: { bumpMass: 50, bumpSpeed: 0.001 },
    },
    // no wind: 70 kg, 0.6 · 0.36 · 0.24 m, over 1.5 times 1.3906 m: 17.061 N
    {
      solver: overturning,
      code: "push-over",
      severity: "warning",
      shown: { windSpeed: 0, walkingSpeed: 0, pushForce: 17.07 },
      notShown: { windSpeed: 0, walkingSpeed: 0, pushForce: 17.05 },
    },
    // ground that rises by 30 degrees puts the usable edge of 0.6 · 0.5 m at 15 cm
    {
      solver: overturning,
      code: "low-push",
      severity: "caution",
      shown: { edgeDistance: 0.5, slope: "30 deg", slopeDirection: "180 deg", pushHeight: 0.1496 },
      notShown: { edgeDistance: 0.5, slope: "30 deg", slopeDirection: "180 deg", pushHeight: 0.1504 },
    },
    { solver: overturning, code: "slope", severity: "caution", shown: { slope: 0.001 }, notShown: { slope: 0 } },
    {
      solver: overturning,
      code: "ground-helps",
      severity: "note",
      shown: { slope: 0.1, slopeDirection: "90.4 deg" },
      notShown: { slope: 0.1, slopeDirection: "89.6 deg" },
    },
    { solver: overturning, code: "unseen-drop", severity: "caution", shown: { stepHeight: 0.001 }, notShown: { stepHeight: 0 } },
    { solver: overturning, code: "light-wearer", severity: "caution", shown: { bodyMass: 44.9 }, notShown: { bodyMass: 45 } },
    {
      solver: overturning,
      code: "beyond-tests",
      severity: "note",
      shown: { gustFactor: 2, windSpeed: 6.26 },
      notShown: { gustFactor: 2, windSpeed: 6.25 },
    },
    { solver: overturning, code: "shares-added", severity: "note", shown: { dragArea: 1e-6 }, notShown: { dragArea: 0 } },
    { solver: overturning, code: "stance", severity: "note", shown: {}, notShown: { stagger: 0.001 } },
    { solver: overturning, code: "stance", severity: "note", shown: { windFrom: "behind" }, notShown: { windFrom: "side" } },
    { solver: overturning, code: "usable-share", severity: "caution", shown: { usableShare: 0.601 }, notShown: { usableShare: 0.6 } },
    { solver: overturning, code: "loaded-sway", severity: "caution", shown: { rigMass: 16 }, notShown: { rigMass: 15.9 } },
    { solver: overturning, code: "safety-factor", severity: "caution", shown: { safetyFactor: 1.49 }, notShown: { safetyFactor: 1.5 } },

    // 750 mm and 25 mm to spare on each side: the narrowest door, facing 700 mm and no more; the deeper way is no better
    {
      solver: passage,
      code: "blocked",
      severity: "caution",
      shown: { folded: { ...walker, height: 2.01 } },
      notShown: { folded: { ...walker, width: 0.3, forward: 0.15, backward: 0.15, height: 1.39 } },
      apart: "the van's doorway is lower than any walker",
    },
    {
      solver: passage,
      code: "blocked",
      severity: "caution",
      shown: { folded: { width: 0.3, forward: 0.15, backward: 0.15, height: 56 * IN - 0.0249 }, raised: null },
      notShown: { folded: { width: 0.3, forward: 0.15, backward: 0.15, height: 56 * IN - 0.0251 }, raised: null },
    },
    {
      solver: passage,
      code: "sideways",
      severity: "caution",
      shown: { folded: { width: 0.332, forward: 0.15, backward: 0.15, height: 1.3 } },
      notShown: { folded: { width: 0.33, forward: 0.15, backward: 0.15, height: 1.3 } },
    },
    {
      solver: passage,
      code: "fold-for",
      severity: "caution",
      shown: {
        folded: { width: 0.3, forward: 0.1, backward: 0.1, height: 1.2 },
        raised: { width: 0.3, forward: 0.1, backward: 0.1, height: 56 * IN - 0.0249 },
      },
      notShown: {
        folded: { width: 0.3, forward: 0.1, backward: 0.1, height: 1.2 },
        raised: { width: 0.3, forward: 0.1, backward: 0.1, height: 56 * IN - 0.0251 },
      },
    },
    {
      solver: passage,
      code: "blocks-corridor",
      severity: "warning",
      shown: { folded: { ...walker, width: 30.01 * IN }, raised: null },
      notShown: { folded: { ...walker, width: 29.99 * IN }, raised: null },
    },
    {
      solver: passage,
      code: "blocks-corridor",
      severity: "warning",
      shown: { folded: walker, raised: { ...moth, width: 30.01 * IN } },
      notShown: { folded: walker, raised: { ...moth, width: 29.99 * IN } },
    },
    {
      solver: passage,
      code: "headroom",
      severity: "warning",
      shown: { folded: { ...walker, height: 2.033 }, raised: null },
      notShown: { folded: { ...walker, height: 2.031 }, raised: null },
    },
    {
      solver: passage,
      code: "headroom",
      severity: "warning",
      shown: { folded: walker, raised: { ...moth, height: 2.033 } },
      notShown: { folded: walker, raised: { ...moth, height: 2.031 } },
    },
    {
      solver: passage,
      code: "road-size",
      severity: "warning",
      shown: { folded: walker, raised: { ...moth, width: 2.591 } },
      notShown: { folded: walker, raised: { ...moth, width: 2.59 } },
    },
    {
      solver: passage,
      code: "road-size",
      severity: "warning",
      shown: { folded: walker, raised: { ...moth, height: 4.12 } },
      notShown: { folded: walker, raised: { ...moth, height: 4.11 } },
    },
    {
      solver: passage,
      code: "smaller-raised",
      severity: "note",
      shown: { folded: walker, raised: { ...moth, width: 0.699 } },
      notShown: { folded: walker, raised: { ...moth, width: 0.7 } },
    },
    {
      solver: passage,
      code: "smaller-raised",
      severity: "note",
      shown: { folded: walker, raised: { ...moth, height: 1.89 } },
      notShown: { folded: walker, raised: { ...moth, height: 1.9 } },
    },

    { solver: pinchGap, code: "crush", severity: "warning", shown: closing(0.9, 0.498), notShown: closing(0.9, 0.502) },
    {
      solver: pinchGap,
      code: "narrow-gap",
      severity: "caution",
      shown: { ...still(0.75), movingThickness: 0.502 },
      notShown: { ...still(0.75), movingThickness: 0.498 },
    },
    {
      solver: pinchGap,
      code: "overlap",
      severity: "warning",
      shown: { ...still(0.02), movingThickness: 0.02, fixedThickness: 0.02 },
      notShown: { ...still(0.02), movingThickness: 0.0199, fixedThickness: 0.02 },
    },
    {
      solver: pinchGap,
      code: "coarse-proof",
      severity: "note",
      shown: ring(3),
      notShown: still(0.1),
      apart: "how coarse a proof is hangs on the whole motion",
    },

    { solver: contactSeverity, code: "head-contact", severity: "warning", shown: { region: "face" }, notShown: { region: "neck" } },
    { solver: contactSeverity, code: "head-contact", severity: "warning", shown: { region: "skull-forehead" }, notShown: {} },
    {
      solver: contactSeverity,
      code: "neck-contact",
      severity: "warning",
      shown: { region: "neck" },
      notShown: { region: "back-shoulders" },
    },
    // 280 N at the chest: √(µ·k)·v with µ = 1/(1/40 + 1/(0.8/3)) and k = 25 N/mm, at 0.9 m
    { solver: contactSeverity, code: "over-limit", severity: "warning", shown: { swingSpeed: 3.83 }, notShown: { swingSpeed: 3.82 } },
    {
      solver: contactSeverity,
      code: "padding-used-up",
      severity: "warning",
      shown: { ...padded, swingSpeed: 1.77 },
      notShown: { ...padded, swingSpeed: 1.76 },
    },
    {
      solver: contactSeverity,
      code: "usable-padding",
      severity: "caution",
      shown: { ...padded, usablePaddingShare: 0.601 },
      notShown: { ...padded, usablePaddingShare: 0.6 },
    },
    {
      solver: contactSeverity,
      code: "slow-approach",
      severity: "caution",
      shown: { approachSpeed: 1.599 },
      notShown: { approachSpeed: 1.6 },
    },
    { solver: contactSeverity, code: "no-area", severity: "caution", shown: {}, notShown: { contactArea: "1 cm2" } },
    { solver: contactSeverity, code: "no-clamping", severity: "caution", shown: {}, notShown: { peakDriveMoment: 1 } },
    // 150 N at 0.9 m
    {
      solver: contactSeverity,
      code: "door-limit",
      severity: "caution",
      shown: { peakDriveMoment: 135.1 },
      notShown: { peakDriveMoment: 134.9 },
    },

    {
      solver: touchTemperature,
      code: "too-hot",
      severity: "warning",
      shown: { surfaceTemperature: 43.01, ambientTemperature: undefined },
      notShown: { surfaceTemperature: 43, ambientTemperature: undefined },
    },
    {
      solver: touchTemperature,
      code: "painful",
      severity: "caution",
      shown: { surfaceTemperature: 42, ambientTemperature: undefined },
      notShown: { surfaceTemperature: 41.99, ambientTemperature: undefined },
    },
    {
      solver: touchTemperature,
      code: "short-contact",
      severity: "caution",
      shown: { surfaceTemperature: 43.01, ambientTemperature: undefined, contactDuration: 60 },
      notShown: { surfaceTemperature: 43, ambientTemperature: undefined, contactDuration: 60 },
    },
    {
      solver: touchTemperature,
      code: "short-contact",
      severity: "caution",
      shown: { contactDuration: 28799 },
      notShown: { contactDuration: 28800 },
    },
    {
      solver: touchTemperature,
      code: "cold-metal",
      severity: "warning",
      shown: { surfaceTemperature: 0, ambientTemperature: undefined },
      notShown: { surfaceTemperature: 0.001, ambientTemperature: undefined },
    },
    {
      solver: touchTemperature,
      code: "cold-metal",
      severity: "warning",
      shown: { surfaceTemperature: -1, ambientTemperature: undefined },
      notShown: { surfaceTemperature: -1, ambientTemperature: undefined, material: "glass" },
    },
    {
      solver: touchTemperature,
      code: "cold-surface",
      severity: "caution",
      shown: { surfaceTemperature: 15, ambientTemperature: undefined },
      notShown: { surfaceTemperature: 15.01, ambientTemperature: undefined },
    },
    {
      solver: touchTemperature,
      code: "cold-surface",
      severity: "caution",
      shown: { surfaceTemperature: 20, ambientTemperature: 20 },
      notShown: { surfaceTemperature: 20, ambientTemperature: 20.01 },
    },
    {
      solver: touchTemperature,
      code: "warmer-surroundings",
      severity: "note",
      shown: { ambientTemperature: 25.01 },
      notShown: { ambientTemperature: 25 },
    },
    {
      solver: touchTemperature,
      code: "shorter-than-scope",
      severity: "caution",
      shown: { contactDuration: 0.499 },
      notShown: { contactDuration: 0.5 },
    },
    // both curves: through the epidermis at 1 s at 69.7 °C, reversibly at 64.2
    {
      solver: touchTemperature,
      code: "curve-extrapolated",
      severity: "caution",
      shown: { surfaceTemperature: 64.3, ambientTemperature: undefined },
      notShown: { surfaceTemperature: 64.1, ambientTemperature: undefined },
    },
  ],
  // 0.24 m · 0.6 · 0.36 · 0.24 m over a centre at (62 · 0.56 + 8 · 0.818) / 70 · 1.7 m: 12.415 mm
  refusals: [{ solver: overturning, code: "cannot-balance", refused: { stepHeight: 0.01243 }, answered: { stepHeight: 0.0124 } }],
  faults: [
    { solver: heatStress, path: "wetBulbTemperature", faulty: { wbgt: 20 }, sound: {} },
    { solver: heatStress, path: "wetBulbTemperature", faulty: { wetBulbTemperature: undefined }, sound: {} },
    { solver: heatStress, path: "wetBulbTemperature", faulty: { wetBulbTemperature: 25.01 }, sound: { wetBulbTemperature: 25 } },
    { solver: heatStress, path: "globeTemperature", faulty: { globeTemperature: undefined }, sound: {} },
    {
      solver: heatStress,
      path: "restMetabolicRate",
      faulty: { metabolicRate: 120, restMetabolicRate: 120.1 },
      sound: { metabolicRate: 120, restMetabolicRate: 120 },
    },
    { solver: heatStress, path: "bodyMass", faulty: { stature: 1.7 }, sound: {} },
    { solver: heatStress, path: "stature", faulty: { bodyMass: 60 }, sound: {} },
    // a tip 1 m out and down 30° is half a metre below its hinge
    {
      solver: windLoad,
      path: "elevation",
      faulty: { span: 1, elevation: "-30 deg", hingeHeight: 0.499 },
      sound: { span: 1, elevation: "-30 deg", hingeHeight: 0.501 },
    },
    // 0.36 of a 0.24 m foot to the heels, 0.64 to the toes
    { solver: overturning, path: "weightOffset", faulty: { weightOffset: -0.0865 }, sound: { weightOffset: -0.0863 } },
    {
      solver: overturning,
      path: "weightOffset",
      faulty: { windFrom: "behind", weightOffset: 0.1537 },
      sound: { windFrom: "behind", weightOffset: 0.1535 },
    },
    {
      solver: overturning,
      path: "stepHeight",
      faulty: { edgeDistance: 0.1, stepHeight: 0.001 },
      sound: { edgeDistance: 0.1 },
    },
    { solver: overturning, path: "bumpSpeed", faulty: { bumpMass: 50 }, sound: { bumpMass: 50, bumpSpeed: 0.1 } },
    { solver: overturning, path: "bumpMass", faulty: { bumpSpeed: 0.1 }, sound: { bumpMass: 50, bumpSpeed: 0.1 } },
    { solver: contactSeverity, path: "swingSpeed", faulty: { swingSpeed: undefined }, sound: {} },
    { solver: contactSeverity, path: "movingSpeed", faulty: { movingSpeed: 1 }, sound: {} },
    {
      solver: contactSeverity,
      path: "movingMass",
      faulty: { armMass: undefined, armLength: undefined, swingSpeed: undefined, movingSpeed: 1 },
      sound: { armMass: undefined, armLength: undefined, swingSpeed: undefined, movingSpeed: 1, movingMass: 1 },
    },
    { solver: contactSeverity, path: "strikeRadius", faulty: { strikeRadius: 0.901 }, sound: { strikeRadius: 0.9 } },
    {
      solver: contactSeverity,
      path: "peakDriveMoment",
      faulty: { armMass: undefined, armLength: undefined, swingSpeed: undefined, movingMass: 1, movingSpeed: 1, peakDriveMoment: 1 },
      sound: {
        armMass: undefined,
        armLength: undefined,
        swingSpeed: undefined,
        movingMass: 1,
        movingSpeed: 1,
        peakDriveMoment: 1,
        strikeRadius: 1,
      },
    },
    { solver: contactSeverity, path: "paddingThickness", faulty: { paddingStiffness: 4000 }, sound: {} },
    { solver: contactSeverity, path: "paddingStiffness", faulty: { paddingThickness: 0.02 }, sound: {} },
  ],
  numbers: {
    "overturning.cannot-balance.shortBy": past,
    "overturning.no-push.pushHeight": shoulders,
    "overturning.push-over.pushHeight": shoulders,
    "overturning.low-push.pushHeight": shoulders,
    "heatStress.too-hot.minutes": (_: Si, out: { rateAtLimit: number; resting: number; workShare: number }) =>
      Math.floor(60 * out.workShare),
    "heatStress.own-adjustment.published": (si: { clothing: string; hooded: boolean }) =>
      (clothing[si.clothing] as number) + (si.hooded ? 1 : 0),
    "windLoad.drag-below-published.drag.high": highestDrag,
    "overturning.beyond-tests.tested": () => 12.5,
    "passage.headroom.high": (si: Packed) => Math.max(si.folded.height, si.raised?.height ?? 0),
    "passage.road-size.high": (si: Packed) => Math.max(si.folded.height, si.raised?.height ?? 0),
    "passage.road-size.wide": (si: Packed) => Math.max(si.folded.width, si.raised?.width ?? 0),
  },
}

/** A bar that turns `turns` times inside a ring it comes evenly near to all the way: dear to prove. */
function ring(turns: number) {
  const corners = Array.from({ length: 49 }, (_, k) => (k / 48) * 2 * Math.PI)
  return {
    movingBars: [{ x1: 0, y1: 0, x2: 1.9, y2: 0 }],
    fixedBars: corners.slice(1).map((b, k) => {
      const a = corners[k] as number
      return { x1: 2 * Math.cos(a), y1: 2 * Math.sin(a), x2: 2 * Math.cos(b), y2: 2 * Math.sin(b) }
    }),
    poses: Array.from({ length: turns + 1 }, (_, k) => ({ x: 0, y: 0, angle: k % 2 ? 12.5 : 0 })),
  }
}
