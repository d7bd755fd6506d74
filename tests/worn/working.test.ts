import {
  carriedLoad,
  contactSeverity,
  endurance,
  heatStress,
  liftLimit,
  metabolicRate,
  overturning,
  passage,
  reach,
  strapPressure,
  touchTemperature,
  wearSchedule,
  windLoad,
} from "../../src/worn/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

const arm = { region: "chest", armMass: 0.8, armLength: 0.9, swingSpeed: 3 }
const gust = { bodyMass: 62, rigMass: 8, dragArea: 1.15, forceHeight: 1.6, windSpeed: 6 }
const panel = { span: 1.2, chord: 0.4, windSpeed: 7, swingSpeed: 2 }

/** Inputs far from the solvers' own examples. */
const cases: readonly WorkingCase[] = [
  ["blow on a pad thick enough", any(contactSeverity), { ...arm, paddingStiffness: 2000, paddingThickness: 0.2, contactArea: 2e-3 }],
  ["blow on a pad used up", any(contactSeverity), { ...arm, paddingStiffness: 2000, paddingThickness: 0.004, peakDriveMoment: 20 }],
  ["pad used up past the limit", any(contactSeverity), { ...arm, swingSpeed: 20, paddingStiffness: 3e4, paddingThickness: 0.05 }],
  ["moving mass on the face", any(contactSeverity), { region: "face", movingMass: 2, movingSpeed: 1, approachSpeed: 1.6 }],
  ["gust from behind", any(overturning), { ...gust, windFrom: "behind", stagger: 0.3, weightOffset: -0.03 }],
  ["gust from the side", any(overturning), { ...gust, windFrom: "side", stanceWidth: 0.5 }],
  ["gust on an edge as given", any(overturning), { ...gust, edgeDistance: 0.2 }],
  ["trough in the wind", any(windLoad), { ...panel, shape: "trough" }],
  ["bowl in the wind", any(windLoad), { ...panel, shape: "bowl", elevation: -0.3 }],
  ["pole in the wind", any(windLoad), { ...panel, shape: "pole", chord: 0.03 }],
  ["own drag coefficient", any(windLoad), { ...panel, dragCoefficient: 1.05 }],
  ["long hold of the trunk", any(endurance), { joint: "trunk", effort: 0.1, holdDuration: 900 }],
  ["short hold by moments", any(endurance), { joint: "ankle", moment: 30, maxMoment: 60, holdDuration: 4 }],
  ["hold where Rohmert decides", any(endurance), { joint: "ankle", effort: 0.4, holdDuration: 150 }],
  [
    "in the sun, acclimatized",
    any(heatStress),
    {
      metabolicRate: 450,
      wetBulbTemperature: 22,
      globeTemperature: 40,
      ambientTemperature: 30,
      clothing: "work-clothes",
      acclimatized: true,
    },
  ],
  ["by a meter, too hot for any work", any(heatStress), { metabolicRate: 300, wbgt: 34, clothingAdjustment: 4 }],
  [
    "poor hold, turned, low",
    any(liftLimit),
    {
      rigMass: 9,
      startHeight: 0.2,
      endHeight: 1.5,
      startReach: 0.4,
      endReach: 0.6,
      startTurn: 0.5,
      endTurn: 1,
      liftRate: 4,
      duration: "long",
      coupling: "poor",
    },
  ],
  [
    "downhill on sand",
    any(metabolicRate),
    { bodyMass: 70, rigMass: 8, headMass: 1, handMass: 1, footMass: 0.5, walkingSpeed: 1.1, grade: -0.08, terrain: "loose-sand" },
  ],
  ["uphill in snow", any(metabolicRate), { bodyMass: 55, rigMass: 8, walkingSpeed: 0.8, grade: 0.1, terrain: "soft-snow", snowDepth: 0.1 }],
  ["standing", any(metabolicRate), { bodyMass: 55, rigMass: 8 }],
  ["behind the back, gripped", any(reach), { stature: 1.7, forward: -0.05, outward: 0.3, up: 1, handling: "grip", reserve: 0 }],
  ["across the body, high", any(reach), { stature: 1.7, forward: 0.3, outward: -0.2, up: 1.6 }],
  [
    "belt slips, rig hangs back",
    any(strapPressure),
    { rigMass: 12, centreOffset: 0.22, strapWidth: 0.05, beltTension: 10, lowerAnchor: 0.1 },
  ],
  [
    "wet wood, a minute",
    any(touchTemperature),
    { surfaceTemperature: 58, material: "wood", contactDuration: 60, measuredAmbientTemperature: 20, ambientTemperature: 35 },
  ],
  ["metal, a second", any(touchTemperature), { surfaceTemperature: 80, material: "metal", contactDuration: 1 }],
  [
    "rig in front",
    any(carriedLoad),
    { bodyMass: 80, stature: 1.8, rigMass: 10, poses: [{ name: "lantern", forward: 0.3, left: -0.1, up: 1.3 }], stepRate: 2.6 },
  ],
  [
    "back decides",
    any(wearSchedule),
    {
      bodyMass: 60,
      rigMass: 8,
      backMoment: 60,
      maxOxygenUptake: 45,
      plan: [
        { name: "stand", activity: "standing", duration: 1200 },
        { name: "rest", activity: "off", duration: 600 },
        { name: "sit", activity: "sitting", duration: 900 },
        { name: "stage", activity: "stage", duration: 300, walkingSpeed: 0.5 },
      ],
    },
  ],
  ["folded only, nothing packed", any(passage), { folded: { width: 0.9, forward: 0.5, backward: 0.2, height: 2.2 } }],
]

workingTests(cases)
