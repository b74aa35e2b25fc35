import { describe, expect, it } from 'vitest';
import { copperResistanceRatio } from '../../src/physics/dc-motor.js';
import {
  boxSurfaceM2,
  caseToAirKPerW,
  gearHeatW,
  settledCaseRiseK,
  settledWindingK,
  settledWindingRiseK,
  surfaceFromMassM2,
  type ThermalParameters,
  twoNode,
  twoNodeStep,
} from '../../src/physics/thermal.js';
import { solveElsewhere } from './second-opinion.js';
import { celsiusK, significant } from './units.js';

/** 5 + 10 K/W, 6 + 60 J/K, in air of 20 °C, where the listed resistance holds. */
const drive: ThermalParameters = {
  windingToCaseKPerW: 5,
  caseToAirKPerW: 10,
  windingHeatCapacityJPerK: 6,
  caseHeatCapacityJPerK: 60,
  airTemperatureK: celsiusK(20),
};
const copperPowerW = (currentA: number) => (windingK: number) =>
  currentA ** 2 * 4.8 * copperResistanceRatio(windingK);

describe('a winding of 4.8 Ω behind 15 K/W at constant current (closed form)', () => {
  it('rises 100.4128 K at 1 A with the feedback of copper, 72.0 K without', () => {
    const settledK = settledWindingK(drive, copperPowerW(1), 0)!;
    expect(significant(settledK - celsiusK(20), 7)).toBe(100.4128);
    expect(settledWindingRiseK(drive, 4.8, 0)).toBeCloseTo(72, 12);
  });

  it('finds no settled state above 1.879912 A', () => {
    // Without a highest temperature worth the name, so that only the feedback decides.
    expect(settledWindingK(drive, copperPowerW(1.879911), 0, 1e9)).not.toBeNull();
    expect(settledWindingK(drive, copperPowerW(1.879913), 0, 1e9)).toBeNull();
  });

  it('reaches 80 K above the air after 489.837 s at 1.5 A as one lump of 60 J/K', () => {
    // Winding and case joined without resistance; the power follows the temperature step by step.
    const node = twoNode({
      ...drive,
      windingToCaseKPerW: 1e-6,
      caseToAirKPerW: 15,
      windingHeatCapacityJPerK: 6,
      caseHeatCapacityJPerK: 54,
    });
    const rises = new Float64Array(2);
    const power = copperPowerW(1.5);
    const stepS = 0.001;
    let timeS = 0;
    while (rises[0]! < 80) {
      twoNodeStep(node, rises, power(celsiusK(20) + rises[0]!), 0, stepS);
      timeS += stepS;
    }
    expect(timeS).toBeCloseTo(489.837, 1);
  });

  it('is found by a second solver after the same time', () => {
    const slopes = (_: number, [rise]: number[]) => [
      (1.5 ** 2 * 4.8 * (1 + 0.00393 * rise!) - rise! / 15) / 60,
    ];
    expect(solveElsewhere(slopes, [0], 489.837)[0]).toBeCloseTo(80, 3);
  });
});

describe('winding and case as two lumps at 1 A with the feedback of copper', () => {
  it('stand 23.480 and 2.627 K above the air after 60 s, as two solvers say', () => {
    const node = twoNode(drive);
    const rises = new Float64Array(2);
    const power = copperPowerW(1);
    for (let step = 0; step < 60_000; step++) {
      twoNodeStep(node, rises, power(celsiusK(20) + rises[0]!), 0, 1e-3);
    }
    const slopes = (_: number, [winding, box]: number[]) => {
      const across = (winding! - box!) / 5;
      return [(4.8 * (1 + 0.00393 * winding!) - across) / 6, (across - box! / 10) / 60];
    };
    const elsewhere = solveElsewhere(slopes, [0, 0], 60);
    expect(significant(elsewhere[0]!, 5)).toBe(23.48);
    expect(significant(elsewhere[1]!, 4)).toBe(2.627);
    expect(rises[0]).toBeCloseTo(elsewhere[0]!, 3);
    expect(rises[1]).toBeCloseTo(elsewhere[1]!, 3);
  });

  it('settle at 100.413 and 66.942 K', () => {
    const windingK = settledWindingK(drive, copperPowerW(1), 0)!;
    const powerW = copperPowerW(1)(windingK);
    expect(significant(windingK - drive.airTemperatureK, 6)).toBe(100.413);
    expect(significant(settledCaseRiseK(drive, powerW, 0), 5)).toBe(66.942);
  });
});

describe('winding and case at constant powers', () => {
  const node = twoNode(drive);

  it('follow a second solver over any time, with heat in the gearing too', () => {
    for (const timeS of [0.5, 20, 700]) {
      const rises = Float64Array.of(40, 10);
      twoNodeStep(node, rises, 3, 1.2, timeS);
      const elsewhere = solveElsewhere(
        (_, [winding, box]) => {
          const across = (winding! - box!) / 5;
          return [(3 - across) / 6, (1.2 + across - box! / 10) / 60];
        },
        [40, 10],
        timeS,
      );
      expect(rises[0]).toBeCloseTo(elsewhere[0]!, 8);
      expect(rises[1]).toBeCloseTo(elsewhere[1]!, 8);
    }
  });

  it('reach in one long step what they reach in many short ones', () => {
    const once = Float64Array.of(5, 1);
    const often = Float64Array.of(5, 1);
    twoNodeStep(node, once, 2, 0.5, 300);
    for (let step = 0; step < 300; step++) twoNodeStep(node, often, 2, 0.5, 1);
    expect(often[0]).toBeCloseTo(once[0]!, 10);
    expect(often[1]).toBeCloseTo(once[1]!, 10);
  });

  it('stay where they are in no time, and settle after a very long one', () => {
    const rises = Float64Array.of(5, 1);
    twoNodeStep(node, rises, 2, 0.5, 0);
    expect([...rises]).toEqual([expect.closeTo(5, 12), expect.closeTo(1, 12)]);
    twoNodeStep(node, rises, 2, 0.5, 1e7);
    expect(rises[0]).toBeCloseTo(settledWindingRiseK(drive, 2, 0.5), 10);
    expect(rises[1]).toBeCloseTo(settledCaseRiseK(drive, 2, 0.5), 10);
  });

  it('keep all heat that has not left through the case', () => {
    // Energy in = energy stored + energy that left, with the loss integrated by short steps.
    const rises = new Float64Array(2);
    let lostJ = 0;
    for (let step = 0; step < 20_000; step++) {
      const before = rises[1]!;
      twoNodeStep(node, rises, 3, 1, 0.01);
      lostJ += ((before + rises[1]!) / 2 / 10) * 0.01;
    }
    expect(6 * rises[0]! + 60 * rises[1]! + lostJ).toBeCloseTo(4 * 200, 4);
  });
});

describe('a settled state', () => {
  it('is the air itself without any power', () => {
    expect(settledWindingK(drive, () => 0, 0)).toBe(drive.airTemperatureK);
  });

  it('counts the heat of the gearing through the case only', () => {
    expect(settledWindingK(drive, () => 0, 2)! - drive.airTemperatureK).toBeCloseTo(20, 6);
  });

  it('hotter than 400 °C does not count', () => {
    expect(settledWindingK(drive, () => 25.3, 0)).not.toBeNull();
    expect(settledWindingK(drive, () => 25.4, 0)).toBeNull();
  });
});

describe('the way from case to air', () => {
  it('of a plain drive of 60 g leads over 60 cm²', () => {
    expect(surfaceFromMassM2(0.06)).toBeCloseTo(0.006, 12);
    expect(surfaceFromMassM2(0.48)).toBeCloseTo(4 * 0.006, 12);
    expect(caseToAirKPerW(0.006, false)).toBeCloseTo(1 / 0.06, 12);
  });

  it('of a box leads over its six faces', () => {
    expect(boxSurfaceM2(0.04, 0.02, 0.04)).toBeCloseTo(2 * (0.0008 + 0.0016 + 0.0008), 12);
  });

  it('through foam is longer', () => {
    expect(caseToAirKPerW(0.006, true)).toBeGreaterThan(caseToAirKPerW(0.006, false));
  });

  it('through foam adds up over thin shells (conduction in a sphere, Incropera, section 3.3.2)', () => {
    const innerM = Math.sqrt(0.006 / (4 * Math.PI));
    const shells = 20_000;
    let sum = 0;
    for (let i = 0; i < shells; i++) {
      const radiusM = innerM + (0.02 * (i + 0.5)) / shells;
      sum += 0.02 / shells / (0.035 * 4 * Math.PI * radiusM ** 2);
    }
    const outside = 1 / (10 * 4 * Math.PI * (innerM + 0.02) ** 2);
    expect(caseToAirKPerW(0.006, true)).toBeCloseTo(sum + outside, 5);
  });
});

describe('heat in the gearing', () => {
  it('is what the motor turns into motion less what leaves', () => {
    // 1.1 V·s/rad × 2 rad/s × 0.7 A − 0.5 N·m × 2 rad/s
    expect(gearHeatW(1.1, 2, 0.7, 0.5)).toBeCloseTo(1.54 - 1, 12);
  });

  it('is the same on the way back, nothing at rest, and never cooling', () => {
    expect(gearHeatW(1.1, -2, -0.7, -0.5)).toBeCloseTo(0.54, 12);
    expect(gearHeatW(1.1, 0, 0.7, 0.5)).toBe(0);
    expect(gearHeatW(1.1, 2, 0.1, 0.5)).toBe(0);
  });
});
