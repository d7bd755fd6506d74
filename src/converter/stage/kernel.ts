/** Voltages across an inductor while its switch is on and off, and what it switches at. */
export interface Stage {
  /** Voltage across the inductor with the switch on, V. */
  readonly on: number
  /** Voltage across it, reversed, with the switch off, V. */
  readonly off: number
  /** Inductance, H. */
  readonly inductance: number
  /** Switching frequency, Hz. */
  readonly frequency: number
}

/** A triangle of inductor current. */
export interface Triangle {
  readonly continuous: boolean
  /** Part of the period the switch is on. */
  readonly duty: number
  /** Part of the period the current falls. */
  readonly fallDuty: number
  /** Peak to peak, A. */
  readonly ripple: number
  readonly peak: number
  readonly valley: number
  readonly mean: number
  readonly rms: number
}

/** Duty and ripple while the current never rests: volt-seconds balance. */
export function continuousRipple({ on, off, inductance, frequency }: Stage): { duty: number; rest: number; ripple: number } {
  const duty = off / (on + off)
  return { duty, rest: on / (on + off), ripple: (on * duty) / (inductance * frequency) }
}

/** Triangle of a continuous current of that mean. */
export function continuousTriangle(stage: Stage, mean: number): Triangle {
  const { duty, rest, ripple } = continuousRipple(stage)
  return {
    continuous: true,
    duty,
    fallDuty: rest,
    ripple,
    peak: mean + ripple / 2,
    valley: mean - ripple / 2,
    mean,
    rms: Math.sqrt(mean ** 2 + ripple ** 2 / 12),
  }
}

/** Triangle of a current that rests each period, from its on-duty. */
export function restingTriangle({ on, off, inductance, frequency }: Stage, duty: number): Triangle {
  const peak = (on * duty) / (inductance * frequency)
  const fallDuty = (duty * on) / off
  const both = duty + fallDuty
  return { continuous: false, duty, fallDuty, ripple: peak, peak, valley: 0, mean: (peak * both) / 2, rms: peak * Math.sqrt(both / 3) }
}
