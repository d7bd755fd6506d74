import {
  carriedLoad,
  contactSeverity,
  endurance,
  heatStress,
  liftLimit,
  metabolicRate,
  passage,
  reach,
  strapPressure,
  tipOver,
  touchTemperature,
  wearSchedule,
  windLoad,
} from "../../src/worn/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

const arm = { region: "chest", armMass: 0.8, armLength: 0.9, swing: 3 }
const gust = { bodyMass: 62, rigMass: 8, dragArea: 1.15, forceHeight: 1.6, wind: 6 }
const panel = { span: 1.2, chord: 0.4, wind: 7, swing: 2 }

/** Inputs far from the solvers' own examples. */
const cases: readonly WorkingCase[] = [
  ["blow on a pad thick enough", any(contactSeverity), { ...arm, paddingStiffness: 2000, paddingThickness: 0.2, contactArea: 2e-3 }],
  ["blow on a pad used up", any(contactSeverity), { ...arm, paddingStiffness: 2000, paddingThickness: 0.004, driveMoment: 20 }],
  ["pad used up past the limit", any(contactSeverity), { ...arm, swing: 20, paddingStiffness: 3e4, paddingThickness: 0.05 }],
  ["moving mass on the face", any(contactSeverity), { region: "face", movingMass: 2, speed: 1, approach: 1.6 }],
  ["gust from behind", any(tipOver), { ...gust, from: "behind", stagger: 0.3, weightOffset: -0.03 }],
  ["gust from the side", any(tipOver), { ...gust, from: "side", stanceWidth: 0.5 }],
  ["gust on an edge as given", any(tipOver), { ...gust, edge: 0.2 }],
  ["trough in the wind", any(windLoad), { ...panel, shape: "trough" }],
  ["bowl in the wind", any(windLoad), { ...panel, shape: "bowl", raise: -0.3 }],
  ["pole in the wind", any(windLoad), { ...panel, shape: "pole", chord: 0.03 }],
  ["own drag coefficient", any(windLoad), { ...panel, dragCoefficient: 1.05 }],
  ["long hold of the trunk", any(endurance), { joint: "trunk", effort: 0.1, hold: 900 }],
  ["short hold by moments", any(endurance), { joint: "ankle", moment: 30, strength: 60, hold: 4 }],
  ["hold where Rohmert decides", any(endurance), { joint: "ankle", effort: 0.4, hold: 150 }],
  [
    "in the sun, acclimatized",
    any(heatStress),
    { rate: 450, wetBulb: 22, globe: 40, air: 30, clothing: "workClothes", acclimatized: true },
  ],
  ["by a meter, too hot for any work", any(heatStress), { rate: 300, wbgt: 34, adjustment: 4 }],
  [
    "poor hold, turned, low",
    any(liftLimit),
    {
      load: 9,
      startHeight: 0.2,
      endHeight: 1.5,
      startReach: 0.4,
      endReach: 0.6,
      startTurn: 0.5,
      endTurn: 1,
      rate: 4,
      duration: "long",
      coupling: "poor",
    },
  ],
  [
    "downhill on sand",
    any(metabolicRate),
    { bodyMass: 70, load: 8, headLoad: 1, handLoad: 1, footLoad: 0.5, speed: 1.1, grade: -0.08, terrain: "looseSand" },
  ],
  ["uphill in snow", any(metabolicRate), { bodyMass: 55, load: 8, speed: 0.8, grade: 0.1, terrain: "softSnow", snowDepth: 0.1 }],
  ["standing", any(metabolicRate), { bodyMass: 55, load: 8 }],
  ["behind the back, gripped", any(reach), { stature: 1.7, ahead: -0.05, aside: 0.3, height: 1, handling: "grip", reserve: 0 }],
  ["across the body, high", any(reach), { stature: 1.7, ahead: 0.3, aside: -0.2, height: 1.6 }],
  ["belt slips, rig hangs back", any(strapPressure), { load: 12, offset: 0.22, width: 0.05, beltTension: 10, lowerAnchor: 0.1 }],
  ["wet wood, a minute", any(touchTemperature), { surface: 58, material: "wood", contactTime: 60, measuredAt: 20, wornAt: 35 }],
  ["metal, a second", any(touchTemperature), { surface: 80, material: "metal", contactTime: 1 }],
  [
    "rig in front",
    any(carriedLoad),
    { bodyMass: 80, stature: 1.8, load: 10, poses: [{ name: "lantern", forward: 0.3, left: -0.1, height: 1.3 }], stepRate: 2.6 },
  ],
  [
    "back decides",
    any(wearSchedule),
    {
      bodyMass: 60,
      load: 8,
      moment: 60,
      capacity: 45,
      plan: [
        { name: "stand", activity: "standing", duration: 1200 },
        { name: "rest", activity: "off", duration: 600 },
        { name: "sit", activity: "sitting", duration: 900 },
        { name: "stage", activity: "stage", duration: 300, speed: 0.5 },
      ],
    },
  ],
  ["folded only, nothing packed", any(passage), { folded: { width: 0.9, front: 0.5, back: 0.2, height: 2.2 } }],
]

workingTests(cases)
