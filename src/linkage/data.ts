import type { Source } from "../solver/index.js"

/** Textbook of the four-bar and slider-crank relations. */
export const norton: Source = {
  title: "Design of Machinery",
  by: "R. L. Norton (McGraw-Hill)",
  edition: "5th ed., 2012",
  where: "chapters 2, 4, 6 and 7 (from memory; relations re-derived)",
}

/** Textbook of the constraint method in point coordinates. */
export const jalon: Source = {
  title: "Kinematic and Dynamic Simulation of Multibody Systems",
  by: "J. García de Jalón, E. Bayo (Springer)",
  edition: "1994",
  where: "chapters 2 and 3 (natural coordinates, position, velocity and acceleration problems; from memory, equations re-derived)",
}

/** Sources of the scissor's statics. */
export const scissorSources: readonly Source[] = [
  {
    title: "Engineering Mechanics: Statics",
    by: "R. C. Hibbeler",
    edition: "14th ed., 2016",
    where: "problem 11-2 (two-stage scissor by virtual work)",
  },
  { title: "ISO 80000-3, Quantities and units: Space and time", by: "ISO", edition: "2019", where: "standard gravity (from memory)" },
]

/** The equation of three-point synthesis. */
export const freudensteinSource: Source = {
  title: "Approximate synthesis of four-bar linkages, Trans. ASME 77, 853–861",
  by: "F. Freudenstein",
  edition: "1955",
  where: "displacement equation, angles there measured the other way round (title and pages looked up; equation re-derived)",
}
