import { at, type NoSolution, type Solver, solver, tried } from "../../solver/index.js"
import { EN_1993_1, FOOTFALL, GERE, HIBBELER_STRUCTURES, MACAULAY, SP_8007, TIMOSHENKO_STABILITY, WITTRICK_WILLIAMS } from "../sources.js"
import { planeFrameCautions } from "./cautions.js"
import { planeFrameFaults } from "./check.js"
import { planeFrameFields, planeFrameOutput } from "./fields.js"
import { planeFrameFormulae } from "./formulae.js"
import { kernel } from "./kernel.js"
import type { PlaneFrame, PlaneFrameCaution, PlaneFrameInput, PlaneFrameRefusal, PlaneFrameTrace, Si } from "./types.js"

export { drawPlaneFrame } from "./picture.js"
export type {
  ClampedSupport,
  FrameJoint,
  FrameLoad,
  FrameMember,
  FrameNode,
  FrameSupport,
  LoadDirection,
  MemberForce,
  MemberForces,
  MemberMoment,
  MemberSpread,
  NodeLoad,
  NodeMove,
  PinnedSupport,
  PlaneFrame,
  PlaneFrameCaution,
  PlaneFrameInput,
  PlaneFrameRefusal,
  RollerSupport,
  SpringSupport,
  SupportForce,
} from "./types.js"

const solve = (si: Si, trace?: Partial<PlaneFrameTrace>): PlaneFrame | NoSolution<PlaneFrameRefusal> =>
  tried(kernel(si, trace), si, planeFrame.input, (one: Si) => kernel(one), planeFrameFaults)

/**
 * A plane frame of several members with rigid or pinned joints, such as a back plate, a mast and a cross-bar: what every member and
 * support carries, how far the nodes move, how near it is to breaking and to buckling.
 *
 * Formula: every member bends by E·I·v'''' = w and stretches by E·A·u'' = −q between its nodes; at every node the forces balance and
 * rigidly joined ends turn together; supports hold, or give by force over stiffness. Stress N/A + M·c/I with the largest of each over the
 * member, shear stress V·Q/(I·b). Buckling factor: the smallest factor on all loads at which the frame's stiffness, exact for
 * members under push or pull, is lost in its plane, every member counted at its largest push. Every load is multiplied by the factor
 * of `handling`; own weight counts unless `countsOwnWeight` is false. A material's stiffness is taken at either end of its range, in every
 * combination; what is told is the largest. Movements of single nodes and forces of supports are those of the softest. Valid for
 * slender members, elastic stresses and small movements, in the plane of the frame.
 *
 * Refuses `unstable` where the frame or a part of it can move freely.
 *
 * **Inputs**
 * - `nodes`: nodes [list of 2 to 40]
 * - `members`: members [list of 1 to 60]
 * - `supports`: supports [list of 1 to 40]
 * - `loads`: loads [list of 0 to 200; default none]
 * - `materialTemperature`: temperature of the member [T; −40 to 200 °C; default 23 °C]
 * - `duration`: time the load stands [t_l; 0 to 1000 h; default 0]
 * - `countsOwnWeight`: own weight counts [yes or no; default yes]
 * - `handling`: handling [still, walking, sudden or stumble; default still]
 *
 * **Results**
 *
 * `nodes`: nodes [list]; `supports`: supports [list]; `members`: members [list]; `safetyFactor`: safety factor,
 * minimum [n_s]; `weakest`: weakest member [text]; `stability`: stability in its plane [group]; `maxDisplacement`:
 * farthest movement of a node [u_x; m]; `weight`: own weight [W_o; N]; `loadFactor`: handling factor [k_m].
 *
 * **Symbols of the working**
 *
 * rho_o: densities of the members, heavy end, 0 where own weight is not counted [kg/m³]; A_o: areas that their weight
 * corresponds to [m²]; L_o: their lengths [m]; x_o: where their middles are [m]; W_i: their weights [N]; R_h: what the
 * supports exert to the right [N]; R_v: what they exert upwards [N]; R_t: what they turn with [N m]; x_r: where they
 * are, to the right [m]; y_r: where they are, upwards [m]; F_h: loads to the right [N]; F_v: loads upwards [N]; F_t:
 * moments of the loads about the origin [N m]; F_s: size of loads and reactions [N]; M_s: size of their moments [N m];
 * n_k: members that a safety factor is told of; N_m: their largest pull or push [N]; M_m: their largest moment [N m];
 * V_m: their largest shear force [N]; A_m: their areas [m²]; I_m: their second moments [m⁴]; c_m: their outermost
 * fibres [m]; Q_m: their first moments, 0 where not known [m³]; b_m: their widths at the neutral axis, 1 m where not
 * known [m]; S_m: their strengths, safe end [Pa]; S_v: their shear strengths, safe end [Pa]; sigma_m: their stresses,
 * the largest of pull or push and of bending added [Pa]; tau_m: their shear stresses [Pa]; u_h: movements of the nodes
 * to the right [m]; u_v: movements of the nodes upwards [m].
 *
 * **Sources**
 * - J. M. Gere, B. J. Goodno: Mechanics of Materials, 7th, 2009, chapters 4, 5 and 9
 * - R. C. Hibbeler: Structural Analysis, 8th, 2012, chapters 11 and 16 (frames) (not verified against the document)
 * - W. H. Macaulay: Note on the deflection of beams, Messenger of Mathematics 48, 1919, pages 129-130 (not verified
 *   against the document)
 * - S. P. Timoshenko, J. M. Gere: Theory of Elastic Stability, 2nd, 1961, chapter 2 (bars and frames) (not verified
 *   against the document)
 * - W. H. Wittrick, F. W. Williams: A general algorithm for computing natural frequencies of elastic structures,
 *   Quart. J. Mech. Appl. Math. 24, 1971, pages 263-284 (not verified against the document)
 * - NASA: Buckling of thin-walled circular cylinders, SP-8007, 1968, section 4 (not verified against the document)
 * - CEN: EN 1993-1-1, Design of steel structures: general rules, 2005, clause 5.2.1 (not verified against the
 *   document)
 * - M. R. Willford, P. Young: A design guide for footfall induced vibration of structures, CCIP-016, 2006, table 4.3
 *   (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-hot` above a material's temperature limit, `unstable` where nothing keeps it still
 * @example
 * ```ts
 * import { planeFrame } from 'alula/frame'
 * const steel = { section: { secondMoment: '1000 mm4', area: '50 mm2', fibre: '5 mm' }, modulus: '200 GPa', strength: '235 MPa' } as const
 * const portal = planeFrame({
 *   nodes: [{ name: 'A', x: 0, y: 0 }, { name: 'B', x: 0, y: '1 m' }, { name: 'C', x: '1 m', y: '1 m' }, { name: 'D', x: '1 m', y: 0 }],
 *   members: [{ name: 'left', from: 'A', to: 'B', ...steel }, { name: 'top', from: 'B', to: 'C', ...steel }, { name: 'right', from: 'C', to: 'D', ...steel }],
 *   supports: [{ type: 'pinned', node: 'A' }, { type: 'pinned', node: 'D' }],
 *   loads: [{ type: 'node', node: 'B', right: '20 N' }], countsOwnWeight: false,
 * })
 * portal.supports[0].up // => -20
 * portal.weakest // => 'left'
 * ```
 */
export const planeFrame: Solver<PlaneFrameInput, PlaneFrame, PlaneFrameRefusal, PlaneFrameCaution> = /* @__PURE__ */ solver<
  PlaneFrameInput,
  PlaneFrame,
  PlaneFrameRefusal,
  PlaneFrameCaution,
  PlaneFrameTrace
>("planeFrame", "What the members of a frame carry and whether it holds", solve, () => ({
  input: planeFrameFields(),
  output: planeFrameOutput(),
  example: {
    nodes: [
      { name: "hip", x: 0, y: 0 },
      { name: "shoulder", x: 0, y: "450 mm" },
      { name: "head", x: 0, y: "750 mm" },
      { name: "wing", x: "600 mm", y: "750 mm" },
    ],
    members: [
      { name: "back plate", from: "hip", to: "shoulder", section: { width: "120 mm", height: "12 mm" }, material: "plywood" },
      { name: "mast", from: "shoulder", to: "head", section: { outsideDiameter: "20 mm", wall: "1.5 mm" }, material: "aluminium-6061" },
      { name: "cross-bar", from: "head", to: "wing", section: { outsideDiameter: "16 mm", wall: "1 mm" }, material: "aluminium-6061" },
      {
        name: "stay",
        from: "shoulder",
        to: "wing",
        startJoint: "pinned",
        endJoint: "pinned",
        section: { outsideDiameter: "10 mm", wall: "1 mm" },
        material: "aluminium-6061",
      },
    ],
    supports: [
      { type: "pinned", node: "hip" },
      { type: "spring", node: "shoulder", sidewaysStiffness: "8 N/mm", turningStiffness: "60 N m/rad" },
    ],
    loads: [
      { type: "node", node: "wing", up: "-12 N", right: "2 N", moment: "0.3 N m" },
      { type: "spread", member: "cross-bar", startLoad: "18 N/m", endLoad: "9 N/m", start: 0, end: "200 mm" },
      { type: "force", member: "mast", force: "4 N", position: "50 mm", direction: "across" },
      { type: "moment", member: "back plate", moment: "0.5 N m", position: "60 mm" },
    ],
    handling: "walking",
  },
  formulae: planeFrameFormulae(),
  sources: [
    at(GERE, "chapters 4, 5 and 9"),
    at(HIBBELER_STRUCTURES, "chapters 11 and 16 (frames)"),
    MACAULAY,
    TIMOSHENKO_STABILITY,
    WITTRICK_WILLIAMS,
    SP_8007,
    EN_1993_1,
    FOOTFALL,
  ],
  check: planeFrameFaults,
  cautions: planeFrameCautions,
}))
