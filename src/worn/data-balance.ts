import type { Source } from "../solver/index.js"

/** Limits of stability of a standing adult, degrees, and how the fore-aft cone splits. */
export const stabilityLimits = {
  /** Whole cone fore and aft, degrees; another source prints 12. */
  foreAft: 12.5,
  /** Whole cone side to side, degrees. */
  sideways: 16,
  /** Forward and backward parts of the fore-aft cone, degrees (from memory). */
  forward: 8,
  backward: 4.5,
} as const

export const stabilitySource: Source = {
  title: "Limits of stability of the standing adult",
  by: "after L. M. Nashner",
  where: "12.5° fore and aft in all, of which about 4.5° backwards (split from memory); 16° side to side",
}
/** Share of the foot's length that standing people use; falls with age. */
export const functionalBaseSource: Source = {
  title: "Functional base of support decreases with age, Journal of Gerontology 49(6), M258–M263",
  by: "M. B. King, J. O. Judge, L. Wolfson",
  edition: "1994",
  where: "about 60 % of the foot's length in young adults, less with age (from memory)",
}
export const proportionsSource: Source = {
  title:
    "Body segment parameters, New York University report 1166-03, as in Winter, Biomechanics and Motor Control of Human Movement, fig. 4.1",
  by: "R. Drillis, R. Contini",
  edition: "1966",
  where: "segment lengths as fractions of stature (from memory)",
}
/** Height of the standing body's centre of mass over stature (Davidovits 1975, as in Biomechanics and Exercise Physiology, 1991, 2.2.1). */
export const bodyCentreShare = 0.56
/** Drag area of a standing person, m² (S. F. Hoerner, Fluid-Dynamic Drag, 1965: 9 ft²; from memory). */
export const standingDragArea = 0.84
export const standingDragSource: Source = {
  title: "Fluid-Dynamic Drag",
  by: "S. F. Hoerner",
  edition: "1965",
  where: "chapter 3: standing person about 9 ft² of drag area (from memory)",
}

/** Rise of sway velocity with a rucksack of 16.0 or 20.5 kg, lowest and highest (Strube and others 2017, abstract; 20 cadets). */
export const heavyRigSway = { from: 16, to: 20.5, riseLow: 0.16, riseHigh: 0.52 } as const
