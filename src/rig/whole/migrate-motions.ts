// Flaps and scissor arrays of version 1 as motions of version 2.
import { formatQuantity, type Kind, readQuantity } from "../../quantity/index.js"

/** Part of a document whose fields have not been checked. */
export type Part = Readonly<Record<string, unknown>>
export const part = (value: unknown): Part | null =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Part) : null

/** Leaves out what is not there, so that its default holds. */
export function given(fields: Part): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined && value !== null))
}

/** A quantity turned round: '5 deg' to '-5 deg'. */
export function negated(value: unknown): unknown {
  if (typeof value === "number") return -value
  if (typeof value !== "string") return value
  const text = value.trim()
  return /^[-−]/.test(text) ? text.slice(1).trim() : `-${text}`
}

/** A quantity of a document as an SI number; what cannot be read is told where it stands, by the reader. */
export function siOf(kind: Kind, value: unknown, otherwise: number): number {
  if (value === undefined || value === null) return otherwise
  const read = readQuantity(kind, value)
  return typeof read === "number" ? read : Number.NaN
}

/** Where version 1 had its mechanism, in the words of a mount. */
export const mountOf = (document: Part): Part | undefined => {
  const mount = part(document.mount)
  return mount ? given({ forward: mount.forward, height: mount.height }) : undefined
}

/** Like ones in pairs stand on both sides of the body. */
export const inPairs = (count: unknown): true | undefined => (typeof count === "number" && count % 2 === 0 ? true : undefined)

/** A flap's mass as two: one at its hinge, one so far out that first and second moment are those stated. */
function flapMasses(linkage: Part, gyration: unknown): Part[] {
  const centre = siOf("length", linkage.flapCentre, 0)
  const mass = siOf("mass", linkage.flapMass, 0)
  const about = siOf("length", gyration, centre)
  // a flap whose mass is not stated has the smallest that a mass may have
  if (!(mass > 0)) return [{ name: "flap, its mass not stated", mass: "0.1 g", radius: linkage.flapCentre ?? 0 }]
  if (!(about > centre) || !(centre > 0)) return [{ name: "flap", mass: linkage.flapMass, radius: linkage.flapCentre ?? 0 }]
  const share = (centre / about) ** 2
  return [
    { name: "flap, outer part", mass: mass * share, radius: centre / share },
    { name: "flap at its hinge", mass: mass * (1 - share), radius: 0 },
  ]
}

/** Servo-driven flaps as a motion: shaft and hinge level with each other, the flap as far above the horizontal as was said. */
export function flapsOf(document: Part, bus: unknown): Record<string, unknown> | null {
  const flaps = part(document.flaps)
  if (!flaps) return null
  const [linkage, servo] = [part(flaps.linkage) ?? {}, part(flaps.servo) ?? {}]
  const [from, to] = [linkage.minServoAngle ?? "-45 deg", linkage.maxServoAngle ?? "45 deg"]
  const level = siOf("angle", linkage.flapLevel, 0)
  const horn = siOf("angle", linkage.flapHornAngle, Math.PI / 2)
  const [width, depth] = [siOf("length", linkage.flapWidth, 0), siOf("length", linkage.flapDepth, 0)]
  const masses = flapMasses(linkage, flaps.radiusOfGyration)
  // an even flap reaches twice as far as its centre
  const length = Math.max(0.001, depth, 2 * siOf("length", linkage.flapCentre, 0), ...masses.map((m) => siOf("length", m.radius, 0)))
  return given({
    name: "flaps",
    bus,
    drive: given({ ...servo, type: "hobby-servo", count: flaps.count, fromAngle: from, toAngle: to }),
    mechanisms: [
      given({
        type: "pushrod",
        name: "flap",
        count: flaps.count,
        mirrored: inPairs(flaps.count),
        mount: mountOf(document),
        length: depth > 0 ? linkage.flapDepth : length,
        servoPivot: { x: negated(linkage.pivotDistance), y: 0 },
        servoHorn: linkage.servoHorn,
        servoHornAngle: linkage.servoHornAngle ?? "90 deg",
        movingPivot: { radius: linkage.flapHorn, angle: horn - level },
        neutralAngle: linkage.flapLevel ?? 0,
        startAngle: from,
        hingeMoment: linkage.hingeMoment,
        masses,
        panels: width * depth > 0 ? [{ area: width * depth, radius: depth / 2 }] : undefined,
      }),
    ],
    wanted: given({ duration: flaps.flapTime }),
  })
}

/** What stands for the driver of a scissor array, of which version 1 knew the force alone. */
const STAND_IN = { voltage: 12, noLoadSpeed: 0.01, ratedSpeed: 0.008, noLoadCurrent: 0.4 } as const

/** A scissor array as a motion: a rod across its base that gets shorter while the drive goes out. */
export function scissorOf(document: Part): Record<string, unknown> | null {
  const scissor = part(document.scissor)
  if (!scissor) return null
  const array = part(scissor.array) ?? {}
  const arm = siOf("length", array.armLength, Number.NaN)
  const [folded, extended] = [siOf("angle", array.foldedAngle, Number.NaN), siOf("angle", array.extendedAngle, Number.NaN)]
  const [wide, narrow] = [arm * Math.cos(folded), arm * Math.cos(extended)]
  const { voltage, noLoadSpeed, ratedSpeed, noLoadCurrent } = STAND_IN
  const force = siOf("force", scissor.driverForce, Number.NaN)
  const efficiency = siOf("ratio", array.screwEfficiency, 0.3)
  const mount = mountOf(document)
  return given({
    name: "scissor array",
    // on no bus: what it draws is not known
    drive: {
      type: "linear-actuator",
      retractedLength: narrow,
      stroke: wide - narrow,
      ratedVoltage: voltage,
      noLoadSpeed,
      noLoadCurrent,
      ratedForce: scissor.driverForce,
      ratedSpeed,
      ratedCurrent: noLoadCurrent + (force * noLoadSpeed) / (efficiency * voltage),
    },
    mechanisms: [
      given({
        type: "scissor",
        name: "array",
        reversed: true,
        // behind the hips it reaches back, before them ahead
        mount: mount ? { ...mount, heading: siOf("length", mount.forward, 0) < 0 ? "180 deg" : 0 } : undefined,
        direction: array.tilt ?? "90 deg",
        cells: array.cells,
        armLength: array.armLength,
        rod: "across",
        fixedJoint: { lower: "right", upper: "left" }[String(array.fixedJoint)],
        tipMass: array.tipMass,
        armsMass: siOf("mass", array.armsMass, 0) > 0 ? array.armsMass : "0.1 g",
        startLength: wide,
      }),
    ],
    wanted: given({ span: scissor.span }),
  })
}

/** What of these sections version 2 has no place for, by its path. */
export function unsaid(document: Part): string[] {
  const [scissor, lights] = [part(document.scissor), part(document.lights)]
  const of = (section: unknown, path: string, keys: readonly string[]) => {
    const fields = part(section)
    return fields ? keys.filter((key) => fields[key] !== undefined && fields[key] !== null).map((key) => `${path}.${key}`) : []
  }
  return [
    ...of(document.brief, "brief", ["stageTime"]),
    // a supply that can say so carries the flaps' voltage and current
    ...(part(document.pack) || part(document.bank) ? of(document.flaps, "flaps", ["voltage"]) : []),
    ...(part(document.pack) && !part(document.converter) ? of(document.flaps, "flaps", ["supplyCurrent"]) : []),
    ...of(part(document.flaps)?.linkage, "flaps.linkage", ["servoSpeed", "windSpeed", "dragCoefficient", "airDensity"]),
    ...of(scissor, "scissor", ["droopLimit"]),
    ...of(scissor?.array, "scissor.array", ["push", "screwLead", "driverStiffness", "pinPlay"]),
    ...of(lights, "lights", ["feeds", "dimVoltage"]),
  ]
}

/** What a maker has to look at after flaps or an array were brought over. */
export function toLookAt(document: Part): string {
  const notes: string[] = []
  const { voltage, noLoadSpeed } = STAND_IN
  if (part(document.scissor))
    notes.push(
      `Version 1 knew no more of the array's driver than its force: its voltage (${formatQuantity("voltage", voltage)}), speed (${formatQuantity("speed", noLoadSpeed, "mm/s")} without load) and currents are stand-ins, its times and blows with them. Put the datasheet's in their place and name its bus.`,
    )
  if ((part(document.flaps) || part(document.scissor)) && Array.isArray(document.parts) && document.parts.length)
    notes.push("Masses of flaps and arrays are counted with their motions now: take out of the parts what stands there too.")
  return notes.join(" ")
}
