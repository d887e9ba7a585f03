import { describe, expect, it } from 'vitest'
import { pickRefrigerant } from '../../../../shared/fields/index.ts'
import { kindsOf } from '../../../../shared/service/diagnose/input/kinds.ts'
import { diagnose } from '../../../../shared/service/diagnose.ts'
import { refusalOf } from '../../../support/refusal.ts'

const kinds = (refrigerant: string, more: object = {}) => {
  const given = diagnose.parse({ refrigerant, ...more })
  const { knowledge, presets, modelRefrigerant } = kindsOf(given, pickRefrigerant(refrigerant))
  return {
    knowledge,
    modelRefrigerant,
    kinds: presets.map(({ preset }) => preset.architecture).join(' '),
  }
}
const valve = { machine: 'off-road', meteringDevice: 'expansion-valve' }

describe('the kinds of machine that what was said leaves open', () => {
  it.each<readonly [object, string, string]>([
    [{}, 'unknown', 'valve-receiver valve orifice-accumulator valve-receiver-variable'],
    [valve, 'unknown', 'valve-receiver valve valve-receiver-variable'],
    [{ ...valve, liquidStore: 'none' }, 'kind', 'valve'],
    [{ ...valve, liquidStore: 'receiver', displacement: 'fixed' }, 'kind', 'valve-receiver'],
    [{ ...valve, displacement: 'variable' }, 'kind', 'valve-receiver-variable'],
    [{ meteringDevice: 'electronic-valve', liquidStore: 'none', machine: 'bus' }, 'kind', 'valve'],
    [{ machine: 'bus', meteringDevice: 'orifice-tube' }, 'kind', 'orifice-accumulator'],
    [{ architecture: 'orifice-accumulator' }, 'kind', 'orifice-accumulator'],
  ])('R-134a, %j: %s, %s', (more, knowledge, architectures) => {
    const found = kinds('R-134a', { machine: 'road-vehicle', ...more })
    expect({ ...found, kinds: found.kinds.split(' ').sort() }).toEqual({
      ...{ knowledge, modelRefrigerant: 'R-134a' },
      kinds: architectures.split(' ').sort(),
    })
  })

  it('a machine of the model by name is known; with readings from when it was sound, by those', () => {
    expect(kinds('R-134a', { modelMachine: 'van' })).toEqual({
      ...{ knowledge: 'model', modelRefrigerant: 'R-134a', kinds: 'valve' },
    })
    const baseline = { suctionPressure: '30 psig', ambient: '80 °F' }
    expect(kinds('R-134a', { modelMachine: 'van', baseline }).knowledge).toBe('baseline')
    expect(kinds('R-134a', { ...valve, liquidStore: 'none', baseline }).knowledge).toBe('baseline')
    expect(kinds('R-134a', { ...valve, baseline }).knowledge).toBe('unknown')
  })

  it('of a refrigerant that the model has no machine with, one of like pressures', () => {
    const stationary = { machine: 'stationary', meteringDevice: 'expansion-valve' }
    expect(kinds('R-32', stationary).modelRefrigerant).toBe('R-410A')
    expect(kinds('R-407C', stationary).modelRefrigerant).toBe('R-134a')
    // No vehicle of the model runs with R-410A.
    expect(kinds('R-32', valve).modelRefrigerant).toBe('R-134a')
    expect(kinds('R-12', valve).modelRefrigerant).toBe('R-134a')
  })

  it('none of R-744, and none that contradicts itself', () => {
    expect(refusalOf(() => kinds('R-744'))).toMatchObject({
      code: 'refused',
      path: ['refrigerant'],
    })
    const tube = {
      machine: 'road-vehicle',
      meteringDevice: 'orifice-tube',
      liquidStore: 'receiver',
    }
    expect(refusalOf(() => kinds('R-134a', tube))).toMatchObject({
      ...{ code: 'bad-input', path: ['liquidStore'] },
    })
  })
})

describe('a pressure at rest that cannot be compared', () => {
  it('is warned of, and the readings are weighed without it', () => {
    const readings = {
      ...{ refrigerant: 'R-134a', architecture: 'valve', ambient: '90 °F', units: 'us' },
      ...{ suctionPressure: '30 psig', dischargePressure: '230 psig' },
    }
    const hot = { systemPressure: '80 psig', systemTemperature: '215 °F' }
    const { warnings, result } = diagnose.run({ ...readings, ...hot })
    expect(warnings.map(({ code }) => code)).toContain('rest-not-compared')
    expect(result.named).toEqual(diagnose.run(readings).result.named)
    const fine = { systemPressure: '80 psig', systemTemperature: '76 °F' }
    expect(diagnose.run({ ...readings, ...fine }).warnings.map(({ code }) => code)).not.toContain(
      'rest-not-compared',
    )
  })
})
