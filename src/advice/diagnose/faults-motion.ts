// What can be wrong with drives, what transmits, and what moves.
import type { MotionModel } from "../../rig/run/motion-model.js"
import type { Transmission } from "../../rig/transmissions/transmission.js"
import { type Built, type Moving, type Sound, withMotion } from "./built.js"
import type { FaultRow, Site } from "./fault.js"
import { hasPanels, hasSprings, leverOf, withDrive, withLever, withMechanism } from "./straying.js"

/** A site at every motion that passes. */
const atMotion =
  (
    change: (one: Moving, size: number) => Partial<Moving>,
    passes: (one: Moving) => boolean = () => true,
    range?: (one: Moving) => readonly [number, number],
  ): FaultRow["sites"] =>
  ({ motions }) =>
    motions.flatMap((one, i): Site[] =>
      passes(one)
        ? [
            {
              at: one.si.name,
              ...(range ? { range: range(one) } : {}),
              apply: (built, size) => withMotion(built, i, (now) => change(now, size)),
            },
          ]
        : [],
    )

const inModel =
  (change: (model: MotionModel, size: number) => MotionModel) =>
  (one: Moving, size: number): Partial<Moving> => ({ model: change(one.model, size), weak: one.weak && change(one.weak, size) })

/** A site at every mechanism that passes; a mirrored pair is one. */
const atMechanism =
  (
    change: (one: Moving, name: string, size: number) => Partial<Moving>,
    passes: (one: Moving, name: string) => boolean = () => true,
  ): FaultRow["sites"] =>
  ({ motions }) =>
    motions.flatMap((one, i) =>
      one.si.mechanisms.flatMap(({ name }): Site[] =>
        passes(one, name)
          ? [
              {
                at: one.si.mechanisms.length > 1 || name !== one.si.name ? `${name} of ${one.si.name}` : name,
                apply: (built, size) => withMotion(built, i, (now) => change(now, name, size)),
              },
            ]
          : [],
      ),
    )

const stallCurrent = ({ drive }: MotionModel) => drive.ratedVoltage / drive.windingResistance

/** Whether each side of a motion has drives of its own. */
const hasSides = ({ si, model }: Moving) => model.drives > 1 && si.mechanisms.every((one) => one.count % model.drives === 0)

/** Elements of one motion: those that all share, then those of its mechanisms. */
const elementsOf = ({
  si,
}: Moving): readonly { readonly type: string; readonly at: string; readonly own: number; readonly index: number }[] => [
  ...si.transmission.map(({ type }, index) => ({ type, at: `${type} of ${si.name}`, own: -1, index })),
  ...si.mechanisms.flatMap((one, own) => one.transmission.map(({ type }, index) => ({ type, at: `${type} of ${one.name}`, own, index }))),
]

function withElement(
  model: MotionModel,
  names: readonly string[],
  own: number,
  index: number,
  change: (e: Transmission) => Transmission,
): MotionModel {
  const at = (list: readonly Transmission[]) => list.map((e, i) => (i === index ? change(e) : e))
  if (own < 0) return { ...model, chain: at(model.chain) }
  return { ...model, parts: model.parts.map((part) => (part.name === names[own] ? { ...part, own: at(part.own) } : part)) }
}

const atElement =
  (passes: (type: string) => boolean, change: (element: Transmission, size: number) => Transmission, sound: Sound): FaultRow["sites"] =>
  ({ motions }: Built) =>
    motions.flatMap((one, i) => {
      const names = one.si.mechanisms.map((m) => m.name)
      return elementsOf(one)
        .filter(({ type }) => passes(type))
        .map(
          ({ at, own, index }): Site => ({
            at,
            apply: (built, size) =>
              withMotion(built, i, (now) => {
                const of = (model: MotionModel) => withElement(model, names, own, index, (e) => change(e, size))
                return { model: of(now.model), weak: now.weak && of(now.weak), sounds: [...now.sounds, sound] }
              }),
          }),
        )
    })

const lines = ["drum", "cable", "antagonist", "belt"]

/** Rows of motions. */
export const motionRows: readonly FaultRow[] = [
  {
    id: "gritty-gearbox",
    label: (name) => `the gearbox in the drive of ${name} runs hard: grit, dry grease, or a bent screw`,
    size: { label: "extra friction, as a share of its stall current", kind: "ratio" },
    path: "motions[].drive: friction current",
    usual: 0.1,
    range: [0, 0.9],
    prior: 0.8,
    todo: (name) =>
      `Run the drive of ${name} with nothing on it: its current is above the datasheet's no-load one. Clean and grease it, or replace it.`,
    sites: atMotion((one, size) => ({
      ...inModel((m, s) => withDrive(m, (d) => ({ frictionCurrent: d.frictionCurrent + s * stallCurrent(m) })))(one, size),
      sounds: [...one.sounds, "gritty"],
    })),
  },
  {
    id: "wrong-gearing",
    label: (name) => `the drive of ${name} has another gearing than planned`,
    size: { label: "times the planned gearing; below 1 it is the faster one", kind: "number", shown: Math.exp },
    path: "motions[].drive: speed and force",
    usual: 0.5,
    range: [-1.4, 1.4],
    prior: 0.5,
    todo: (name) => `Read the type plate of the drive of ${name}; time it with nothing on it against the datasheet's no-load speed.`,
    sites: atMotion(
      inModel((m, s) =>
        withDrive(m, (d) => ({ backEmfConstant: d.backEmfConstant * Math.exp(s), effortConstant: d.effortConstant * Math.exp(s) })),
      ),
    ),
  },
  {
    id: "wrong-winding",
    label: (name) => `the drive of ${name} is wound for another voltage`,
    size: { label: "times the planned voltage", kind: "number", shown: Math.exp },
    path: "motions[].drive.ratedVoltage",
    usual: 0.5,
    range: [-1.4, 1.4],
    prior: 0.4,
    todo: (name) => `Read the voltage on the type plate of the drive of ${name}; measure its winding against the datasheet.`,
    sites: atMotion(
      inModel((m, s) => {
        const k = Math.exp(s)
        return withDrive(m, (d) => ({
          backEmfConstant: d.backEmfConstant * k,
          effortConstant: d.effortConstant * k,
          windingResistance: d.windingResistance * k * k,
          frictionCurrent: d.frictionCurrent / k,
        }))
      }),
    ),
  },
  {
    id: "drive-lead",
    label: (name) => `a bad contact in the drive's own lead, or worn brushes, at ${name}`,
    size: { label: "extra resistance, as a share of its winding", kind: "ratio" },
    path: "motions[].drive: winding resistance",
    usual: 0.5,
    range: [0, 10],
    prior: 0.7,
    todo: (name) =>
      `Read the voltage right at the drive's soldered tags at ${name} while it moves, and its winding at rest; make lead and plug anew, or replace worn brushes.`,
    sites: atMotion(inModel((m, s) => withDrive(m, (d) => ({ windingResistance: d.windingResistance * (1 + s) })))),
  },
  {
    id: "driver-limit",
    label: (name) => `the driver of ${name} is set to a lower current limit`,
    size: { label: "share of its limit that is missing", kind: "ratio" },
    path: "motions[].drive.currentLimit",
    usual: 0.4,
    range: [0, 0.95],
    prior: 0.6,
    todo: (name) => `Set the current limit in the driver of ${name} to the planned one.`,
    sites: atMotion(
      inModel((m, s) => withDrive(m, (d) => ({ currentLimit: d.currentLimit && d.currentLimit * (1 - s) }))),
      (one) => one.model.drive.currentLimit !== null,
    ),
  },
  {
    id: "one-drive-weak",
    label: (name) => `one drive of ${name} is weaker than the other: its lead, its brushes or its gears`,
    size: { label: "extra resistance, as a share of its winding", kind: "ratio" },
    path: "motions[].drive: winding resistance of one",
    usual: 0.5,
    range: [0, 10],
    prior: 0.6,
    todo: (name) => `Swap both drives of ${name}: where the slow side goes along, it is the drive; where it stays, lead, plug or hinge.`,
    sites: atMotion(
      (one, size) => ({ weak: withDrive(one.weak ?? one.model, (d) => ({ windingResistance: d.windingResistance * (1 + size) })) }),
      hasSides,
    ),
  },
  {
    id: "drive-open",
    label: (name) => `no current gets to the drive of ${name}: its plug, its driver, an end switch or its winding is open`,
    size: null,
    path: "motions[].drive carries nothing",
    usual: 1,
    range: [1, 1],
    prior: 0.8,
    todo: (name) =>
      `Switch off, unplug the drive of ${name} and measure its winding: no reading means it is open, inside or at an end switch. Where it is sound, follow lead, plug and driver from the bus on.`,
    sites: atMotion(() => ({ cut: true })),
  },
  {
    id: "reversed",
    label: (name) => `the drive of ${name} is wired the wrong way round`,
    size: null,
    path: "motions[].drive: polarity",
    usual: 1,
    range: [1, 1],
    prior: 0.5,
    todo: (name) => `Switch off, swap both wires of the drive of ${name} at its plug.`,
    sites: atMotion(() => ({ wrongWay: "all" })),
  },
  {
    id: "one-reversed",
    label: (name) => `one drive of ${name} is wired the wrong way round and works against the other`,
    size: null,
    path: "motions[].drive: polarity of one",
    usual: 1,
    range: [1, 1],
    prior: 0.5,
    todo: (name) => `Switch off at once; run each drive of ${name} alone and swap the wires of the one that goes the wrong way.`,
    sites: atMotion(
      () => ({ wrongWay: "one-of-a-pair" }),
      ({ model }) => model.drives > 1,
    ),
  },
  {
    id: "blocked",
    label: (name) => `something stops ${name} on its way: cloth, a cable off its pulley, a rod that fouls, or its end switch`,
    size: { label: "share of its way that is missing", kind: "ratio" },
    path: "motions[]: travel",
    usual: 0.5,
    range: [0, 1],
    prior: 0.8,
    todo: (name) =>
      `Switch off, take the drive of ${name} off and move it by hand over its whole way: where it stops, look what touches; check the drive's end switches.`,
    sites: atMotion((one, size) => ({ blocked: Math.min(one.blocked, 1 - size) })),
  },
  {
    id: "cold-grease",
    label: (name) => `the grease in the drive of ${name} stiffens in the cold`,
    size: { label: "extra friction in the cold, as a share of its stall current", kind: "ratio" },
    path: "motions[].drive: friction current in the cold",
    usual: 0.15,
    range: [0, 0.9],
    prior: 0.8,
    todo: (name) => `Warm the gearbox of ${name} with a hand for ten minutes and try again; take a grease rated for the cold.`,
    sites: atMotion((one, size) => ({ coldDrag: one.coldDrag + size })),
  },
  {
    id: "element-friction",
    label: (name) => `the ${name} runs hard: dry, kinked, out of line or too tight`,
    size: { label: "share of its efficiency that is lost", kind: "ratio" },
    path: "motions[].transmission[].efficiency",
    usual: 0.25,
    range: [0, 0.95],
    prior: 0.8,
    todo: (name) => `Take the load off and turn the ${name} by hand; straighten its way, grease it, ease its tension.`,
    sites: atElement(
      () => true,
      (e, s) => ({ ...e, forward: e.forward * (1 - s), backward: e.backward * (1 - s) }),
      "squeaking",
    ),
  },
  {
    id: "slips",
    label: (name) => `the ${name} slips, or moves less for each turn than planned`,
    size: { label: "share of its travel that is missing", kind: "ratio" },
    path: "motions[].transmission[]: ratio",
    usual: 0.2,
    range: [-0.3, 0.9],
    prior: 0.8,
    todo: (name) =>
      `Mark drive and output of the ${name} with a pen and run it once: marks apart mean slip; measure its diameters if there is none.`,
    sites: atElement(
      (type) => lines.includes(type),
      (e, s) => ({ ...e, out: (x) => (1 - s) * e.out(x), ratio: (x) => (1 - s) * e.ratio(x) }),
      "clicking",
    ),
  },
  {
    id: "stretched",
    label: (name) => `slack or a stretched line in ${name}: its drive turns a while before anything moves`,
    size: { label: "share of the drive's travel that is lost", kind: "ratio" },
    path: "motions[].drive: travel that moves nothing",
    usual: 0.12,
    range: [0, 0.9],
    prior: 0.7,
    todo: (name) =>
      `Watch ${name} start: the drive turns and nothing follows. Shorten the line or move its clamp; replace a cable that has stretched once.`,
    sites: atMotion(
      (one, size) => ({ lost: one.lost + size * one.model.span }),
      (one) => elementsOf(one).some(({ type }) => lines.includes(type)),
    ),
  },
  {
    id: "extra-mass",
    label: (name) => `${name} is heavier than planned`,
    size: { label: "extra mass", kind: "ratio" },
    path: "motions[].mechanisms[].masses[].mass",
    usual: 0.3,
    range: [0, 8],
    prior: 1.2,
    todo: (name) => `Weigh what ${name} carries, part by part, and put that into the document; take weight off its outer end first.`,
    sites: atMechanism((one, name, size) => inModel((m, s) => withMechanism(m, name, { mass: 1 + s }))(one, size)),
  },
  {
    id: "stiff-hinge",
    label: (name) => `a stiff hinge or something that rubs at ${name}`,
    size: { label: "extra friction, felt at its tip", kind: "force" },
    path: "motions[].mechanisms[].hingeFriction",
    usual: 1.5,
    range: [0, 60],
    prior: 1.2,
    todo: (name) =>
      `Take the rod or line off and move ${name} by hand: it must fall by itself from half way. Loosen, line up and grease its hinge; free cloth that rubs.`,
    sites: atMechanism((one, name, size) => ({
      ...inModel((m, s) => withMechanism(m, name, { atTip: s }))(one, size),
      sounds: [...one.sounds, "squeaking"],
    })),
  },
  {
    id: "one-hinge-stiff",
    label: (name) => `a stiff hinge or something that rubs on one side of ${name}`,
    size: { label: "extra friction, felt at its tip", kind: "force" },
    path: "motions[].mechanisms[].hingeFriction of one side",
    usual: 1.5,
    range: [0, 60],
    prior: 0.7,
    todo: (name) => `Take both rods off and move each side of ${name} by hand; loosen, line up and grease the stiff one.`,
    sites: atMechanism((one, name, size) => ({ weak: withMechanism(one.weak ?? one.model, name, { atTip: size }) }), hasSides),
  },
  {
    id: "weak-spring",
    label: (name) => `the helper spring of ${name} is weaker or stronger than planned`,
    size: { label: "share of its pull that is missing", kind: "ratio" },
    path: "motions[].mechanisms[].springs[].stiffness",
    usual: 0.35,
    range: [-1, 1],
    prior: 0.7,
    todo: (name) => `Pull the spring of ${name} to its working length with a luggage scale; change it or move its end.`,
    sites: atMechanism(
      (one, name, size) => inModel((m, s) => withMechanism(m, name, { spring: 1 - s }))(one, size),
      (one, name) => hasSprings(one.model, name),
    ),
  },
  {
    id: "wrong-pivot",
    label: (name) => `the rod, link or line of ${name} takes hold nearer its pivot than planned, or farther`,
    size: { label: "share by which it is farther", kind: "ratio" },
    path: "motions[].mechanisms[].movingPivot.radius, attachRadius, crank or servoHorn",
    usual: 0.08,
    range: [-0.4, 0.4],
    prior: 0.7,
    todo: (name) => `Measure from the pivot of ${name} to where its rod or line takes hold, pin to pin, and move it to the planned hole.`,
    sites: ({ motions }) =>
      motions.flatMap((one, i) =>
        one.si.mechanisms.flatMap((mechanism, k): Site[] => {
          const lever = leverOf(mechanism)
          return lever
            ? [{ at: `${mechanism.name} of ${one.si.name}`, apply: (built, size) => withLever(built, i, k, lever, 1 + size) }]
            : []
        }),
      ),
  },
  {
    id: "wind",
    label: (name) => `wind on ${name} while it was read`,
    size: { label: "wind speed; below 0 it comes from the back or the right", kind: "speed" },
    path: "wind",
    usual: 3,
    range: [-14, 14],
    prior: 0.3,
    todo: (name) =>
      `Read again indoors or in a calm; if ${name} must move in this wind, plan it with the wind and its panels in the document.`,
    sites: ({ motions }) =>
      motions.flatMap((one): Site[] =>
        hasPanels(one.model)
          ? [{ at: one.si.name, apply: (built, size) => ({ ...built, around: { ...built.around, wind: pressures(one, size) } }) }]
          : [],
      ),
  },
]

/** Wind pressure along the axis of the plane that a motion's panels move in, or across it where they do not. */
function pressures({ model }: Moving, speed: number): readonly [number, number, number] {
  const { x } = model.parts[0]?.frame ?? { x: [0, 1, 0] as const }
  // flat panels broadside: air of 1.2 kg/m³ and a drag factor of about 1.2, common practice
  const pressure = Math.sign(speed) * 0.5 * 1.2 * 1.2 * speed * speed
  return [pressure * x[0], pressure * x[1], 0]
}
