// The picture of a move: speed, and the torque both ways, through its time.
import { lineChart } from "../../drawing/index.js"
import type { SiOf } from "../../solver/index.js"
import { rampsOf, solve, stateAt } from "./kernel.js"
import type { MotionProfileInput } from "./types.js"

const POINTS = 160

/**
 * Draws a move as one SVG picture: torque out and back over time, with the speed as a share of the peak torque's height.
 *
 * @param si - input of motionProfile in SI, as its `read` gives it
 */
export function drawMotionProfile(si: SiOf<MotionProfileInput>): string {
  const ramps = rampsOf(si)
  const { duration, peakTorque, peakSpeed } = solve(si)
  const scale = (peakTorque || 1) / peakSpeed
  const at = Array.from({ length: POINTS + 1 }, (_, k) => {
    const time = (duration * k) / POINTS
    return { time, ...stateAt(ramps, time) }
  })
  const torque = (load: number) =>
    at.map(({ time, acceleration }) => ({ x: time, y: si.inertia * acceleration + load + si.frictionTorque }))
  return lineChart({
    title: "Torque through the move",
    x: "time, s",
    y: "torque, N·m",
    series: [
      { label: "out", points: torque(si.loadTorque) },
      { label: "back", points: torque(-si.loadTorque) },
      { label: "speed (to scale)", points: at.map(({ time, speed }) => ({ x: time, y: speed * scale })) },
    ],
  })
}
