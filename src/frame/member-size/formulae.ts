// The working of memberSize: what the size chosen weighs, and what the limits ask for.
import { at, type Step } from "../../solver/index.js"
import { farthest } from "../condition.js"
import { END_CONSTANTS } from "../data-columns.js"
import { handlingCases } from "../data-loads.js"
import { densityOf } from "../material-choice.js"
import { sectionOf } from "../section.js"
import { GERE, SHIGLEY } from "../sources.js"
import { modulusOf } from "./kernel.js"
import type { Looked, MemberSize, MemberSizeTrace, Si } from "./types.js"

type SizeStep = Step<Si, MemberSize, MemberSizeTrace>
const chosenOf = ({ chosen }: Partial<MemberSizeTrace>) => chosen as Looked
const bent = 'equalText(member, "beam")'
const pushed = 'equalText(member, "column")'
const section = (trace: Partial<MemberSizeTrace>) => sectionOf(chosenOf(trace).size.section)

export const memberSizeFormulae = (): readonly SizeStep[] => [
  {
    symbol: "rho_c",
    kind: "density",
    meaning: "density of the size chosen, heavy end",
    given: (_, __, t) => densityOf(chosenOf(t).size.made),
  },
  { symbol: "A_c", kind: "area", meaning: "area that its weight corresponds to", given: (_, __, t) => section(t).weightArea as number },
  { symbol: "I_c", kind: "secondMoment", meaning: "its second moment", given: (_, __, t) => section(t).secondMoment },
  { symbol: "c_c", kind: "length", meaning: "its outermost fibre", given: (_, __, t) => section(t).fibre as number },
  { symbol: "d_c", meaning: "its depth", is: "2 * c_c" },
  { symbol: "m_c", meaning: "mass of the member", is: "rho_c * A_c * L" },
  {
    symbol: "y_c",
    kind: "length",
    meaning: "its maximum deflection, 0 for a column",
    given: (_, out) => (out.beam ? farthest(out.beam.maxDeflection) : 0),
    source: at(GERE, "chapter 9"),
  },
  { symbol: "M_c", kind: "moment", meaning: "its maximum moment, 0 for a column", given: (_, out) => out.beam?.maxMoment ?? 0 },
  { symbol: "S_c", kind: "pressure", meaning: "its strength, 0 for a column", given: (_, out) => out.beam?.strength ?? 0 },
  {
    symbol: "I_r",
    meaning: "second moment required: deflection goes down as it goes up",
    is: "I_c * y_c / y_r",
    when: `${bent} and has_deflectionLimit`,
  },
  { symbol: "W_r", meaning: "section modulus required", is: "n_r * abs(M_c) / S_c", when: bent, source: at(GERE, "section 5.6") },
  { symbol: "k_m", kind: "number", meaning: "factor of handling", given: (si) => handlingCases[si.handling].factor },
  {
    symbol: "C_e",
    kind: "number",
    meaning: "end constant of a column, 1 for a beam",
    given: (_, out) => out.column?.endConstant ?? 1,
    source: END_CONSTANTS,
  },
  {
    symbol: "E_c",
    kind: "pressure",
    meaning: "modulus of the size chosen, safe end",
    given: (si, _, t) => modulusOf(si, chosenOf(t).size),
  },
  {
    symbol: "I_r",
    meaning: "second moment required by Euler",
    is: "n_r * k_m * F * L^2 / (C_e * pi^2 * E_c)",
    when: pushed,
    source: at(SHIGLEY, "section 4-12"),
  },
]
