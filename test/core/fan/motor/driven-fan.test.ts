import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fanCurve, fanPower, fanTotalPressure, scaleFan } from '../../../../core/fan/fan-curve.ts';
import type { FanCurve } from '../../../../core/fan/fan-curve.ts';
import {
  drivenLargestFlow,
  drivenSpeed,
  drivenSpeedAt,
  drivenTotalPressure,
} from '../../../../core/fan/motor/driven-fan.ts';
import type { DrivenFan } from '../../../../core/fan/motor/driven-fan.ts';
import { brushlessMotor } from '../../../../core/fan/motor/brushless.ts';
import type { MotorModel } from '../../../../core/fan/motor/motor-model.ts';
import { brentRoot } from '../../../../core/fan/root.ts';
import { AXIAL, MOTORS, ON_BATTERY, RADIAL } from './motors.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A curve made to suit a motor: its power at its rated speed is a share of what the motor gives at its best. */
function suited(curve: FanCurve, motor: MotorModel, load: number): DrivenFan {
  const powers = curve.input.points.map((point) => point.power_W!);
  const speedRatio = motor.bestSpeed_rpm / curve.input.ratedSpeed_rpm!;
  const most = Math.max(...powers) * speedRatio ** 3;
  const wanted = load * motor.lastingTorque_Nm * motor.bestSpeed_rpm * (Math.PI / 30);
  const diameterRatio = (wanted / most) ** 0.2;
  return { curve: scaleFan(curve, { speedRatio, diameterRatio, densityRatio: 1 }), motor };
}

const fans = fc
  .record({
    curve: fc.constantFrom(RADIAL, AXIAL),
    motor: fc.constantFrom(...Object.values(MOTORS)),
    load: real(0.1, 2),
  })
  .map(({ curve, motor, load }) => suited(curve, motor, load));

const torqueOf = (fan: DrivenFan, flow_m3s: number, density_kgm3: number, speed_rpm: number): number => {
  const speedRatio = speed_rpm / fan.curve.input.ratedSpeed_rpm!;
  return fanPower(fan.curve, { flow_m3s, density_kgm3, speedRatio })! / ((speed_rpm * Math.PI) / 30);
};

describe('the speed of a driven fan', () => {
  it('is where the torques meet, whatever the first guess', () => {
    fc.assert(
      fc.property(fans, real(-0.1, 1.2), real(0.9, 1.3), real(0, 1.2), (fan, share, density_kgm3, guess) => {
        const flow_m3s = share * drivenLargestFlow(fan, density_kgm3);
        const free = fan.motor.noLoadSpeed_rpm;
        const speed = drivenSpeed(fan, { flow_m3s, density_kgm3, guess_rpm: guess * free });
        const most = fan.motor.at(0).torque_Nm;
        const off = fan.motor.at(speed).torque_Nm - torqueOf(fan, flow_m3s, density_kgm3, speed);
        expect(Math.abs(off)).toBeLessThan(1e-8 * most);
        const again = brentRoot(
          (n) => fan.motor.at(n).torque_Nm - torqueOf(fan, flow_m3s, density_kgm3, n),
          1e-3 * free,
          free * (1 + 1e-12) + 1e-9,
        );
        expect(speed / again).toBeCloseTo(1, 8);
      }),
      { seed: 81, numRuns: 500 },
    );
  });

  it('falls with density', () => {
    fc.assert(
      fc.property(fans, real(0.05, 0.9), real(0.6, 1.1), (fan, share, density_kgm3) => {
        const flow_m3s = share * drivenLargestFlow(fan, 1.2);
        const at = (density: number) => drivenSpeed(fan, { flow_m3s, density_kgm3: density, guess_rpm: 0 });
        expect(at(density_kgm3 * 1.1)).toBeLessThan(at(density_kgm3));
      }),
      { seed: 82, numRuns: 200 },
    );
  });

  it('rises when a radial inlet is blocked and falls when an axial one is', () => {
    for (const motor of Object.values(MOTORS)) {
      const speeds = (curve: FanCurve) => {
        const fan = suited(curve, motor, 0.8);
        const open = drivenLargestFlow(fan, 1.2);
        return [1, 0.75, 0.5, 0.25, 0].map((share) =>
          drivenSpeed(fan, { flow_m3s: share * open, density_kgm3: 1.2, guess_rpm: 0 }),
        );
      };
      const radial = speeds(RADIAL);
      const axial = speeds(AXIAL);
      expect([...radial].sort((a, b) => a - b)).toEqual(radial);
      expect([...axial].sort((a, b) => b - a)).toEqual(axial);
    }
  });
});

describe('the curve of a driven fan', () => {
  it('has the slopes that small steps show', () => {
    const out = new Float64Array(4);
    const p = (fan: DrivenFan, flow_m3s: number, density_kgm3: number) => {
      drivenTotalPressure(fan, { flow_m3s, density_kgm3, guess_rpm: 0 }, out);
      return out[0]!;
    };
    fc.assert(
      fc.property(fans, real(0.02, 0.98), real(0.9, 1.3), (fan, share, density) => {
        const widest = drivenLargestFlow(fan, density);
        const flow = share * widest;
        const h = 1e-5 * widest;
        const byFlow = (p(fan, flow + h, density) - p(fan, flow - h, density)) / (2 * h);
        const byDensity = (p(fan, flow, density + 1e-5) - p(fan, flow, density - 1e-5)) / 2e-5;
        const pressure = p(fan, flow, density);
        const scale = pressure / widest + Math.abs(byFlow);
        // where the curve through points bends sharply, the mean over the step is not its slope
        expect(Math.abs(out[1]! - byFlow)).toBeLessThan(2e-3 * scale);
        expect(Math.abs(out[2]! - byDensity)).toBeLessThan(2e-3 * (pressure / density + Math.abs(byDensity)));
      }),
      { seed: 83, numRuns: 300 },
    );
  });

  it('is that of its points on a motor that holds their speed', () => {
    // no resistance to speak of: the speed is Kv V whatever the load
    const stiff = brushlessMotor({
      ...ON_BATTERY,
      speedConstant_rpmV: 12000 / 18,
      resistance_ohm: 1e-9,
      supplyResistance_ohm: 0,
      noLoadCurrent_A: 0,
      controllerLoss: 0,
    });
    const out = new Float64Array(4);
    const held = new Float64Array(3);
    for (const flow_m3s of [0, 0.03, 0.1, 0.16]) {
      const state = { flow_m3s, density_kgm3: 1.1 };
      drivenTotalPressure({ curve: RADIAL, motor: stiff }, { ...state, guess_rpm: 0 }, out);
      fanTotalPressure(RADIAL, { ...state, speedRatio: 1 }, held);
      const scales = [3000, 3000 / 0.18, 3000 / 1.2];
      for (const i of [0, 1, 2]) expect(Math.abs(out[i]! - held[i]!) / scales[i]!).toBeLessThan(1e-6);
    }
  });

  it('reaches its last point at drivenLargestFlow, at the speed that drivenSpeedAt gives', () => {
    fc.assert(
      fc.property(fans, real(0.9, 1.3), (fan, density_kgm3) => {
        const last = fan.curve.pressure.x.at(-1)!;
        const flow_m3s = drivenLargestFlow(fan, density_kgm3);
        const speed = drivenSpeed(fan, { flow_m3s, density_kgm3, guess_rpm: 0 });
        expect(drivenSpeedAt(fan, last, density_kgm3) / speed).toBeCloseTo(1, 8);
        expect(((flow_m3s / last) * fan.curve.input.ratedSpeed_rpm!) / speed).toBeCloseTo(1, 8);
      }),
      { seed: 84, numRuns: 200 },
    );
  });

  it('is refused without power or speed', () => {
    const bare = fanCurve({ ...RADIAL.input, ratedSpeed_rpm: null });
    const ask = (curve: FanCurve) => () =>
      drivenSpeed({ curve, motor: MOTORS.brushless }, { flow_m3s: 0, density_kgm3: 1.2, guess_rpm: 0 });
    expect(ask(bare)).toThrow('ratedSpeed_rpm');
    const points = RADIAL.input.points.map(({ flow_m3s, pressure_Pa }) => ({ flow_m3s, pressure_Pa }));
    expect(ask(fanCurve({ ...RADIAL.input, points }))).toThrow('power');
  });
});
