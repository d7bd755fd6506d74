// Published test problems of integrators, and motions with a closed form.
import { integrate, type OdeOptions, type OdeProblem } from "../../src/numeric/ode/index.js"
import { type Check, referenceTests } from "../helpers/references.js"
import {
  arenstorf,
  detest,
  doublePendulum,
  hires,
  jacobiConstant,
  limitCycle,
  lorenz,
  lotkaVolterra,
  pendulum,
  problem,
  robertson,
  switched,
  vanDerPol,
} from "../numeric/ode-problems.js"

const FINE: OdeOptions = { relative: 1e-12, absolute: 1e-14 }
const FINEST: OdeOptions = { relative: 1e-13, absolute: 1e-14 }
const endOf = (what: OdeProblem, y0: ArrayLike<number>, end: number, options = FINE, from = 0): number[] => {
  const found = integrate(what, from, Float64Array.from(y0), end, options)
  if (found.stop.kind !== "end") throw new Error(`stopped at ${found.t}: ${found.stop.kind}`)
  return Array.from(found.y)
}
/** States at the times of a row, from the dense output of one run. */
const statesAt = (what: OdeProblem, y0: readonly number[], times: readonly number[], options = FINE): number[][] => {
  const states: number[][] = []
  const out = new Float64Array(y0.length)
  integrate(what, times[0] as number, Float64Array.from(y0), times.at(-1) as number, options, (ta, tb, at) => {
    for (const t of times.slice(states.length)) {
      if (t > tb || t < ta) return
      at(t, out)
      states.push(Array.from(out))
    }
  })
  return states
}

/** Crests of a limit cycle, where its speed falls through zero, once it has settled. */
const cycle = (mu: number) => {
  const { slope } = limitCycle(mu)
  const what: OdeProblem = {
    size: 2,
    slope,
    events: {
      count: 1,
      directions: [-1],
      values: (_, y, g) => {
        g[0] = y[1] as number
      },
    },
  }
  let at = integrate({ size: 2, slope }, 0, Float64Array.of(2, 0), mu < 1 ? 300 : 60, FINE)
  at = integrate(what, at.t, at.y, 1000, FINE)
  const next = integrate(what, at.t, at.y, 1000, FINE)
  return { period: next.t - at.t, amplitude: next.y[0] as number }
}

const checks: Record<string, Check> = {
  "ode-arenstorf": ({ mu, period, y0 }) => ({
    position: endOf(arenstorf(mu), y0, period, FINEST).slice(0, 2),
  }),
  "ode-arenstorf-invariant": ({ mu, period }) => {
    const half = endOf(arenstorf(mu), [0.994, 0, 0, -2.0015851063790824], period / 2, FINEST)
    const jacobi = jacobiConstant(mu, half as unknown as [number, number, number, number])
    return { jacobi, half_x: half[0], half_vy: half[3], half_y_abs_below: Math.abs(half[1] as number) < 1e-8 ? 1e-8 : half[1] }
  },
  "ode-bessel": ({ x, y0 }) => ({
    y: endOf(
      problem(2, ([y, v], t) => [v as number, -(v as number) / t - (1 - 1 / t ** 2) * (y as number)]),
      [y0[0], y0[1]],
      x[1],
      FINE,
      x[0],
    ),
  }),
  "ode-detest-c4": ({ t_end, y0 }) => {
    const y = endOf(detest.c4 as OdeProblem, y0, t_end)
    return { y: [0, 9, 24, 50].map((i) => y[i]) }
  },
  "ode-detest-c5": ({ t_end, y0 }) => ({ y: endOf(detest.c5 as OdeProblem, y0, t_end).slice(0, 15) }),
  "ode-lorenz": ({ t_end, y0 }) => ({ y: endOf(lorenz, y0, t_end) }),
  "ode-lotka-volterra": ({ t }) => ({ y: statesAt(lotkaVolterra, [1, 1], t, { relative: 1e-8, absolute: 1e-10 }) }),
  "ode-stiff-hires": ({ t_end, y0 }) => ({ y: endOf(hires, y0, t_end, { relative: 1e-9, absolute: 1e-13 }) }),
  "ode-stiff-robertson": ({ t_end, y0 }) => ({ y: endOf(robertson, y0, t_end, { relative: 1e-8, absolute: 1e-20 }) }),
  "ode-stiff-robertson-early": ({ t }) => {
    const ends = (t as number[]).map((end) => endOf(robertson, [1, 0, 0], end, { relative: 1e-8, absolute: 1e-13 }))
    return { y1: ends.map((y) => y[0]), y2: ends.map((y) => y[1]), y3: ends.map((y) => y[2]) }
  },
  "ode-stiff-vdpol": ({ eps, t_end, y0 }) => ({ y: endOf(vanDerPol(eps), y0, t_end, { relative: 1e-8, absolute: 1e-10 }) }),
  "ode-vdpol-eps01": ({ eps, t_end, y0 }) => ({ y: endOf(vanDerPol(eps), y0, t_end) }),
  "ode-vdpol-period": ({ mu }) => cycle(mu),
  "ode-vdpol-periods": ({ mu }) => {
    const cycles = (mu as number[]).map(cycle)
    return { period: cycles.map((c) => c.period), amplitude: cycles.map((c) => c.amplitude) }
  },
  "osc-stick-slip": ({ mass_kg, stiffness_N_m, static_N, kinetic_N, belt_m_s }) => {
    // stuck the mass rides on the belt until the spring overcomes what holds it; sliding it stays behind until it has the belt's speed
    const stuck = problem(1, () => [belt_m_s], {
      count: 1,
      values: (_, y, g) => {
        g[0] = stiffness_N_m * (y[0] as number) - static_N
      },
    })
    const sliding = problem(2, ([x, v]) => [v as number, (kinetic_N - stiffness_N_m * (x as number)) / mass_kg], {
      count: 2,
      values: (_, y, g) => {
        g[0] = (y[1] as number) - belt_m_s
        g[1] = y[1] as number
      },
      directions: [1, -1],
    })
    const slip = (x: number) => {
      const top = integrate(sliding, 0, Float64Array.of(x, belt_m_s), 10, FINE)
      const rest = integrate(sliding, top.t, top.y, 10, FINE)
      return { peak: top.y[0] as number, time: rest.t, x: rest.y[0] as number }
    }
    const first = slip(static_N / stiffness_N_m)
    const stick = integrate(stuck, 0, Float64Array.of(first.x), 10, FINE)
    const second = slip(stick.y[0] as number)
    return { stick_s: stick.t, slip_s: second.time, period_s: stick.t + second.time, peak_m: second.peak }
  },
  "pendulum-double": ({ g_m_s2, start_deg, t_s }) => {
    const start = [...(start_deg as number[]).map((a) => (a * Math.PI) / 180), 0, 0]
    const [, ...at] = statesAt(doublePendulum(g_m_s2), start, [0, ...t_s])
    return { t1: at[0], t2: at[1], t5: at[2] }
  },
  "pendulum-state": ({ length_m, g_m_s2, amplitude_deg, t_s }) => {
    const swing = pendulum(g_m_s2 / length_m)
    const start = Float64Array.of((amplitude_deg * Math.PI) / 180, 0)
    const [angle_rad, rate_rad_s] = endOf(swing, start, t_s)
    const bottom = integrate(
      {
        ...swing,
        events: {
          count: 1,
          values: (_, y, g) => {
            g[0] = y[0] as number
          },
        },
      },
      0,
      start,
      10,
      FINE,
    )
    return { angle_rad, rate_rad_s, bottom_rate_rad_s: Math.abs(bottom.y[1] as number) }
  },
  "stop-coulomb-viscous": ({ inertia_kg_m2, speed_rad_s, friction_N_m, viscous_N_m_s }) => {
    const coast = problem(2, ([, w]) => [w as number, -(friction_N_m + viscous_N_m_s * (w as number)) / inertia_kg_m2], {
      count: 1,
      values: (_, y, g) => {
        g[0] = y[1] as number
      },
    })
    const rest = integrate(coast, 0, Float64Array.of(0, speed_rad_s), 100, FINE)
    return { time_s: rest.t, angle_rad: rest.y[0] }
  },
}
for (const [name, what] of Object.entries(detest)) checks[`ode-detest-${name}`] ??= ({ t_end, y0 }) => ({ y: endOf(what, y0, t_end) })
for (const [name, what] of Object.entries(switched))
  checks[`ode-detest-${name}`] = ({ t_end, y0 }) => {
    let y: ArrayLike<number> = y0
    for (let t = 0; t < t_end; t++) y = endOf(what(t % 2 === 0), y, t + 1, FINEST, t)
    return { y }
  }

referenceTests("ode", checks)
