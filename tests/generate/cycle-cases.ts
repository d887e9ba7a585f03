import { type Preset, presets } from '../../shared/cycle/machines.ts'
import { type Case, type Faults, NO_DEVIATIONS, NO_FAULTS } from '../../shared/cycle/types.ts'
import { randomFrom } from '../../shared/random.ts'

/**
 * A case anywhere in the weather and the state of repair that a machine is met in: ambient 15 to
 * 48 °C, return air 15 to 42 °C at 20 to 80 %, both fans from 40 %, charge from 40 to 160 % of the
 * label's, and now and then a restriction, a leaking compressor, air, a stuck valve or stroke.
 */
export function randomCase({ machine, nominal }: Preset, random: () => number): Case {
  const within = (from: number, to: number) => from + (to - from) * random()
  const sometimes = (share: number, value: () => number, else_: number) =>
    random() < share ? value() : else_
  const vehicle = nominal.speed < 40
  const { stroke } = machine.compressor
  const faults: Faults = {
    ...NO_FAULTS,
    charge: within(0.4, 1.6),
    condenserAir: within(0.4, 1),
    evaporatorAir: within(0.4, 1),
    restrictionPa: sometimes(0.3, () => within(0, 8e5), 0),
    leakage: sometimes(0.3, () => within(0, 0.4), 0),
    airPa: sometimes(0.3, () => within(0, 2e5), 0),
  }
  const valveStuck = random() < 0.15 ? within(0.05, 1) : undefined
  const strokeStuck = random() < 0.15 ? within(stroke?.minimum ?? 0, 1) : undefined
  return {
    machine,
    deviations: NO_DEVIATIONS,
    conditions: {
      ...nominal,
      ambientK: within(288.15, 321.15),
      returnAirK: within(288.15, 315.15),
      returnHumidity: within(0.2, 0.8),
      // 700 to 3500 revolutions of the engine, on a pulley of 1.2
      speed: vehicle ? within(14, 70) : nominal.speed,
    },
    faults: {
      ...faults,
      ...(machine.device.kind === 'valve' && valveStuck !== undefined ? { valveStuck } : {}),
      ...(stroke !== undefined && strokeStuck !== undefined ? { strokeStuck } : {}),
    },
  }
}

/** So many cases of each model machine, always the same. */
export function* cases(each: number, seed = 1): Generator<{ preset: Preset; case: Case }> {
  const random = randomFrom(seed)
  for (const preset of presets()) {
    for (let count = 0; count < each; count += 1) {
      yield { preset, case: randomCase(preset, random) }
    }
  }
}
