// Strength of PVC pipe by temperature.
const fahrenheit = (t: number) => ((t - 32) * 5) / 9

/**
 * Long-term strength of PVC pipe against that at 73 °F (pipe maker's industrial pipe temperature
 * derating, Schedule 40 and 80 table). It is a pressure factor: never a stiffness factor. No figure
 * exists above 140 °F.
 */
export const pvcDerating: readonly (readonly [temperature: number, factor: number])[] = (
  [
    [73, 1],
    [80, 0.88],
    [90, 0.75],
    [110, 0.51],
    [120, 0.4],
    [130, 0.31],
    [140, 0.22],
  ] as const
).map(([f, factor]) => [fahrenheit(f), factor] as const)
