import { type BeamInput, beam, naturalFrequency, pinJoint } from "../../frame/index.js"
import { formatNumber, formatQuantity } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { coolingTime, heatingTime, tubeBend } from "../../thermoform/index.js"
import type { RigDocument } from "../document/document.js"
import type { Check } from "./checks.js"
import { atLeast, atMost, byMargin, type Found, findBy, lacking, onMove, peaksOf } from "./finding.js"
import { type Situation, weight } from "./situation.js"

type Si = SiOf<RigDocument>
type Spar = NonNullable<Si["spar"]>

const hinged = ({ rig }: Situation) => rig.hinged !== null

/** The spar level and loaded with its arm's masses, as frame.beam takes it. */
function sparInput(rig: Si, spar: Spar): BeamInput {
  const { length, section, material, modulus, strength, materialTemperature, duration, handling } = spar
  const forces = (rig.hinged as NonNullable<Si["hinged"]>).masses
    .filter((m) => m.radius > 0 && m.radius <= length)
    .map((m) => ({ force: weight(m.mass), position: m.radius }))
  return {
    length,
    support: "cantilever",
    section,
    material,
    modulus,
    strength,
    materialTemperature,
    duration,
    handling,
    forces,
    countsOwnWeight: true,
  }
}

const onSpar = (s: Situation, make: (spar: Spar) => Found): Found => (s.rig.spar ? make(s.rig.spar) : lacking("spar"))

/** Checks of the frame: spar and pin. */
export const frameChecks: readonly Check[] = [
  {
    id: "spar-strength",
    title: "strength of the spar",
    applies: hinged,
    find: (s) =>
      onSpar(s, (spar) =>
        findBy(beam, "spar", sparInput(s.rig, spar), (out) =>
          out.safetyFactor === null
            ? lacking("spar.strength")
            : atLeast(
                out.safetyFactor.low,
                2,
                "number",
                `At worst the spar is stressed to ${formatQuantity("pressure", out.bendingStress as number)}: ${formatNumber(out.safetyFactor.low)} times that would break or yield it.`,
              ),
        ),
      ),
  },
  {
    id: "spar-sag",
    title: "sag of the spar",
    applies: hinged,
    find: (s) =>
      onSpar(s, (spar) =>
        findBy(beam, "spar", sparInput(s.rig, spar), ({ maxDeflection: { low, high } }) =>
          atMost(
            Math.max(-low, high),
            spar.sagLimit,
            "length",
            `Held level the tip sags ${formatQuantity("length", Math.max(-low, high))}; ${formatQuantity("length", spar.sagLimit)} is acceptable.`,
            "the document",
          ),
        ),
      ),
  },
  {
    id: "spar-frequency",
    title: "natural frequency against step rate",
    applies: hinged,
    find: (s) =>
      onSpar(s, (spar) => {
        const { length, section, material, modulus, strength, materialTemperature, duration, tipMass, stepRate } = spar
        return findBy(
          naturalFrequency,
          "spar",
          { length, section, material, modulus, strength, materialTemperature, duration, tipMass, stepRate },
          (out) =>
            // near one the arm swings up with every step; twice is clear of it
            byMargin(
              out.frequency.low,
              1.4 * stepRate,
              "frequency",
              Math.abs(Math.log(out.stepRatio)) / Math.log(1.4) - 1,
              `Left to itself the spar swings at ${formatQuantity("frequency", out.frequency.low)}, steps come at ${formatQuantity("frequency", stepRate)}: ${formatNumber(out.amplification)} times the shake of the shoulders reaches it.`,
              "resonance of a damped oscillator; a factor of 1.4 apart is common practice",
            ),
        )
      }),
  },
  {
    id: "pin",
    title: "hinge pin",
    applies: hinged,
    find: (s) => {
      if (!s.rig.pin) return lacking("pin")
      const arms = s.rig.hinged as NonNullable<Si["hinged"]>
      return onMove(s, (move) => {
        // hinge and rod pull the arm at most with both forces in line
        const force = peaksOf(move).force + weight(arms.masses.reduce((sum, m) => sum + m.mass, 0))
        return findBy(pinJoint, "pin", { ...s.rig.pin, force }, (out) =>
          atLeast(
            out.safetyFactor,
            2,
            "number",
            `With ${formatQuantity("force", force)} on it the joint has a safety factor of ${formatNumber(out.safetyFactor)}; ${out.governedBy} governs.`,
          ),
        )
      })
    },
  },
]

/** Checks of each part formed hot: two to a part. */
export function formingChecks(rig: Si): readonly Check[] {
  return rig.formed.flatMap((part, i): Check[] => [
    {
      id: `bend-${i + 1}`,
      title: `bend of ${part.name}`,
      applies: () => true,
      find: () =>
        findBy(tubeBend, `formed.${i}.bend`, part.bend, (out) => {
          const { radius, support } = part.bend
          const least = support === "filled" ? out.minRadiusFilled : out.minRadiusEmpty
          return atLeast(
            radius,
            least,
            "length",
            `Bent to ${formatQuantity("length", radius)} ${support === "filled" ? "with sand in it" : "empty"}; below ${formatQuantity("length", least)} it kinks. Jig: radius ${formatQuantity("length", out.jigRadius)}, heated length ${formatQuantity("length", out.heatedLength)}.`,
            "see alula/thermoform tubeBend",
          )
        }),
    },
    {
      id: `heat-${i + 1}`,
      title: `heating of ${part.name}`,
      applies: () => true,
      find: () =>
        findBy(heatingTime, `formed.${i}.heat`, part.heat, (out) => {
          const { sourceTemperature, ambientTemperature, material, shape, thickness, outsideDiameter } = part.heat
          const limit = out.maxSourceTemperature ?? out.surfaceTemperatureLimit
          const cooling = coolingTime.attempt({ material, shape, thickness, outsideDiameter })
          const working = cooling.ok
            ? ` Out of the heat it can be worked for ${formatQuantity("time", cooling.value.plannedWorkingTime)} and is held in the jig for ${formatQuantity("time", cooling.value.plannedHoldTime)}.`
            : ""
          return byMargin(
            sourceTemperature,
            limit,
            "temperature",
            out.overheatsFirst ? -1 : (limit - sourceTemperature) / Math.max(limit - ambientTemperature, 1),
            `At ${formatQuantity("temperature", sourceTemperature)} it is warm through after ${formatQuantity("time", out.timeRange.low)} to ${formatQuantity("time", out.timeRange.high)}${out.overheatsFirst ? ", but its surface passes its upper limit first" : ""}.${working}`,
            "see alula/thermoform heatingTime",
          )
        }),
    },
  ])
}
