import {
  adiabaticConstant,
  adiabaticFactor,
  awgArea,
  awgDiameter,
  bladeFuse,
  bundledCurrent,
  type ContactCategory,
  conductor,
  contactCategories,
  contactKinds,
  fuseCoordination,
  fusingCurrent,
  harness,
  type LedFeed,
  ledRun,
  type Metal,
  metals,
  motorSwitching,
  type PulseShape,
  preeceConstants,
  pulseFraction,
  type Stranding,
  voltageDrop,
} from "../../src/wire/index.js"
import { type Check, type RowInputs, referenceRows, referenceTests } from "../helpers/references.js"
import { resettable, resettableWithout } from "./wire-resettable.js"

type Numbers = Readonly<Record<string, number>>
const numbers =
  (check: (inputs: Numbers) => Readonly<Record<string, unknown>>): Check =>
  (inputs) =>
    check(inputs as unknown as Numbers)
const idsOf = (pattern: RegExp) => referenceRows("wire").flatMap((r) => (pattern.test(r.id) && !r.left_out ? [r.id] : []))
const forEach = (pattern: RegExp, check: Check) => Object.fromEntries(idsOf(pattern).map((id) => [id, check]))

const perKft = (perMetre: number) => perMetre * 304.8
const cmil = (Math.PI / 4) * 25.4e-6 ** 2
const of = (text: unknown) => String(text).split(",").map(Number)

/** A fuse on AWG 20, for the figures that do not depend on the wire. */
const fuseOn = (change: Partial<typeof fuseCoordination.example>) =>
  fuseCoordination({ fuseRating: 10, current: 1, datasheetAmpacity: 20, awg: 20, ...change })

/** Section resistances in a chain from a stiff source, a load at the end of each. */
function feeder(voltage: number, sections: readonly number[], loads: readonly number[]): readonly number[] {
  const net = harness({
    sources: [{ name: "source", positive: "n0", negative: "0", sourceVoltage: voltage }],
    contacts: sections.map((resistance, i) => ({ name: `s${i}`, from: `n${i}`, to: `n${i + 1}`, resistance })),
    currentLoads: loads.map((current, i) => ({ name: `l${i}`, from: `n${i + 1}`, to: "0", current })),
  })
  return net.loads.map((l) => l.voltage)
}

/** Resistors by name between nodes on a stiff source between `p` and `0`. */
const resistors = (voltage: number, list: readonly (readonly [string, string, string, number])[]) =>
  harness({
    sources: [{ name: "source", positive: "p", negative: "0", sourceVoltage: voltage }],
    resistanceLoads: list.map(([name, from, to, resistance]) => ({ name, from, to, resistance })),
  })
const loadOf = (net: ReturnType<typeof harness>, name: string) => net.loads.find((l) => l.name === name) as (typeof net.loads)[number]
const given = (net: ReturnType<typeof harness>) => (net.sources[0] as { current: number }).current

/** An even run at 400 V, fed at one end or both, with the drop at a place. */
function evenRun(length: number, current: number, loop: number, both: boolean) {
  const end = (position: number): LedFeed => ({ position, sourceVoltage: 400 })
  const run = ledRun({ length, current, trackResistance: loop / 2, feeds: both ? [end(0), end(length)] : [end(0)] })
  const dropAt = (x: number) => 400 - (run.profile.find((p) => Math.abs(p.position - x) < 1e-9) as { voltage: number }).voltage
  return { run, dropAt }
}

const wireDiameter = numbers(({ awg_number }) => ({ diameter_in: awgDiameter(awg_number as number) / 0.0254 }))
const wireResistance20 = numbers(({ awg_number }) => ({
  resistance_ohm_per_kft: perKft(conductor({ awg: awg_number as number }).resistancePerLength20),
}))
const hotFuse = numbers(({ rated_current_A, voltage_drop_at_rated_V, cold_resistance_ohm }) => {
  const [rated, drop, cold] = [rated_current_A as number, voltage_drop_at_rated_V as number, cold_resistance_ohm as number]
  return { dissipation_W: fuseOn({ fuseRating: rated, current: rated, fuseResistance: cold, hotFactor: drop / rated / cold }).heat }
})
/** Diameter at which a wire fuses at the current: Preece's law turned round by repeated correction. */
const fusing =
  (constant: number): Check =>
  (inputs) => {
    const { current_A } = inputs as unknown as Numbers
    let d = 0.0254
    for (let k = 0; k < 20; k++) d *= ((current_A as number) / fusingCurrent(d, constant)) ** (2 / 3)
    return { diameter_in: d / 0.0254 }
  }
const faultArea = numbers(({ fault_current_A, time_s }) => {
  // the least area whose withstand reaches I²·t
  const integral = (fault_current_A as number) ** 2 * (time_s as number)
  const { wireWithstand } = fuseOn({ awg: null, area: 1e-6, initialConductorTemperature: 70 })
  return { area_mm2: Math.sqrt(integral / wireWithstand) }
})
const shortFactor: Check = (inputs, row) => {
  const { K, initial_degC, final_degC } = inputs as unknown as Numbers
  const metal: Metal = row.id.includes("-k-al-") ? "aluminium" : "copper"
  // the standard goes on from its rounded K; K itself is checked in rows of its own
  const part = adiabaticFactor(metal, initial_degC as number, final_degC as number) / adiabaticConstant(metals[metal])
  return { k_A_sqrt_s_per_mm2: (K as number) * part }
}
const heatConstant = numbers(({ Qc_J_per_K_mm3, beta_degC, rho20_ohm_mm }) => ({
  K_A_sqrt_s_per_mm2:
    adiabaticConstant({
      heatCapacity: (Qc_J_per_K_mm3 as number) * 1e9,
      beta: beta_degC as number,
      resistivity: (rho20_ohm_mm as number) * 1e-3,
    }) / 1e6,
}))
const copperConstant: Check = () => ({ K_A_sqrt_s_per_mm2: adiabaticConstant(metals.copper) / 1e6 })
const classResistance = (stranding: "class2" | "class5"): Check =>
  numbers(({ nominal_area_mm2 }) => {
    const perKm = (s: Stranding) => conductor({ area: `${nominal_area_mm2 as number} mm2`, stranding: s }).resistancePerLength20 * 1000
    return { plain_max_ohm_per_km: perKm(stranding), tinned_max_ohm_per_km: perKm(`${stranding}-tinned`) }
  })
const millivolts: Check = (_, row) => {
  const area = Number((row.id.match(/mvam-(.*)mm2/) as RegExpMatchArray)[1]?.replace("p", "."))
  const out = voltageDrop({ current: 1, length: 1, area: `${area} mm2`, stranding: "class2", conductorTemperature: 90 })
  return { drop_mV_per_A_per_m: out.drop * 1000 }
}
const slopeAt = (t: number) => {
  const at = (temperature: number) => conductor({ awg: 20, conductorTemperature: temperature }).resistance
  return (at(t + 1) - at(t)) / at(t)
}
const singleDrop = numbers(({ resistance_ohm_per_ft, run_length_ft, current_A }) => {
  const [volts] = feeder(100, [(resistance_ohm_per_ft as number) * (run_length_ft as number)], [current_A as number])
  return { drop_V: 100 - (volts as number) }
})
const nec75 = numbers(({ awg_number }) => {
  const at = (stranding: Stranding) =>
    perKft(conductor({ awg: awg_number as number, conductorTemperature: 75, stranding }).resistancePerLength)
  return { solid_ohm_per_kft: at("solid"), stranded7_ohm_per_kft: at("stranded") }
})

/** Preece's diameters for a list of currents; the constant is the row's own. */
const fusingList = (inputs: RowInputs, constant: number) =>
  (inputs.current_A as number[]).map((current_A) => fusing(constant)({ current_A } as never, {} as never).diameter_in)
const factorList: Check = (inputs, row) => {
  const metal: Metal = row.id.startsWith("k-aluminium") ? "aluminium" : "copper"
  const [from, to] = [inputs.initial_degC as number[], inputs.final_degC as number[]]
  const part = (i: number) => adiabaticFactor(metal, from[i] as number, to[i] as number) / adiabaticConstant(metals[metal])
  return { k_A_sqrt_s_per_mm2: from.map((_, i) => (inputs.K as number) * part(i)) }
}
/** Current that takes an area in circular mils from one temperature to another in a time, no heat lost. */
const shortTime = (area_cmil: number, time: number, from: number, to: number) =>
  (adiabaticFactor("copper", from, to) * area_cmil * cmil) / Math.sqrt(time)
/** Onderdonk's own constant, 33 in circular mils and common logarithms, in place of the standard's K. */
const onderdonk = (time: number, { area_cmil, ambient_degC, melt_degC }: RowInputs) =>
  (shortTime(area_cmil, time, ambient_degC, melt_degC) * Math.sqrt(1 / 33 / Math.LN10)) / cmil / adiabaticConstant(metals.copper)
const rerated = (current: number, loading: number, temperatureFactor: number) =>
  fuseOn({ current, utilisationLimit: loading, temperatureFactor }).minFuseRating

referenceTests(
  "wire",
  {
    ...resettable,
    "contact-categories-dc": (i) => {
      const rows = (i.categories as ContactCategory[]).map((name) => contactCategories[name])
      return { switching_capacity: rows.map((r) => r.switches), time_constant_ms: rows.map((r) => r.timeConstant * 1000) }
    },
    "field-energy-2mH-8A": (i) => {
      const { fieldEnergy } = motorSwitching({
        supplyVoltage: 12,
        runningCurrent: 1,
        stallCurrent: i.current_A,
        inductance: i.inductance_mH / 1000,
        switches: [{ type: "emergency-stop", contactResistance: 0, ratedCurrent: 10, ratedVoltage: 24 }],
        emergencyStop: "opens-supply",
        holdsUnpowered: true,
      })
      return { energy_mJ: (fieldEnergy as number) * 1000 }
    },
    "awg-odd-gauges-resistance": (inputs) => ({
      ohm_per_100ft: (inputs.awg as number[]).map((awg) => conductor({ awg, length: "100 ft" }).resistance),
    }),
    "fuse-blade-in-hot-case-numeric": (i) => ({
      required_rating_A: rerated(i.current_A, i.utilisationLimit, 1 - (i.percent_per_degC / 100) * (i.temperature_degC - 25)),
    }),
    "fuse-littelfuse-25C-70C": (i) => ({
      rating_25degC_A: rerated(i.current_A, i.utilisationLimit, i.factor_25degC),
      rating_70degC_A: rerated(i.current_A, i.utilisationLimit, i.factor_70degC),
    }),
    "fuse-littelfuse-90C-fast": (i) => ({ rating_A: rerated(i.current_A, i.utilisationLimit, i.factor_90degC) }),
    // the table's factor for 1 A is the loading; the rating that 1 A would need says what the 1 A fuse carries
    "fuse-nasa-derating-factors": (i) => ({
      example_current_A:
        i.example_rating_A /
        rerated(
          1,
          i.factors[i.ratings_A.indexOf(i.example_rating_A)],
          1 - (i.percent_per_degC_above_25 / 100) * (i.example_temperature_degC - 25),
        ),
    }),
    "fuse-small-glass-hot-drop": (i) => {
      const drops = (i.rating_A as number[]).map((rating, k) => {
        const [cold, hot] = [i.cold_ohm[k] as number, i.max_drop_V[k] as number]
        const at = (hotFactor: number) => fuseOn({ fuseRating: rating, current: rating, fuseResistance: cold, hotFactor }).drop
        return { cold: at(1), ratio: hot / at(1) }
      })
      return { cold_drop_V: drops.map((d) => d.cold), ratio: drops.map((d) => d.ratio) }
    },
    "icea-i2t-form-0p0297": (i) => ({ current_A: shortTime(i.area_cmil, i.time_s, i.start_degC, i.end_degC) }),
    ...forEach(/^k-(aluminium|copper)-/, factorList),
    "onderdonk-14awg-400A-time": (i) => ({ time_s: (onderdonk(1, i) / i.current_A) ** 2 }),
    "onderdonk-16awg-5s": (i) => ({ current_A: onderdonk(i.time_s, i) }),
    "preece-aluminium-250A-misprint": fusing(preeceConstants.aluminium),
    ...forEach(/^preece-copper-/, (i) => ({ diameter_in: fusingList(i, preeceConstants.copper) })),
    "preece-lead-and-tin-lead": (i) => ({ lead_in: fusingList(i, i.C_lead), tin_lead_in: fusingList(i, i.C_tin_lead) }),
    "short-time-small-copper-pvc": (i) => {
      const at = (time: number) =>
        (i.area_mm2 as number[]).map((a) => {
          const { wireWithstand } = fuseOn({ awg: null, area: a * 1e-6, initialConductorTemperature: 70 })
          return Math.sqrt(wireWithstand / time)
        })
      const [short, one, five] = i.time_s as [number, number, number]
      return { current_0p1s_A: at(short), current_1s_A: at(one), current_5s_A: at(five) }
    },
    "stranding-7x28": (i) => {
      const areas = (i.strands as number[]).map((n, k) => (n * awgArea(i.strand_awg[k])) / cmil)
      const nearest = (area: number) =>
        Array.from({ length: 20 }, (_, k) => 2 * k).reduce((a, b) =>
          Math.abs(Math.log(awgArea(b) / cmil / area)) < Math.abs(Math.log(awgArea(a) / cmil / area)) ? b : a,
        )
      return { area_cmil: areas, nearest_awg: areas.map(nearest) }
    },
    "usb-drop-1m-loop": (i) => ({
      drop_V: (i.awg as number[]).map(
        (awg) => voltageDrop({ current: i.current_A, length: i.length_m, awg, contacts: 4, contactResistance: i.contact_mohm / 1000 }).drop,
      ),
    }),
    "wire-14awg-foot-loss": (i) => ({ loss_W: voltageDrop({ current: i.current_A, length: "1 ft", awg: 14, conductors: 1 }).heat }),
    "connector-jst-xh": () => ({
      current_max_A: contactKinds["wire-to-board-2.5mm"].current,
      contact_max_after_test_mohm: contactKinds["wire-to-board-2.5mm"].resistance * 1000,
    }),
    "connector-nkk-a-toggle": () => ({ contact_max_mohm: contactKinds["subminiature-toggle"].resistance * 1000 }),
    "connector-nkk-m-toggle": () => ({
      silver_max_mohm: contactKinds["miniature-toggle-silver"].resistance * 1000,
      gold_max_mohm: contactKinds["miniature-toggle-gold"].resistance * 1000,
    }),
    ...forEach(/^fuse-501-/, hotFuse),
    "fuse-derate-safety-and-temperature": numbers(({ current_A, loading_factor, temperature_factor }) => ({
      rating_A: fuseOn({
        current: current_A as number,
        utilisationLimit: loading_factor as number,
        temperatureFactor: temperature_factor as number,
      }).minFuseRating,
    })),
    "fuse-icea-vs-iec-constant": copperConstant,
    "fuse-onderdonk-vs-iec-constant": copperConstant,
    "fuse-iso8820-blade-times": () => ({
      t110pct_min_s: bladeFuse.holds.shortest,
      t135pct_min_s: bladeFuse.long.shortest,
      t135pct_max_s: bladeFuse.long.longest,
      t200pct_min_s: bladeFuse.overload.shortest,
      t200pct_max_s: bladeFuse.overload.longest,
    }),
    "fuse-overload-and-short-rule": numbers(({ current_A }) => ({
      overload_fuse_A: fuseOn({ current: current_A as number, utilisationLimit: 1 / 1.25 }).minFuseRating,
      short_only_fuse_A: fuseOn({ current: current_A as number, utilisationLimit: 1 / 1.5 }).minFuseRating,
    })),
    ...forEach(/^fuse-preece-copper-/, fusing(preeceConstants.copper)),
    "fuse-preece-aluminium-50A": fusing(preeceConstants.aluminium),
    "fuse-preece-tin-10A": fusing(preeceConstants.tin),
    "fuse-pulse-i2t-fractions": () => ({
      n100000: pulseFraction(100000),
      n10000: pulseFraction(10000),
      n1000: pulseFraction(1000),
      n100: pulseFraction(100),
    }),
    "fuse-pulse-i2t-waveforms": numbers(({ peak_current_A, duration_s }) => {
      const integral = (inrushShape: PulseShape) =>
        fuseOn({ peakInrushCurrent: peak_current_A as number, inrushDuration: duration_s as number, inrushShape }).inrushIntegral
      return {
        square_A2s: integral("square"),
        half_sine_A2s: integral("half-sine"),
        triangle_A2s: integral("triangle"),
        parabola_A2s: integral("parabola"),
      }
    }),
    "harness-dc-distributor-four-loads": (inputs) => {
      const { source_V, conductor_ohm_per_km } = inputs as unknown as Numbers
      const places = of(inputs.positions_m)
      const sections = places.map((x, i) => (2 * (conductor_ohm_per_km as number) * (x - (places[i - 1] ?? 0))) / 1000)
      const [a, b, c, d] = feeder(source_V as number, sections, of(inputs.loads_A))
      return { v_500m_V: a, v_1000m_V: b, v_1600m_V: c, v_2000m_V: d }
    },
    "harness-dc-distributor-two-loads": numbers((i) => {
      const loop = (km: number) => 2 * (i.conductor_ohm_per_km as number) * km
      const sections = [loop(i.length_ab_km as number), loop(i.length_bc_km as number)]
      const [b, c] = feeder(i.source_V as number, sections, [i.load_b_A as number, i.load_c_A as number])
      return { v_b_V: b, v_c_V: c }
    }),
    "harness-ladder-three-section": numbers((i) => {
      const net = resistors(i.source_V as number, [
        ["r1", "p", "a", i.r1_series_ohm as number],
        ["r2", "a", "0", i.r2_shunt_ohm as number],
        ["r3", "a", "b", i.r3_series_ohm as number],
        ["r4", "b", "0", i.r4_shunt_ohm as number],
        ["r5", "b", "c", i.r5_series_ohm as number],
        ["r6", "c", "0", i.r6_end_ohm as number],
      ])
      return {
        total_ohm: (i.source_V as number) / given(net),
        source_current_A: given(net),
        i3_A: loadOf(net, "r3").current,
        i6_A: loadOf(net, "r6").current,
        v6_V: loadOf(net, "r6").voltage,
      }
    }),
    "harness-parallel-three-openstax": numbers(({ r1_ohm, r2_ohm, r3_ohm }) => {
      const [a, b, c] = [r1_ohm as number, r2_ohm as number, r3_ohm as number]
      const parallel = resistors(10, [
        ["a", "p", "0", a],
        ["b", "p", "0", b],
        ["c", "p", "0", c],
      ])
      const series = resistors(10, [
        ["a", "p", "m", a],
        ["b", "m", "n", b],
        ["c", "n", "0", c],
      ])
      return { parallel_ohm: 10 / given(parallel), series_ohm: 10 / given(series) }
    }),
    "harness-ring-two-loads": numbers((i) => {
      const loop = (m: number) => (2 * (i.conductor_ohm_per_100m as number) * m) / 100
      const net = harness({
        sources: [{ name: "source", positive: "a", negative: "0", sourceVoltage: i.source_V as number }],
        contacts: [
          { name: "ab", from: "a", to: "b", resistance: loop(i.ab_m as number) },
          { name: "bc", from: "b", to: "c", resistance: loop(i.bc_m as number) },
          { name: "ca", from: "c", to: "a", resistance: loop(i.ca_m as number) },
        ],
        currentLoads: [
          { name: "b", from: "b", to: "0", current: i.load_b_A as number },
          { name: "c", from: "c", to: "0", current: i.load_c_A as number },
        ],
      })
      return {
        i_ab_A: net.branches.find((b) => b.name === "ab")?.current,
        v_b_V: loadOf(net, "b").voltage,
        v_c_V: loadOf(net, "c").voltage,
      }
    }),
    "harness-series-parallel-openstax": numbers(({ source_V, r1_ohm, r2_ohm, r3_ohm }) => {
      const net = resistors(source_V as number, [
        ["r1", "p", "m", r1_ohm as number],
        ["r2", "m", "0", r2_ohm as number],
        ["r3", "m", "0", r3_ohm as number],
      ])
      return {
        rp_ohm: loadOf(net, "r2").voltage / given(net),
        rtot_ohm: (source_V as number) / given(net),
        current_A: given(net),
        drop_r1_V: loadOf(net, "r1").voltage,
      }
    }),
    "led-strip-ten-sections": numbers(({ sections, section_ohm, head_current_A }) => {
      const run = ledRun({
        length: sections as number,
        lightCount: sections as number,
        current: head_current_A as number,
        trackResistance: (section_ohm as number) / 2,
        feeds: [{ position: 0, sourceVoltage: 100 }],
      })
      const volts = [100, ...run.profile.map((p) => p.voltage)]
      const drop = (k: number) => (volts[k - 1] as number) - (volts[k] as number)
      return { first_section_V: drop(1), second_section_V: drop(2), last_section_V: drop(10), total_V: run.maxDrop }
    }),
    "led-strip-uniform-300m-losses": numbers((i) => {
      const [length, loop] = [i.length_m as number, i.loop_ohm_per_m as number]
      const current = (i.load_A_per_m as number) * length
      const [one, both] = [evenRun(length, current, loop, false), evenRun(length, current, loop, true)]
      return {
        one_end_drop_V: one.dropAt(i.position_m as number),
        one_end_loss_W: one.run.runHeat,
        both_ends_drop_V: both.dropAt(i.position_m as number),
        both_ends_loss_W: both.run.runHeat,
      }
    }),
    "led-strip-uniform-both-ends-200m": numbers((i) => {
      const length = i.length_m as number
      const { run } = evenRun(length, (i.load_A_per_m as number) * length, (2 * (i.conductor_ohm_per_km as number)) / 1000, true)
      return { drop_mid_V: run.minVoltagePosition === length / 2 ? run.maxDrop : null }
    }),
    "led-strip-uniform-one-end-200m": numbers((i) => {
      const length = i.length_m as number
      const { run, dropAt } = evenRun(length, (i.load_A_per_m as number) * length, (2 * (i.conductor_ohm_per_km as number)) / 1000, false)
      return { drop_150m_V: dropAt(i.position_m as number), drop_end_V: run.maxDrop }
    }),
    ...forEach(
      /^wire-700cmil-/,
      numbers(({ area_cmil }) => ({ current_A: bundledCurrent((area_cmil as number) * cmil) })),
    ),
    ...forEach(/^wire-adiabatic-K-/, heatConstant),
    ...forEach(/^wire-adiabatic-csa-/, faultArea),
    ...forEach(/^wire-adiabatic-k-/, shortFactor),
    "wire-awg-area-mm2": (inputs) =>
      Object.fromEntries(of(inputs.awg_numbers).map((n) => [`awg${n}_mm2`, conductor({ awg: n }).area * 1e6])),
    "wire-awg-standard-rounded-diameters": (inputs) =>
      Object.fromEntries(of(inputs.awg_numbers).map((n) => [`awg${n}_mil`, awgDiameter(n) / 25.4e-6])),
    "wire-awg-step-ratio": () => ({ ratio_1_step: awgDiameter(20) / awgDiameter(21), ratio_6_steps: awgDiameter(20) / awgDiameter(26) }),
    ...forEach(/^wire-awg\d+-diameter$/, wireDiameter),
    ...forEach(
      /^wire-awg\d+-circular-mils$/,
      numbers(({ awg_number }) => ({ area_cmil: awgArea(awg_number as number) / cmil })),
    ),
    ...forEach(/^wire-awg\d+-resistance-20degC$/, wireResistance20),
    "wire-awg22-rounded-vs-exact": numbers(({ diameter_mil }) => {
      const { area, resistancePerLength20 } = conductor({ area: (diameter_mil as number) ** 2 * cmil })
      return { area_cmil: area / cmil, resistance_ohm_per_kft_20degC: perKft(resistancePerLength20) }
    }),
    ...forEach(/^wire-bs7671-/, millivolts),
    "wire-copper-alpha-75degC-nec": () => ({ alpha75_per_K: slopeAt(75) }),
    ...forEach(
      /^wire-copper-alpha-ref-/,
      numbers(({ reference_temperature_degC }) => ({ alpha_per_K: slopeAt(reference_temperature_degC as number) })),
    ),
    ...forEach(/^wire-faa-table11-[78]-/, singleDrop),
    "wire-iacs-ohm-cmil-per-ft": () => ({ resistivity_ohm_cmil_per_ft: conductor({ area: cmil, length: "1 ft" }).resistance }),
    "wire-iacs-standard-copper": () => ({
      resistivity_ohm_m: metals.copper.resistivity,
      mass_resistivity_ohm_g_per_m2: metals.copper.resistivity * metals.copper.density * 1000,
      alpha20_per_K: metals.copper.coefficient,
    }),
    ...forEach(/^wire-iec60228-class2-/, classResistance("class2")),
    ...forEach(/^wire-iec60228-class5-/, classResistance("class5")),
    "wire-nec-75-to-20": numbers(({ r1_ohm_per_kft, t1_degC, t2_degC }) => {
      const at = (temperature: number) => conductor({ awg: 14, conductorTemperature: temperature }).resistance
      return { r2_ohm_per_kft: ((r1_ohm_per_kft as number) * at(t2_degC as number)) / at(t1_degC as number) }
    }),
    "wire-nec8-24v-run-example": numbers((i) => {
      const run = voltageDrop({
        current: i.current_A as number,
        length: (i.one_way_length_ft as number) * 0.3048,
        awg: 16,
        stranding: "stranded",
        conductorTemperature: 75,
        sourceVoltage: i.supply_V as number,
      })
      return { drop_V: run.drop, drop_percent: (run.dropShare as number) * 100 }
    }),
    ...forEach(/^wire-nec8-awg\d+-75degC$/, nec75),
  },
  {
    ...resettableWithout,
    "onderdonk-14awg-400A-time": { with_234_minus_Ta_s: "the row's own example of the misprinted sign" },
    "onderdonk-16awg-5s": { with_234_minus_Ta_A: "the row's own example of the misprinted sign" },
    "preece-aluminium-250A-misprint": { printed_in: "two digits exchanged in print; its neighbours confirm the other" },
    "wire-nec8-24v-run-example": { drop_percent: "the printed per cent is reckoned from the drop already rounded to 4.0 V" },
  },
)
