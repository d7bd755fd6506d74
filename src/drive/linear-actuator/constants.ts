/** Two points of a linear actuator's datasheet, SI: unloaded, and at its rated force. */
export interface ActuatorRating {
  /** Voltage both points were measured at, V. */
  readonly ratedVoltage: number
  /** Speed without load, m/s. */
  readonly noLoadSpeed: number
  /** Current without load, A. */
  readonly noLoadCurrent: number
  /** Rated force, N. */
  readonly ratedForce: number
  /** Speed against the rated force, m/s. */
  readonly ratedSpeed: number
  /** Current against the rated force, A. */
  readonly ratedCurrent: number
}

/** What an actuator is as a circuit and a machine, whatever its load. */
export interface ActuatorConstants {
  /** Resistance of the winding (with brushes and leads), Ω. */
  readonly windingResistance: number
  /** Force at the rod for each ampere beyond the friction current, N/A. */
  readonly forceConstant: number
  /** Back electromotive force for each metre per second of the rod, V·s/m. */
  readonly backEmfConstant: number
  /** Current that friction takes, load or none, A. */
  readonly frictionCurrent: number
}

/**
 * Constants of a brushed linear actuator from its no-load and rated points: V = I·R + kV·v holds at
 * both and F = kF·(I − I0), so with D = v0·I1 − v1·I0: kV = V·(I1 − I0)/D, R = V·(v0 − v1)/D and
 * kF = F1/(I1 − I0). Positive and finite where 0 ≤ I0 < I1, 0 < v1 < v0, V > 0 and F1 > 0.
 */
export function actuatorConstants(rating: ActuatorRating): ActuatorConstants {
  const { ratedVoltage, noLoadSpeed, noLoadCurrent, ratedForce, ratedSpeed, ratedCurrent } = rating
  const determinant = noLoadSpeed * ratedCurrent - ratedSpeed * noLoadCurrent
  const extraCurrent = ratedCurrent - noLoadCurrent
  return {
    windingResistance: (ratedVoltage * (noLoadSpeed - ratedSpeed)) / determinant,
    forceConstant: ratedForce / extraCurrent,
    backEmfConstant: (ratedVoltage * extraCurrent) / determinant,
    frictionCurrent: noLoadCurrent,
  }
}

/** Current that a force against the motion draws, A: I = I0 + F/kF, whatever the voltage. */
export function actuatorCurrent(constants: ActuatorConstants, force: number): number {
  return constants.frictionCurrent + force / constants.forceConstant
}

/** Speed of the rod at a voltage and current, m/s: v = (V − I·R)/kV; zero or less is a stall. */
export function actuatorSpeed(constants: ActuatorConstants, voltage: number, current: number): number {
  return (voltage - current * constants.windingResistance) / constants.backEmfConstant
}

/**
 * Factor by which a winding's resistance grows from the temperature its datasheet was taken at (°C)
 * to another: 1 + α·(T − T₀)/(1 + α·(T₀ − 20)), with α = 0.00393/K for copper, which is referred to
 * 20 °C (IEC 60028:1925). The two datasheet points are taken to be at T₀; magnets weaken with heat as
 * well, which this leaves out.
 */
export function windingFactor(temperature: number, reference = 20): number {
  const alpha = 0.00393
  return (1 + alpha * (temperature - 20)) / (1 + alpha * (reference - 20))
}

/** The same actuator with its winding at another temperature (°C). */
export function warmedConstants(constants: ActuatorConstants, temperature: number, reference = 20): ActuatorConstants {
  return { ...constants, windingResistance: constants.windingResistance * windingFactor(temperature, reference) }
}
