// A chain of segments that one driver folds and spreads: a wing's fingers, a tail, an umbrella's ribs.
import { driverTravel, segmentFields } from "../../linkage/folding-chain/fields.js"
import { chainJointAngle, chainJointRatio } from "../../linkage/index.js"
import type { Angle, Area, Length, Mass, Moment, Ratio } from "../../quantity/index.js"
import { type Issue, inconsistent, type SiOf } from "../../solver/index.js"
import { type PlanePoint, planePoint } from "./arm.js"
import { addBody, massCentre, type PlaneBody } from "./body.js"
import type { Mechanism, MechanismMember, Triple } from "./mechanism.js"
import { turningPart } from "./moving.js"

/** One segment, from its own joint outward. */
export interface SegmentOfChain {
  /** Joint to joint; for the last one, joint to tip. [L_s; 1 mm to 10 m] */
  length: Length
  /** Depth across, for the space it takes up. [b_s; 0 to 5 m; default 0] */
  width?: Length
  /** Mass of a segment [m_s; 0.1 g to 100 kg] */
  mass: Mass
  /** Where its centre of gravity lies, as a share of the length from its own joint. [k_s; 0 to 1; default 0.5] */
  centreShare?: Ratio
  /** Angle from the segment before it, or from outward for the first one, with the chain folded. [alpha_s; −401.07° to 401.07°] */
  foldedAngle: Angle
  /** Turn of its joint for one turn of the driver; negative where it turns the other way. [n_s; −20 to 20] */
  ratio: number
  /** Share of the driver's travel after which its joint begins to turn. [p_s; 0 to 99 %; default 0] */
  startsAt?: Ratio
  /** Share of the driver's travel after which its joint stands still. [p_e; 1 to 100 %; default 100 %] */
  endsAt?: Ratio
  /** Area that it holds, centred at its middle, square to the plane in which it turns. [A_p; 0 to 4 m²; default 0] */
  area?: Area
  /** Friction moment of its joint, whichever way it turns. [M_f; 0 to 100 N m; default 0] */
  jointFriction?: Moment
}

/** A folding chain. */
export interface FoldingChainMechanism {
  type: "folding-chain"
  /** First joint. [group; optional, with a default of its own] */
  hinge?: PlanePoint
  /** Segments from the frame outward. [list of 1 to 12] */
  segments: readonly SegmentOfChain[]
  /** Turn of the driver from folded to spread. [phi_t; 0.1° to 700 rad] */
  driverTravel: Angle
  /** Mass at the tip [m_t; 0 to 50 kg; default 0] */
  tipMass?: Mass
}

/** Coordinate: turn of the driver from folded. */
function build(si: SiOf<FoldingChainMechanism>): Mechanism {
  const { hinge, segments, driverTravel, tipMass } = si
  const last = segments.length - 1
  // each segment as a slender rod about its own centre, the tip's mass with the last one
  const bodies = segments.map((s, i): PlaneBody => {
    const [centre, tip] = [s.centreShare * s.length, i === last ? tipMass : 0]
    return {
      mass: s.mass + tip,
      along: s.mass * centre + tip * s.length,
      across: 0,
      inertia: s.mass * (s.length ** 2 / 12 + centre ** 2) + tip * s.length ** 2,
    }
  })
  const shareOf = (q: number) => q / driverTravel
  const placesAt = (q: number) => {
    let [angle, rate, x, y, vx, vy] = [0, 0, hinge.x, hinge.y, 0, 0]
    let [ax, ay] = [0, 0]
    return segments.map((s) => {
      angle += chainJointAngle(s, driverTravel, shareOf(q))
      rate += chainJointRatio(s, shareOf(q))
      const at = { x, y, angle, turn: rate, rate: [vx, vy, 0] as Triple, bend: [ax, ay, 0] as Triple }
      const [dx, dy] = [s.length * Math.cos(angle), s.length * Math.sin(angle)]
      x += dx
      y += dy
      vx -= rate * dy
      vy += rate * dx
      ax -= rate * rate * dx
      ay -= rate * rate * dy
      return { ...at, end: [x, y, 0] as Triple, endRate: [vx, vy, 0] as Triple }
    })
  }
  const inside = segments.flatMap((s) => [s.startsAt, s.endsAt]).filter((share) => share > 0 && share < 1)
  return {
    travel: "angle",
    start: 0,
    low: 0,
    high: driverTravel,
    deadPoints: [],
    shows: "angle",
    at(q, state) {
      const share = q / driverTravel
      let [angle, rate, vx, vy, ax, ay] = [0, 0, 0, 0, 0, 0]
      for (let i = 0; i <= last; i++) {
        const s = segments[i] as (typeof segments)[number]
        const ratio = chainJointRatio(s, share)
        angle += chainJointAngle(s, driverTravel, share)
        rate += ratio
        addBody(state, bodies[i] as PlaneBody, angle, vx, vy, ax, ay, rate, 0)
        const [c, n] = [Math.cos(angle), Math.sin(angle)]
        const across = s.area * (vy * c - vx * n + (rate * s.length) / 2)
        state.windX += across * n
        state.windY -= across * c
        state.frictionDry += s.jointFriction * Math.abs(ratio)
        vx -= rate * s.length * n
        vy += rate * s.length * c
        ax -= rate * rate * s.length * c
        ay -= rate * rate * s.length * n
      }
      for (const place of inside) state.form = 2 * state.form + (share >= place ? 1 : 0)
    },
    pose(q) {
      const places = placesAt(q)
      const end = places[last] as (typeof places)[number]
      return {
        parts: places.map((p, i) => {
          const { length, width } = segments[i] as (typeof segments)[number]
          const [c, s] = [Math.cos(p.angle), Math.sin(p.angle)]
          const corner = (u: number, v: number): Triple => [p.x + u * c - v * s, p.y + u * s + v * c, 0]
          const half = width / 2
          return {
            name: `segment ${i + 1}`,
            points: [corner(0, half), corner(length, half), corner(length, -half), corner(0, -half)],
            closed: true,
          }
        }),
        pins: places.map((p, i) => ({ name: `joint ${i + 1}`, at: [p.x, p.y, 0] as Triple })),
        tip: end.end,
        tipRate: end.endRate,
        ...massCentre(places.map((p, i) => ({ body: bodies[i] as PlaneBody, x: p.x, y: p.y, angle: p.angle }))),
        shown: q,
      }
    },
    // its last segment; where all lie in one line outward nothing is turned
    carries(q) {
      const { x, y, angle, turn, rate, bend } = placesAt(q)[last] as ReturnType<typeof placesAt>[number]
      const before: Triple = [hinge.x + segments.slice(0, last).reduce((sum, s) => sum + s.length, 0), hinge.y, 0]
      const pins = segments.map((_, i) => `joint ${i + 1}`)
      return turningPart([0, 0, 1], angle, before, { rate: turn, bend: 0 }, pins, { at: [x, y, 0], rate, bend })
    },
    // drives at the joints turn them with moments: each pin carries the weight outward of it
    reactions(_q, _effort, down) {
      let mass = 0
      const carried = [...bodies].reverse().map((body) => {
        mass += body.mass
        return mass
      })
      return carried.reverse().map((m, i) => ({ name: `joint ${i + 1}`, force: [m * down[0], m * down[1], m * down[2]] as Triple }))
    },
  }
}

function check({ segments }: SiOf<FoldingChainMechanism>): Issue[] {
  return segments.flatMap((s, i) => {
    if (s.endsAt > s.startsAt) return []
    const [received, expected]: string[] = [`{segments.${i}.endsAt ratio %}`, `more than {segments.${i}.startsAt ratio %}, where it begins`]
    return [
      inconsistent(["segments", i, "endsAt"], received as string, expected as string, {
        [`segments.${i}.endsAt`]: s.endsAt,
        [`segments.${i}.startsAt`]: s.startsAt,
      }),
    ]
  })
}

// a chain that moves has something to move: each segment has a mass
const { default: _, ...mass } = segmentFields.mass

/** A folding chain. */
export const foldingChainMechanism: MechanismMember<FoldingChainMechanism> = {
  type: "folding-chain",
  label: "chain of segments that one driver folds and spreads",
  fields: {
    hinge: { ...planePoint("first joint", "x_h", "y_h"), default: { x: 0, y: 0 } },
    segments: {
      kind: "list",
      label: "segments from the frame outward",
      min: 1,
      max: 12,
      of: {
        kind: "group",
        label: "segment",
        fields: {
          ...segmentFields,
          mass: { ...mass, min: "0.1 g" },
          area: { kind: "area", symbol: "A_p", label: "area", min: 0, max: 4, typical: [0, "0.05 m2"], default: 0 },
          jointFriction: {
            kind: "moment",
            symbol: "M_f",
            label: "friction of its joint",
            min: 0,
            max: 100,
            typical: [0, "0.05 N m"],
            default: 0,
          },
        },
      },
    },
    driverTravel,
    tipMass: { kind: "mass", symbol: "m_t", label: "mass at the tip", min: 0, max: 50, typical: [0, "100 g"], default: 0 },
  },
  check,
  build,
}
