// Steps of a working from an arm's angle to the moment of its springs, shared by the solvers about a hinge.

import type { Formula } from "../../solver/index.js"

/** Which springs only pull, as numbers. */
export const pullsOnlyStep = {
  symbol: "p_s",
  kind: "number",
  meaning: "springs that only pull (1) or also push (0)",
  given: ({ springs }: { readonly springs: readonly { readonly pullsOnly: boolean }[] | null }) =>
    (springs ?? []).map((spring) => (spring.pullsOnly ? 1 : 0)),
} as const

/** Steps from the arm angle `theta_<p>` to the moment `N_<p>` of the springs. */
export const springSteps = (p: string, where: string): Formula[] => {
  const spring = "has_springs"
  return [
    {
      symbol: `X_${p}`,
      kind: "length",
      meaning: `springs, moving end to fixed end, outward, ${where}`,
      is: `x_s - x_h - r_s .* map(theta_${p} + a_s, cos)`,
      when: spring,
    },
    {
      symbol: `Y_${p}`,
      kind: "length",
      meaning: `springs, moving end to fixed end, up, ${where}`,
      is: `y_s - y_h - r_s .* map(theta_${p} + a_s, sin)`,
      when: spring,
    },
    {
      symbol: `Z_${p}`,
      kind: "length",
      meaning: `lengths of the springs ${where}`,
      is: `map(X_${p} .^ 2 + Y_${p} .^ 2, sqrt)`,
      when: spring,
    },
    {
      symbol: `T_${p}`,
      kind: "force",
      meaning: `tensions of the springs ${where}; one that only pulls is slack below its free length`,
      is: `map(F_s + k_s .* (Z_${p} - l_s), Z_${p} - l_s, p_s, f(t, x, c) = (c == 1 and x <= 0 m ? 0 N : t))`,
      when: spring,
    },
    {
      symbol: `N_${p}`,
      kind: "moment",
      meaning: `moment of the springs ${where}`,
      is: `sum(T_${p} ./ Z_${p} .* r_s .* (map(theta_${p} + a_s, cos) .* Y_${p} - map(theta_${p} + a_s, sin) .* X_${p}))`,
      when: spring,
    },
    { symbol: `N_${p}`, kind: "moment", meaning: `no springs`, is: "0 N m", when: "not has_springs" },
  ]
}
