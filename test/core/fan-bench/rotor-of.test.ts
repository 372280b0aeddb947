import { describe, expect, it } from 'vitest';
import { rotorResult } from '../../../core/fan-bench/rotor-of.ts';
import { BLADED, NOTHING_KNOWN, rotorDesign, said } from './rotors.ts';

const codes = (...args: Parameters<typeof said>) => said(...args).map(({ code }) => code);
const worked = (...args: Parameters<typeof rotorDesign>) => rotorResult(rotorDesign(...args), NOTHING_KNOWN)!;

describe('the highest speed of a rotor', () => {
  const known = { motorNoLoad_rpm: 9000, highestReading_rpm: 5000 };
  it.each([
    [{}, { speed: 3000 }, known, 4000, 'given'],
    [{ maxSpeed: undefined }, { speed: 3000 }, known, 9000, 'motor without load'],
    [{ maxSpeed: undefined }, { speed: 3000 }, { ...known, motorNoLoad_rpm: null }, 3000, 'design speed'],
    [{ maxSpeed: undefined }, {}, { ...known, motorNoLoad_rpm: null }, 5000, 'highest reading'],
  ] as const)('%j %j %j', (rotor, fan, speeds, speed_rpm, speedFrom) => {
    expect(rotorResult(rotorDesign(rotor, fan), speeds)).toMatchObject({ speed_rpm, speedFrom });
  });
  it('is told to be missing where nothing tells it', () => {
    const design = rotorDesign({ maxSpeed: undefined });
    for (const none of [null, 0, NaN]) {
      const speeds = { motorNoLoad_rpm: none, highestReading_rpm: none };
      expect(rotorResult(design, speeds)).toBeNull();
      expect(codes(design, speeds)).toEqual(['rotor-speed-unknown']);
    }
  });
});

describe('a rotor', () => {
  it('is judged by its own figure of strength where there is one', () => {
    const row = worked();
    const own = worked({ strength: 12e6 });
    expect(row).toMatchObject({ strength_Pa: 40e6, basis: 'from-memory' });
    expect(own).toMatchObject({ strength_Pa: 12e6, basis: 'measured-by-user' });
    expect(own.safetyFactor / row.safetyFactor).toBeCloseTo(0.3, 12);
  });
  it('reaches its limits at its limits', () => {
    const { burstSpeed_rpm, speedLimit_rpm, minimumFactor } = worked();
    expect(worked({ maxSpeed: burstSpeed_rpm }).safetyFactor).toBeCloseTo(1, 12);
    expect(worked({ maxSpeed: speedLimit_rpm }).safetyFactor).toBeCloseTo(minimumFactor, 12);
  });
  it('says nothing more than what is unusual', () => {
    const design = rotorDesign({ blades: 7, cutOffGap: 0.016, rimGap: 0.002 });
    expect(codes(design)).toEqual(['caution-rotor']);
    expect(rotorResult(design, NOTHING_KNOWN)).toMatchObject({ cutOffShare: 0.08, cutOffJudged: 'usual' });
  });
  it('has a cut-off edge only in a radial fan', () => {
    const axial = worked({ cutOffGap: 0.001 }, { type: 'axial' });
    expect(axial).toMatchObject({ cutOffShare: null, cutOffJudged: null });
  });
  it('as a ring is taken to be thin, which is never less than what a wide one bears', () => {
    for (const bore of [0, 0.05, 0.15, 0.199]) {
      expect(worked({ form: 'ring', bore }).stress_Pa).toBeGreaterThan(worked({ bore }).stress_Pa);
    }
  });
  it('with blades bears more, grows more and holds more energy than its disc alone', () => {
    const disc = worked();
    const bladed = worked(BLADED);
    expect(bladed.stress_Pa).toBeGreaterThan(disc.stress_Pa);
    expect(bladed.growth_m).toBeGreaterThan(disc.growth_m);
    expect(bladed.energy_J!).toBeGreaterThan(disc.energy_J!);
    expect(disc.rootStress_Pa).toBeNull();
  });
  it('breaks at the weaker of disc and roots', () => {
    const strong = worked(BLADED);
    const weak = worked({ ...BLADED, bladeRootArea: 5e-6 });
    expect(strong.stressAt).toBe('edge of the bore, around it');
    expect(strong.rootStress_Pa!).toBeLessThan(strong.stress_Pa);
    expect(weak.stressAt).toBe('root of the blades');
    expect(weak.stress_Pa).toBe(weak.rootStress_Pa);
  });
  it('is not there where the fan has none', () => {
    const design = { ...rotorDesign(), rotor: undefined };
    expect(rotorResult(design, NOTHING_KNOWN)).toBeNull();
    expect(said(design)).toEqual([]);
  });
  it('has no energy without a thickness, and null margins without their figures', () => {
    const bare = worked({ thickness: undefined, temperature: undefined });
    expect(bare).toMatchObject({
      energy_J: null,
      heatMargin_K: null,
      rimGapLeft_m: null,
      bladePass_Hz: null,
    });
    expect(worked({ material: 'mild-steel' }).heatMargin_K).toBeNull();
  });
  it.each(['disc', 'ring', 'bladed-disc'])('of form %s has finite figures only', (form) => {
    for (const material of ['pla-across-layers', 'mild-steel']) {
      const result = worked({ ...BLADED, form, material, cutOffGap: 0.01, rimGap: 0.001 });
      for (const value of Object.values(result)) {
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      }
    }
  });
});

describe('what a rotor cannot be', () => {
  it.each([
    [{ material: 'cheese' }, /"cheese" is not in the catalogue/],
    [{ bore: 0.2 }, /bore is not smaller than the wheel/],
    [{ ...BLADED, blades: undefined }, /number of blades is missing/],
    [{ ...BLADED, bladeMass: undefined, thickness: undefined }, /mass of a blade .*thickness of the disc/],
    [{ ...BLADED, bladeRadius: 0.11 }, /lies outside the wheel/],
    [{ ...BLADED, bladeRadius: 0.003 }, /lies inside the bore/],
  ])('%j is named and nothing is worked out', (rotor, words) => {
    const design = rotorDesign(rotor);
    expect(rotorResult(design, NOTHING_KNOWN)).toBeNull();
    const findings = said(design);
    expect(findings.map(({ code }) => code)).toEqual(['rotor-unchecked']);
    expect(findings[0]!.message).toMatch(words);
  });
  it('is left out by name where only a part is missing', () => {
    const [found] = said(rotorDesign({ ...BLADED, bladeRootArea: undefined, temperature: undefined }));
    expect(found!.code).toBe('rotor-unchecked');
    expect(found!.message).toMatch(/roots of the blades.*heat/);
  });
});

describe('findings', () => {
  it('name danger at once, with a guard and standing clear, below the least factor', () => {
    const [first] = said(rotorDesign({ maxSpeed: 12000 }));
    expect(first).toMatchObject({ code: 'rotor-factor-low', severity: 'danger' });
    expect(first!.remedy).toMatch(/guard.*stand clear.*barrier.*licensed/);
  });
  it('turn at the least factor and not before', () => {
    const { speedLimit_rpm } = worked();
    const at = (share: number) => codes(rotorDesign({ maxSpeed: share * speedLimit_rpm }));
    expect(at(0.999)).not.toContain('rotor-factor-low');
    expect(at(1.001)).toEqual(expect.arrayContaining(['rotor-factor-low', 'rotor-over-speed']));
  });
  it('never print a factor that is too small as the least one', () => {
    const { speedLimit_rpm } = worked();
    expect(said(rotorDesign({ maxSpeed: 1.0002 * speedLimit_rpm }))[0]!.message).toContain(
      'safety factor 4.99 ',
    );
  });
  it('see a test that ran faster than the speed that was given', () => {
    const reading = { id: 'r1', kind: 'sealed-suction', suction: 2000, speed: 12000 };
    const design = rotorDesign({}, { readings: [reading] });
    const found = codes(design);
    expect(found).toContain('rotor-over-speed');
    expect(found).not.toContain('rotor-factor-low');
  });
  it('compare heat with the named margin', () => {
    const at = (celsius: number) => codes(rotorDesign({ temperature: celsius + 273.15 }));
    expect(at(50)).not.toContain('rotor-hot');
    expect(at(52)).toContain('rotor-hot');
    expect(at(90)).toContain('rotor-hot');
  });
  it('tell a disc too thick for the theory', () => {
    expect(codes(rotorDesign({ thickness: 0.02 }))).toContain('outside-range');
    expect(codes(rotorDesign({ thickness: 0.0099 }))).not.toContain('outside-range');
  });
  it('speak in the units asked for', () => {
    const hot = rotorDesign({ temperature: 328.15 });
    expect(said(hot)[0]!.message).toContain('°C');
    expect(said(hot, NOTHING_KNOWN, 'us')[0]!.message).toContain('°F');
  });
});
