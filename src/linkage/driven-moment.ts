/**
 * Moment a joint's drive must give while the joint turns one way (`sense` 1 with the moment, −1 against it, 0 at rest): what it
 * holds, and the friction of the loads on its pin, to which the drive's own force at its lever arm adds. 0 as lever arm leaves
 * that force out; an arm within the friction radius would jam.
 */
export function drivenMoment(hold: number, sense: number, frictionRadius: number, load: number, driveRadius: number): number {
  const against = hold + sense * frictionRadius * load
  return driveRadius === 0 ? against : against / (1 - (sense * Math.sign(against) * frictionRadius) / driveRadius)
}
