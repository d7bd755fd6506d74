import { at, type NoSolution, type Solver, solver, tried } from "../../solver/index.js"
import { GERE, SHIGLEY, SP_8007 } from "../sources.js"
import { memberSizeCautions, memberSizeFaults } from "./cautions.js"
import { memberSizeFields, memberSizeOutput } from "./fields.js"
import { memberSizeFormulae } from "./formulae.js"
import { kernel } from "./kernel.js"
import type { MemberSize, MemberSizeCaution, MemberSizeInput, MemberSizeRefusal, MemberSizeTrace, Si } from "./types.js"

export type {
  BentMember,
  MemberSize,
  MemberSizeCaution,
  MemberSizeInput,
  MemberSizeRefusal,
  PushedMember,
  RectangularSearch,
  RoundSearch,
  SizeLookedAt,
  StockSearch,
  StockSize,
} from "./types.js"

const solve = (si: Si, trace?: Partial<MemberSizeTrace>): MemberSize | NoSolution<MemberSizeRefusal> =>
  tried(kernel(si, trace), si, memberSize.input, kernel, memberSizeFaults)

/**
 * The lightest size that is stiff and strong enough, from a list of stock sizes or of whatever depth it takes, as a beam or a column;
 * with why every other size was passed over.
 *
 * Formula: every size is solved as `beam` or `column` does, with its own weight, at the weak, soft and heavy ends of its
 * material's ranges. It will do where its safety factor is not below `minSafetyFactor`, its deflection not above
 * `deflectionLimit`, the local buckling stress of a thin round wall not below `minSafetyFactor` times the bending stress, and
 * where it is not too hot. Required second moment I·y/y_r of a beam, n·k·F·L²/(C·π²·E) of a column by Euler; required section
 * modulus n·|M|/S. A depth that is not from a list is the smallest found in steps of 5 %, then narrowed down. Valid where `beam` and
 * `column` are.
 *
 * Refuses `no-candidate` where no size will do, with the one that comes nearest and by how much it falls short.
 *
 * **Inputs**
 * - `member`: member [by its type: beam or column]
 * - `search`: sizes [by its type: stock, round or rectangular]
 * - `minSafetyFactor`: safety factor wanted [n_r; 0.1 to 100; default 3]
 * - `deflectionLimit`: acceptable deflection [y_r; 0.01 mm to 50 m; optional]
 * - `materialTemperature`: temperature of the member [T; −40 to 200 °C; default 23 °C]
 * - `duration`: time the load stands [t_l; 0 to 1000 h; default 0]
 * - `countsOwnWeight`: own weight counts [yes or no; default yes]
 * - `handling`: handling [still, walking, sudden or stumble; default still]
 *
 * **Results**
 *
 * `name`: size chosen [text]; `depth`: depth along the load [d_c; m]; `mass`: mass of the member [m_c; kg];
 * `requiredSecondMoment`: second moment required [I_r; m⁴]; `requiredSectionModulus`: section modulus required [W_r;
 * m³]; `beam`: as a beam [group]; `column`: as a column [group]; `candidates`: sizes, lightest first [list].
 *
 * **Symbols of the working**
 *
 * rho_c: density of the size chosen, heavy end [kg/m³]; A_c: area that its weight corresponds to [m²]; I_c: its second
 * moment [m⁴]; c_c: its outermost fibre [m]; y_c: its maximum deflection, 0 for a column [m]; M_c: its maximum moment,
 * 0 for a column [N m]; S_c: its strength, 0 for a column [Pa]; E_c: modulus of the size chosen, safe end [Pa].
 *
 * **Sources**
 * - J. M. Gere, B. J. Goodno: Mechanics of Materials, 7th, 2009, chapters 5 and 9
 * - R. G. Budynas, J. K. Nisbett: Shigley's Mechanical Engineering Design, 10th, 2015, sections 4-11 to 4-13, table
 *   4-2 (not verified against the document)
 * - NASA: Buckling of thin-walled circular cylinders, SP-8007, 1968, section 4 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `no-candidate` where no size will do
 * @example
 * ```ts
 * import { memberSize } from 'alula/frame'
 * const spar = memberSize({
 *   member: { type: 'beam', length: '600 mm', support: 'cantilever', forces: [{ force: '20 N', position: '600 mm' }] },
 *   search: { type: 'round', modulus: '69 GPa', strength: '240 MPa', density: '2700 kg/m3' },
 *   deflectionLimit: '10 mm', countsOwnWeight: false,
 * })
 * spar.requiredSecondMoment // => 2.087e-9
 * spar.depth // => 0.014359
 * ```
 */
export const memberSize: Solver<MemberSizeInput, MemberSize, MemberSizeRefusal, MemberSizeCaution> = /* @__PURE__ */ solver<
  MemberSizeInput,
  MemberSize,
  MemberSizeRefusal,
  MemberSizeCaution,
  MemberSizeTrace
>("memberSize", "Which size is stiff and strong enough", solve, () => ({
  input: memberSizeFields(),
  output: memberSizeOutput(),
  example: {
    member: {
      type: "beam",
      length: "900 mm",
      support: "cantilever",
      forces: [{ force: "6 N", position: "850 mm" }],
      distributedLoads: [{ startLoad: "8 N/m", endLoad: "2 N/m", start: 0, end: "900 mm" }],
      moments: [{ moment: "0.5 N m", position: "400 mm" }],
    },
    search: {
      type: "stock",
      sizes: [
        { name: "aluminium tube 12 × 1", section: { outsideDiameter: "12 mm", wall: "1 mm" }, material: "aluminium-6061" },
        { name: "aluminium tube 20 × 1.5", section: { outsideDiameter: "20 mm", wall: "1.5 mm" }, material: "aluminium-6061" },
        {
          name: "ash lath 20 × 20",
          section: { width: "20 mm", height: "20 mm" },
          modulus: "9 GPa",
          strength: "40 MPa",
          density: "700 kg/m3",
        },
        { name: "pipe 3/4 in", section: { pipe: "3/4" }, material: "pvc-pipe" },
      ],
    },
    deflectionLimit: "50 mm",
    handling: "walking",
  },
  formulae: memberSizeFormulae(),
  sources: [at(GERE, "chapters 5 and 9"), at(SHIGLEY, "sections 4-11 to 4-13, table 4-2"), SP_8007],
  check: memberSizeFaults,
  cautions: memberSizeCautions,
}))
