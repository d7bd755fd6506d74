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
