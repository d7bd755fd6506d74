import { at, type Source } from "../solver/index.js"

const nortonMachinery: Source = {
  title: "Design of Machinery",
  by: "R. L. Norton (McGraw-Hill)",
  edition: "5th ed., 2012",
  where: "chapters 2 to 8",
  verified: "not-seen",
}
const hibbelerStatics: Source = {
  title: "Engineering Mechanics: Statics",
  by: "R. C. Hibbeler (Pearson)",
  edition: "14th ed., 2016",
  verified: "not-seen",
}
const shigley: Source = {
  title: "Shigley's Mechanical Engineering Design",
  by: "R. G. Budynas, J. K. Nisbett (McGraw-Hill)",
  edition: "10th ed., 2015",
  verified: "not-seen",
}
const iso12100: Source = {
  title: "ISO 12100, Safety of machinery: general principles for design, risk assessment and risk reduction",
  by: "ISO",
  edition: "2010",
  verified: "not-seen",
}

/** Textbook of the four-bar and slider-crank relations. */
export const norton: Source = nortonMachinery
export const nortonGrashof: Source = /* @__PURE__ */ at(nortonMachinery, "section 2.13 (Grashof condition, change points)")
export const nortonTransmission: Source = /* @__PURE__ */ at(nortonMachinery, "section 3.3 (transmission angle, toggle positions)")
export const nortonLoop: Source = /* @__PURE__ */ at(nortonMachinery, "sections 4.5, 6.7 and 7.3 (vector loop)")
export const nortonSlider: Source = /* @__PURE__ */ at(nortonMachinery, "sections 4.6, 6.7 and 7.3 (slider-crank)")

export const nortonSynthesis: Source = /* @__PURE__ */ at(
  nortonMachinery,
  "chapter 5 (two- and three-position motion generation, branch and order)",
)

export const virtualWork: Source = /* @__PURE__ */ at(hibbelerStatics, "chapter 11 (virtual work)")
export const equilibrium: Source = /* @__PURE__ */ at(hibbelerStatics, "chapter 5 (equilibrium of a rigid body)")
export const scissorProblem: Source = /* @__PURE__ */ at(hibbelerStatics, "problem 11-2 (two-stage scissor by virtual work)")
export const journalFriction: Source = /* @__PURE__ */ at(hibbelerStatics, "section 8.7 (journal bearings)")

export const springRate: Source = /* @__PURE__ */ at(shigley, "chapter 10 (rate of a helical spring)")
export const selfLocking: Source = /* @__PURE__ */ at(shigley, "section 8-2 (power screws, self-locking)")

export const powerLoss: Source = /* @__PURE__ */ at(iso12100, "clause 6.2.11.5 (interruption of power supply)")
export const storedEnergySource: Source = /* @__PURE__ */ at(iso12100, "clause 6.3.5.4 (isolation and energy dissipation)")
export const reachSource: Source = /* @__PURE__ */ at(iso12100, "clause 6.2.2 (shape, reach and mass of moving parts)")

/** Its scope, as its publishers print it: crushing alone, neither impact nor shearing nor drawing-in. */
export const crushingOnly: Source = {
  title: "ISO 13854, Safety of machinery: minimum gaps to avoid crushing of parts of the human body",
  by: "ISO",
  edition: "2017",
  where: "clause 1 (scope)",
  verified: "seen",
  read: "2026-11-28",
}
/** Manual reduced speed; the 2011 edition had it in clause 5.6. */
export const reducedSpeed: Source = {
  title: "ISO 10218-1, Robotics: safety requirements, part 1: industrial robots",
  by: "ISO",
  edition: "2025 (250 mm/s as in 2011, clause 5.6)",
  where: "reduced-speed control",
  verified: "not-seen",
}

/** Textbook of the constraint method in point coordinates. */
export const jalon: Source = {
  title: "Kinematic and Dynamic Simulation of Multibody Systems",
  by: "J. García de Jalón, E. Bayo (Springer)",
  edition: "1994",
  where: "chapters 2 and 3 (natural coordinates; position, velocity and acceleration problems)",
  verified: "not-seen",
}
export const convexHull: Source = {
  title: "Another efficient algorithm for convex hulls in two dimensions",
  by: "A. M. Andrew (Information Processing Letters 9)",
  edition: "1979",
  where: "pages 216–219",
  verified: "not-seen",
}
export const marchingSquares: Source = {
  title: "Marching cubes: a high resolution 3D surface construction algorithm",
  by: "W. E. Lorensen, H. E. Cline (Computer Graphics 21)",
  edition: "1987",
  where: "pages 163–169, applied in the plane",
  verified: "not-seen",
}
/** The equation of three-point synthesis. */
export const freudensteinEquation: Source = {
  title: "Approximate synthesis of four-bar linkages",
  by: "F. Freudenstein (Trans. ASME 77)",
  edition: "1955",
  where: "pages 853–861, displacement equation, angles there measured the other way round",
  verified: "not-seen",
}
export const camLaws: Source = /* @__PURE__ */ at(
  nortonMachinery,
  "chapter 8 (cam laws, pressure angle, radius of curvature, follower jump)",
)
export const snapOver: Source = /* @__PURE__ */ at(nortonMachinery, "section 3.3 (toggle positions)")
/** Follower overhanging its guide. */
export const guideBinding: Source = {
  title: "Cam Design Handbook",
  by: "H. A. Rothbart (McGraw-Hill)",
  edition: "2004",
  where: "forces on a translating roller follower in its guide",
  verified: "not-seen",
}
/** Turn of a vector about an axis. */
export const rotationFormula: Source = {
  title: "Rotation of a vector about a unit axis (Rodrigues' formula)",
  by: "O. Rodrigues (Journal de mathématiques pures et appliquées 5)",
  edition: "1840",
  where: "pages 380–440",
  verified: "not-seen",
}
export const exactBalance: Source = {
  title: "The spring-and-lever balancing mechanism",
  by: "M. J. French, M. B. Widden (Proc. IMechE Part C 214)",
  edition: "2000",
  where: "pages 501–508 (condition for exact balance)",
  verified: "not-seen",
}
export const branchAndBoundSource: Source = {
  title: "An automatic method of solving discrete programming problems",
  by: "A. H. Land, A. G. Doig (Econometrica 28)",
  edition: "1960",
  where: "pages 497–520 (branch and bound)",
  verified: "not-seen",
}
export const gravitySource: Source = {
  title: "Guide for the use of the International System of Units, SP 811",
  by: "NIST",
  edition: "2008",
  where: "appendix B.8 (standard gravity)",
  verified: "not-seen",
}
/** A gas held at one volume: its pressure goes with its absolute temperature. */
export const gasLaw: Source = { title: "ideal gas at constant volume: 1/293 per kelvin at 20 °C", verified: "practice" }
export const cosineRule: Source = { title: "cosine rule", verified: "practice" }
export const byMoments: Source = { title: "balance of moments about the vane's pivot", verified: "practice" }
/** What follows from the answer itself, with no further fact. */
export const ownResult: Source = { title: "follows from the figures of this answer", verified: "practice" }

/** How much the force of a usual gas spring rises over its stroke. */
export const gasSpringProgression: Source = {
  title: "Gas spring and the difference from an ordinary spring",
  edition: "read 2026",
  where: "progression 1.2 to 1.4",
  verified: "seen",
}
/** Where on their stroke gas springs are measured, and their friction. */
export const gasSpringReadings: Source = {
  title: "Explanation of gas strut force",
  edition: "read 2026",
  where: "method of measurement: F1 and F2 extending, F3 and F4 compressing",
  verified: "seen",
}
