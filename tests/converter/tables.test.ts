import { describe, expect, it } from "vitest"
import { usbLimits, usbPromises } from "../../src/converter/index.js"

/** Standards copied by hand: nominal and least voltage (V), current (A), power above which it is offered (W), pull-up (ohm). */
const ports: Readonly<Record<string, readonly (number | null)[]>> = {
  // USB 2.0, section 7.2.2: 4.40 V at a low-power port, one unit load; 4.75 V at a high-power port, five
  "usb2-unconfigured": [5, 4.4, 0.1, null, null],
  usb2: [5, 4.75, 0.5, null, null],
  // USB 3.0, section 11.4: 4.45 V, six unit loads of 150 mA
  usb3: [5, 4.45, 0.9, null, null],
  // Battery Charging 1.2, table 5-2
  "charging-port": [5, 4.75, 1.5, null, null],
  // Type-C: Rp to 5 V
  "type-c-default": [5, 4.75, 0.5, null, 56000],
  "type-c-1.5A": [5, 4.75, 1.5, null, 22000],
  "type-c-3A": [5, 4.75, 3, null, 10000],
  // Power Delivery 3.1: power rules, 5 % on the voltage
  "pd-5V": [5, 4.75, null, 0, null],
  "pd-9V": [9, 8.55, null, 15, null],
  "pd-15V": [15, 14.25, null, 27, null],
  "pd-20V": [20, 19, null, 45, null],
  "pd-28V": [28, 26.6, null, 100, null],
  "pd-36V": [36, 34.2, null, 140, null],
  "pd-48V": [48, 45.6, null, 180, null],
}

describe("tables of ports", () => {
  it("keeps every port to the standard's figures", () => {
    expect(Object.keys(usbPromises)).toEqual(Object.keys(ports))
    for (const [name, port] of Object.entries(usbPromises))
      expect([port.sourceVoltage, port.minSourceVoltage, port.current, port.abovePower, port.pullUp], name).toEqual(
        ports[name]?.map((x) => (x === null ? null : expect.closeTo(x, 9))),
      )
  })

  it("keeps the further limits", () => {
    expect(usbLimits).toEqual({
      unitLoad2: 0.1,
      unitLoads2: 5,
      unitLoad3: 0.15,
      unitLoads3: 6,
      portMaximum2: 5.25,
      deviceMinimum3: 4,
      chargingPortMaximum: 5,
      chargingDeviceMaximum: 1.5,
      dedicatedPortMinimum: 0.5,
      pullDown: 5100,
      pullUpVoltage: 5,
      cableDropSupply: 0.5,
      cableDropReturn: 0.25,
      cableCurrent: 3,
      cableDrop2: 0.125,
      conductor2: 0.0909,
      contactResistance2: 0.03,
      anyCable: 3,
      markedCable: 5,
    })
  })
})
