/** Share of the foot's length that young standing adults use (King, Judge and Wolfson 1994). */
export const usableFoot = 0.6

/** Factor against overturning that is common practice. */
export const overturnFactor = 1.5

/** Height of the standing body's centre of mass over stature (Davidovits 1975, as in Biomechanics and Exercise Physiology, 1991, 2.2.1). */
export const bodyCentreShare = 0.56

/** Drag area of a standing person, m² (S. F. Hoerner, Fluid-Dynamic Drag, 1965: 9 ft²; not verified). */
export const standingDragArea = 0.84

/** Rise of sway velocity with a rucksack of 16.0 or 20.5 kg, lowest and highest (Strube and others 2017, abstract; 20 cadets). */
export const heavyRigSway = { from: 16, to: 20.5, riseLow: 0.16, riseHigh: 0.52 } as const
