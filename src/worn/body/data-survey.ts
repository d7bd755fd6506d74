/** Statistics of one sex: mean, standard deviation, 5th, 50th, 95th percentile, correlation with stature. */
export type SurveyStatistics = readonly [mean: number, sd: number, p5: number, p50: number, p95: number, withStature: number]

/** One dimension of the survey, in mm (body mass in kg). */
export interface SurveyRow {
  readonly label: string
  readonly female: SurveyStatistics
  readonly male: SurveyStatistics
}

/** How many were measured. */
export const surveyCount = { female: 1986, male: 4082 } as const

/** The survey's dimensions: 1986 women and 4082 men of the US Army of 2012, fitter than the public. */
export const survey = {
  bodyMass: {
    label: "body mass",
    female: [67.76, 10.98, 51.3, 66.8, 87.1, 0.533],
    male: [85.52, 14.22, 64.4, 84.6, 110.7, 0.469],
  },
  stature: {
    label: "stature",
    female: [1628.47, 64.2, 1525, 1626, 1740, 1],
    male: [1756.21, 68.55, 1648, 1755, 1870, 1],
  },
  "shoulder-height": {
    label: "shoulder (acromial) height",
    female: [1335.1, 58.08, 1242, 1332, 1433.8, 0.972],
    male: [1440.74, 63.29, 1339, 1439, 1546, 0.967],
  },
  "axilla-height": {
    label: "armpit (axilla) height",
    female: [1239.03, 55.8, 1149, 1236, 1333, 0.968],
    male: [1329.08, 59.52, 1234, 1328, 1427, 0.969],
  },
  "suprasternale-height": {
    label: "suprasternale height",
    female: [1329.69, 57.18, 1236.2, 1326.5, 1427.8, 0.981],
    male: [1438.59, 61.25, 1341, 1437, 1540, 0.981],
  },
  "neck-height": {
    label: "base of the neck (C7) height",
    female: [1395.67, 59.52, 1300.2, 1393, 1498, 0.984],
    male: [1517.3, 63.28, 1416, 1517, 1622.9, 0.984],
  },
  "tenth-rib-height": {
    label: "tenth rib height",
    female: [1056.26, 50.01, 976, 1054, 1140, 0.939],
    male: [1120.67, 53.61, 1034, 1119, 1211, 0.925],
  },
  "iliac-crest-height": {
    label: "iliac crest (hip belt) height",
    female: [995.73, 49.69, 918, 993, 1079.8, 0.915],
    male: [1061.63, 52.02, 977, 1061, 1148, 0.909],
  },
  "trochanter-height": {
    label: "trochanter height",
    female: [845.35, 44.68, 774.2, 844, 919, 0.858],
    male: [900.93, 49.17, 824, 899, 985, 0.85],
  },
  "wrist-height": {
    label: "wrist height",
    female: [794.19, 38.19, 732.2, 794, 860, 0.854],
    male: [847.51, 41.66, 780, 847, 917, 0.856],
  },
  "biacromial-breadth": {
    label: "shoulder breadth, bone to bone (biacromial)",
    female: [365.35, 18.3, 335, 365, 396, 0.566],
    male: [415.68, 19.16, 384, 415, 447, 0.532],
  },
  "bideltoid-breadth": {
    label: "shoulder breadth, over the muscles (bideltoid)",
    female: [450.32, 28.69, 406, 450, 499, 0.359],
    male: [510.42, 32.51, 459, 509, 567, 0.313],
  },
  "chest-breadth": {
    label: "chest breadth",
    female: [269.33, 18.58, 241, 268, 302, 0.346],
    male: [289.44, 18.28, 261, 289, 320, 0.342],
  },
  "chest-depth": {
    label: "chest depth",
    female: [247.4, 27.34, 205, 245, 295.8, 0.23],
    male: [253.85, 26.25, 211, 253, 298, 0.22],
  },
  "hip-breadth": {
    label: "hip breadth",
    female: [353.84, 26.67, 311, 353, 400, 0.387],
    male: [345.73, 24.17, 308, 344, 387, 0.383],
  },
  "across-back": {
    label: "across the back (interscye)",
    female: [373.36, 29.83, 326.2, 373, 423, 0.248],
    male: [430.85, 35.25, 374, 430, 491, 0.184],
  },
  "waist-back-length": {
    label: "waist back length",
    female: [425.4, 26.39, 384, 424.5, 470, 0.504],
    male: [477.61, 27.73, 433, 477, 524, 0.535],
  },
  "chest-circumference": {
    label: "chest circumference",
    female: [946.86, 82.7, 824.2, 940, 1094, 0.26],
    male: [1058.71, 87.44, 922, 1056, 1207, 0.247],
  },
  "waist-circumference": {
    label: "waist circumference",
    female: [860.91, 99.93, 710, 852, 1040, 0.229],
    male: [940.58, 111.71, 768, 937, 1130.9, 0.208],
  },
  "head-breadth": {
    label: "head breadth",
    female: [147.77, 5.19, 140, 147, 156, 0.156],
    male: [154.33, 5.53, 146, 154, 163, 0.075],
  },
  "head-length": {
    label: "head length",
    female: [189.82, 7.45, 178, 190, 202, 0.358],
    male: [199.5, 7.02, 188, 200, 211, 0.369],
  },
  "head-circumference": {
    label: "head circumference",
    female: [561.12, 19.36, 532, 560, 597, 0.315],
    male: [574.37, 16.05, 548, 574, 601, 0.343],
  },
  span: {
    label: "span",
    female: [1660.29, 82.97, 1529, 1657, 1802.8, 0.819],
    male: [1814.15, 84.63, 1680, 1812, 1956.9, 0.823],
  },
  "thumbtip-reach": {
    label: "reach, back to thumbtip",
    female: [744.01, 42.75, 674.2, 742, 816, 0.671],
    male: [811.93, 43.68, 742, 811, 886, 0.691],
  },
  "overhead-reach-sitting": {
    label: "overhead fingertip reach, sitting",
    female: [1309.74, 62.41, 1207, 1309, 1413, 0.81],
    male: [1426.68, 67.71, 1316, 1426, 1540, 0.792],
  },
  "foot-length": {
    label: "foot length",
    female: [246.29, 12.44, 226, 246, 267.8, 0.722],
    male: [271.18, 13.1, 250, 271, 293, 0.718],
  },
  "foot-breadth": {
    label: "foot breadth",
    female: [92.71, 4.78, 85, 93, 101, 0.412],
    male: [101.86, 5.23, 94, 102, 111, 0.45],
  },
  "ball-of-foot-length": {
    label: "ball of foot length",
    female: [182.05, 9.64, 167, 182, 198, 0.688],
    male: [200.94, 10.47, 184, 201, 218, 0.666],
  },
} as const satisfies Readonly<Record<string, SurveyRow>>

/** Name of a dimension. */
export type SurveyDimension = keyof typeof survey
