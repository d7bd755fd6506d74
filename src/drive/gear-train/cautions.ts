// Hazards of a gear train, and where its figures end.
import { at, type Caution, caution, commonPractice, type SiOf } from "../../solver/index.js"
import { BEVAN, GEARMOTOR_FAQ, ISO_12100, SHIGLEY } from "../sources.js"
import { externalPair, planetTeeth, type StageSi } from "./kernel.js"
import type { GearTrain, GearTrainCaution, GearTrainInput } from "./types.js"

type Told = Pick<GearTrain, "stages" | "locksAtFriction" | "selfLocking" | "backDriveTorque">

export function cautions(si: Pick<SiOf<GearTrainInput>, "stages">, out: Told): Caution<GearTrainCaution>[] {
  const found: Caution<GearTrainCaution>[] = [
    caution(
      "drawn-in",
      "warning",
      "Gears draw in hair, cloth and fingers where their teeth meet, in either direction and by hand as well: cover them all round, keep a switch within reach of wearer and helper, and have machinery near people checked by a qualified person under the local rules.",
      at(ISO_12100, "clause 6.3"),
    ),
    caution(
      "strength-not-judged",
      "note",
      "Torques and forces only: whether teeth, shafts and bearings bear them is not judged. Compare them with the maker's rating.",
    ),
  ]
  if (!out.locksAtFriction)
    found.push(
      caution(
        "back-driven",
        "warning",
        "The load turns these gears backwards when power goes: only the motor's friction and a drag worth {backDriveTorque moment} at the output are against it. Use a brake, a latch or a counterbalance, and keep people clear of what falls.",
        commonPractice,
        { backDriveTorque: out.backDriveTorque as number },
      ),
    )
  else if (!out.selfLocking)
    found.push(
      caution(
        "thin-holding-margin",
        "warning",
        "The worm only just locks: running in, grease, vibration or heat can take half of its friction, and then the load comes down by itself. Use a brake or a latch where anybody can be under it.",
        at(GEARMOTOR_FAQ, "answer 2.1.3: locking uncertain from an efficiency of 45 %, gone at 55 %"),
      ),
    )
  if (si.stages.some((stage) => stage.type === "worm"))
    found.push(
      caution(
        "worm-start",
        "caution",
        "A worm grips harder at rest than in motion, and cold or dry more than warm: allow clearly more torque for starting than the running figure, and let it cool where it runs long.",
        at(SHIGLEY, "section 13-17 (efficiency and friction of worm gearing)"),
      ),
    )
  si.stages.forEach((stage, k) => {
    found.push(...ofStage(stage, k, out))
  })
  return found
}

/** Cautions about the teeth of one stage; its numbers are named by their place in the list. */
function ofStage(stage: StageSi, k: number, out: Told): Caution<GearTrainCaution>[] {
  const found: Caution<GearTrainCaution>[] = []
  const fewest = out.stages[k]?.fewestTeeth ?? null
  if (fewest !== null && externalPair(stage)[0] < fewest) {
    const name = `stages.${k}.fewestTeeth`
    const text: string = `A standard gear with fewer than {${name}} teeth is undercut by its mate here: weak and uneven. Use more teeth, or gears that their maker made for so few.`
    found.push(caution("undercut", "note", text, at(BEVAN, "chapter 10, example 4"), { [name]: fewest }))
  }
  if (stage.type === "planetary") {
    const apart = !Number.isInteger((stage.drivingTeeth + stage.drivenTeeth) / stage.planets)
    if (apart || !Number.isInteger(planetTeeth(stage))) {
      const [sun, ring, planets] = ["drivingTeeth", "drivenTeeth", "planets"].map((key) => `given.stages.${k}.${key}`) as [
        string,
        string,
        string,
      ]
      const text: string = `With {${sun}} teeth on the sun and {${ring}} on the ring, {${planets}} standard planets do not fit at even spacing: check the tooth counts, or space them as the maker does.`
      found.push(
        caution("uneven-planets", "note", text, commonPractice, {
          [sun]: stage.drivingTeeth,
          [ring]: stage.drivenTeeth,
          [planets]: stage.planets,
        }),
      )
    }
  }
  return found
}
