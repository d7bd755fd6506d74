// The kernel: SI numbers in, values or a refusal out.
import { type NoSolution, refuse } from "../../solver/index.js"
import { type BarMass, type Burden, forcesAt } from "./forces.js"
import type { Si } from "./input.js"
import { barName, type Model } from "./model.js"
import { mechanismMotion, norms } from "./motion.js"
import type { PlanarLinkage, PlanarLinkageRefusal } from "./output.js"
import { type Jam, peaksOf, type Sample, samplesOf } from "./peaks.js"
import { sub } from "./rows.js"
import { isHalt, type Pose } from "./solve.js"

type Pair = readonly [number, number]
const at = (q: Float64Array, point: number) => [q[2 * point] as number, q[2 * point + 1] as number] as const
const cross = (a: Pair, b: Pair) => a[0] * b[1] - a[1] * b[0]
const dot = (a: Pair, b: Pair) => a[0] * b[0] + a[1] * b[1]

/** Effort of a driver told apart by its kind. */
const effortOf = (kind: "crank" | "actuator", effort: number) => ({
  torque: kind === "crank" ? effort : null,
  force: kind === "actuator" ? effort : null,
})

/** What the kernel found on its way, for the working. */
export interface PlanarTrace {
  readonly model: Model
  /** The end pose. */
  readonly pose: Pose
  readonly direct: number
  readonly inverse: number
  /** The same of the pose nearest to singular. */
  readonly worst: { readonly direct: number; readonly inverse: number }
  /** Loads, weights, inertia and friction on all points at the end. */
  readonly applied: Float64Array
  readonly rubbing: number
}

function burdenOf(si: Si, model: Model): Burden {
  const index = (name: string) => model.names.indexOf(name)
  const masses = si.masses.map((one): BarMass => {
    const [from, to] = [index(one.from), index(one.to)]
    const body = model.bodies.findIndex((members) => members.slice(0, 2).includes(from) && members.slice(0, 2).includes(to))
    const row = model.rows[body] as Extract<Model["rows"][number], { kind: "bar" }>
    return {
      body,
      from,
      to,
      p: one.along === null ? 0.5 : one.along / row.length,
      q: one.across / row.length,
      mass: one.mass,
      inertia: one.inertia ?? (one.mass * row.length ** 2) / 12,
    }
  })
  const rates = model.drivers.map((d) => d.speed)
  return {
    masses,
    gravity: [-si.gravity * Math.sin(si.frameTilt), -si.gravity * Math.cos(si.frameTilt)],
    frictionRadius: (si.pinFriction * si.pinDiameter) / 2,
    sense: rates.some((rate) => rate !== 0) ? rates : model.drivers.map((d) => d.end - d.start),
    rates,
    changes: model.drivers.map((d) => d.acceleration),
  }
}

export function kernel(si: Si, trace?: Partial<PlanarTrace>): PlanarLinkage | NoSolution<PlanarLinkageRefusal> {
  const moved = mechanismMotion(si, si.steps)
  if ("noSolution" in moved) return moved
  const { model, poses, first } = moved
  const burden = burdenOf(si, model)
  const samples = samplesOf(model, burden, first, poses)
  if ("jam" in samples) return jammed(si, model, burden, samples)
  if (isHalt(samples)) return samples.refusal
  const end = samples[samples.length - 1] as Sample
  const { pose } = end
  const { v, a, lambda, pins, applied, rubbing } = end.forces
  const { direct, inverse } = norms(model, pose)
  const peaks = peaksOf(model, samples)
  const nearest = (peaks[peaks.length - 1] as (typeof peaks)[number]).at
  const worst = nearest.pose === pose ? { direct, inverse } : norms(model, nearest.pose)
  if (trace) Object.assign(trace, { model, pose, direct, inverse, worst, applied, rubbing } satisfies PlanarTrace)
  const listed = poses.map((one) => samples.find((sample) => sample.pose === one) ?? end)
  const traced = si.trace === null ? -1 : model.names.indexOf(si.trace)
  const sliderRows = model.rows.flatMap((row, i) => (row.kind === "slider" ? [{ row, lambda: lambda[i] as number }] : []))
  const sliderName = (k: number) => si.sliders[k]?.name ?? `${si.sliders[k]?.point} on ${si.sliders[k]?.from}-${si.sliders[k]?.to}`
  const barNames = si.bars.map(barName)
  const peak = peaks.values()
  const next = () => peak.next().value as (typeof peaks)[number]
  return {
    mobility: model.unknowns - (model.rows.length - model.drivers.length),
    conditioning: 1 / (direct * inverse),
    minConditioning: 1 / (worst.direct * worst.inverse),
    minConditioningShare: nearest.share,
    frictionLoss: burden.frictionRadius * rubbing,
    points: model.names.map((name, i) => {
      const [[x, y], [speedX, speedY], [accelerationX, accelerationY]] = [at(pose.q, i), at(v, i), at(a, i)]
      return { name, x, y, speedX, speedY, accelerationX, accelerationY }
    }),
    bars: barNames.map((name, k) => {
      const [from, to] = (model.bodies[k] as readonly number[]).slice(0, 2) as [number, number]
      const [line, rate, change] = [sub(pose.q, from, to), sub(v, from, to), sub(a, from, to)]
      const squared = dot(line, line)
      return {
        name,
        angle: Math.atan2(line[1], line[0]),
        speed: cross(line, rate) / squared,
        acceleration: cross(line, change) / squared,
        length: Math.sqrt(squared),
      }
    }),
    sliders: sliderRows.map(({ row, lambda: sideForce }, k) => {
      const [line, rate, change] = [pose.q, v, a].map((q) => sub(q, row.from, row.to)) as unknown as [Pair, Pair, Pair]
      const [reach, reachRate, reachChange] = [pose.q, v, a].map((q) => sub(q, row.from, row.point)) as unknown as [Pair, Pair, Pair]
      return {
        name: sliderName(k),
        position: dot(line, reach) / row.length,
        speed: (dot(rate, reach) + dot(line, reachRate)) / row.length,
        acceleration: (dot(change, reach) + 2 * dot(rate, reachRate) + dot(line, reachChange)) / row.length,
        sideForce,
      }
    }),
    drivers: model.drivers.map((d, i) => ({
      name: d.name,
      angle: d.kind === "crank" ? (pose.drive[i] as number) : null,
      length: d.kind === "actuator" ? (pose.drive[i] as number) : null,
      ...effortOf(d.kind, end.forces.efforts[i] as number),
    })),
    pins: pins.flatMap((members, k) =>
      [...members].map(([point, [forceX, forceY]]) => ({
        bar: barNames[k] as string,
        point: model.names[point] as string,
        forceX,
        forceY,
        force: Math.hypot(forceX, forceY),
      })),
    ),
    // in the order in which sizesOf lists them
    pinPeaks: pins.flatMap((members, k) =>
      [...members.keys()].map((point) => {
        const { size, at: sample } = next()
        return { bar: barNames[k] as string, point: model.names[point] as string, force: size, share: sample.share }
      }),
    ),
    barPeaks: barNames.map((name) => {
      const [pull, push] = [next(), next()]
      return { name, tension: pull.size, tensionShare: pull.at.share, compression: push.size, compressionShare: push.at.share }
    }),
    sliderPeaks: sliderRows.map((_, k) => {
      const { size, at: sample } = next()
      return { name: sliderName(k), sideForce: size, share: sample.share }
    }),
    driverPeaks: model.drivers.map((d) => {
      const { size, at: sample } = next()
      return { name: d.name, ...effortOf(d.kind, size), share: sample.share }
    }),
    path: traced < 0 ? [] : poses.map((p) => ({ x: at(p.q, traced)[0], y: at(p.q, traced)[1] })),
    efforts: listed.flatMap((sample, step) =>
      model.drivers.map((d, i) => ({ step, driver: d.name, ...effortOf(d.kind, sample.forces.efforts[i] as number) })),
    ),
    iterations: pose.iterations,
    residual: pose.residual,
  }
}

/** Refuses friction that finds no balance at a pose on the way, with how much less of it would do there. */
function jammed(si: Si, model: Model, burden: Burden, { jam, share }: Jam): NoSolution<"jammed"> {
  let [good, bad] = [0, burden.frictionRadius]
  for (let i = 0; i < 40; i++) {
    const frictionRadius = (good + bad) / 2
    if (forcesAt(model, { ...burden, frictionRadius }, jam) === null) bad = frictionRadius
    else good = frictionRadius
  }
  // a little inside: at the limit itself the forces have none
  const offered = good * (1 - 1e-3)
  return refuse(
    "jammed",
    "Friction at the pins holds the mechanism fast {share ratio %} of the way: friction coefficient times half the pin's diameter comes to {frictionRadius length}, {shortBy length} more than the forces at the pins leave any balance for. Thinner or better oiled pins, or a pose farther from a dead point.",
    burden.frictionRadius - good,
    { frictionRadius: burden.frictionRadius, share },
    { pinFriction: (2 * offered) / si.pinDiameter, pinDiameter: (2 * offered) / si.pinFriction },
  )
}
