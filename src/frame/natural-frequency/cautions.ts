import { at, type Caution, caution, commonPractice, type Issue, inconsistent, type SiOf } from "../../solver/index.js"
import { conditionCautions } from "../condition.js"
import { sectionFaults } from "../section.js"
import { BLEVINS, THOMSON } from "../sources.js"
import { massPerLengthOf } from "./kernel.js"
import type { NaturalFrequency, NaturalFrequencyCaution, NaturalFrequencyInput } from "./types.js"

export function cautions(si: SiOf<NaturalFrequencyInput>, out: NaturalFrequency): Caution<NaturalFrequencyCaution>[] {
  const found: Caution<NaturalFrequencyCaution>[] = [...conditionCautions(si)]
  if (si.rootTurningStiffness === null && si.actuator === null)
    found.push(
      caution(
        "rigid-root",
        "note",
        "The root counts as rigid: a hinge, an actuator's rod or a clamp that yields lowers the frequencies further; a root ten times as stiff as the member still takes a sixth off. Shake a sample and count, or give its turning stiffness.",
        at(BLEVINS, "table 8-1 (spring-hinged root)"),
      ),
    )
  else if (out.rootTurning > 1)
    found.push(
      caution(
        "soft-root",
        "caution",
        "The root turns {rootTurning} times as far as the member bends: its play and softness decide the frequency, and the member swings about it nearly as a stiff bar. Stiffen the hinge or its actuator first.",
        at(BLEVINS, "table 8-1 (spring-hinged root)"),
        { rootTurning: out.rootTurning },
      ),
    )
  if (out.amplification > 2)
    found.push(
      caution(
        "shaken-by-steps",
        "warning",
        "Walking shakes it near its own frequency of {frequency.low frequency} to {frequency.high frequency} (harmonic {harmonic} of the steps): it can swing {amplification} times as far as the shake, may hit people and works its joints loose. Stiffen or shorten it, or take mass off the tip.",
        at(THOMSON, "chapter 3 (steady forced vibration with damping)"),
        {
          "frequency.low": out.frequency.low,
          "frequency.high": out.frequency.high,
          harmonic: out.harmonic,
          amplification: out.amplification,
        },
      ),
    )
  if (out.stepRatio < 1)
    found.push(
      caution(
        "slower-than-steps",
        "caution",
        "Its own frequency of {frequency.low frequency} lies below the step rate of {given.stepRate frequency}: starting, stopping and slow steps pass through it. Stiffen or shorten it.",
        commonPractice,
        { "frequency.low": out.frequency.low, "given.stepRate": si.stepRate },
      ),
    )
  if (si.tipMass === 0 && si.addedMass === 0 && si.masses.length === 0)
    found.push(caution("bare", "note", "Only the bare member is counted; skin, lights and wires lower its frequency."))
  return found
}

export function check(si: SiOf<NaturalFrequencyInput>): Issue[] {
  const faults = [...sectionFaults(si.section, ["section"])]
  if (faults.length === 0 && !(massPerLengthOf(si) >= 1e-6))
    faults.push(inconsistent(["massPerLength"], "no mass along the length", "massPerLength, addedMass, or a material with a shape"))
  for (const [i, { position }] of si.masses.entries())
    if (position > si.length)
      faults.push(
        inconsistent(["masses", i, "position"], "{place length}", "a place within the length of {length length}", {
          place: position,
          length: si.length,
        }),
      )
  return faults
}
