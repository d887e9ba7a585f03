import { CalcError } from '../../errors.ts'
import { SWEEPS } from '../../service/simulate/fields.ts'
import { simulate } from '../../service/simulate.ts'
import { defineDiagram } from '../diagram.ts'
import { sentences } from '../scene/drawing.ts'
import { inWords } from '../scene/measure.ts'
import { drawSweep } from './draw-sweep.ts'
import { spoken } from './words.ts'

/** Figures that a sweep shows, those of the gauges first. */
const FIGURES = [
  ['suctionPressure', 'low side'],
  ['dischargePressure', 'high side'],
  ['superheat', 'superheat'],
  ['subcooling', 'subcooling'],
  ['dischargeTemperature', 'discharge line'],
  ['ventTemperature', 'vent'],
  ['capacity', 'cooling'],
  ['power', 'power'],
] as const

const MEASURED = {
  charge: 'Charge, of the label',
  'condenser-air': 'Air through the condenser',
  'evaporator-air': 'Air through the evaporator',
  restriction: 'Pressure lost in the liquid line',
  'valve-opening': 'Opening of the valve',
  'compressor-leak': 'Flow that leaks back',
  air: 'Air in the condenser',
  stroke: 'Stroke',
} as const

/** One fault led over a range: what each gauge makes of it, and where nothing shows. */
export const faultSweep = defineDiagram(simulate, (_, { result }, told, frame) => {
  const { machine, sweep, faults } = result
  if (!sweep) {
    throw new CalcError('missing-input', 'There is no sweep to draw.', {
      path: ['sweep'],
      hint: 'Say which fault is led over a range: charge, condenser-air, restriction and so on.',
    })
  }
  const title = `${machine.name}: ${spoken(sweep.fault)} over a range`
  const rows = sweep.rows.map(({ size, state, moved: _moved, ...figures }) => ({
    size,
    state,
    figures,
  }))
  const here = faults.find(({ setting }) => setting === SWEEPS[sweep.fault])
  const plateau = sweep.plateau && { from: sweep.plateau.from.si, to: sweep.plateau.to.si }
  return drawSweep(
    {
      title,
      under: told,
      says: sentences(
        title,
        told,
        ...rows.map(
          ({ size, state, figures }) =>
            `${inWords(size, frame.system)}: ${spoken(state)}, cooling ${inWords(figures.capacity, frame.system)}`,
        ),
      ),
      measured: MEASURED[sweep.fault],
      rows,
      panels: FIGURES.filter(([name]) =>
        rows.some(({ figures }) => figures[name] !== undefined),
      ).map(([name, text]) => ({ name, text })),
      plateau,
      now: here && {
        size: here.size.si,
        text: `as it is now: ${inWords(here.size, frame.system)}`,
      },
    },
    frame,
  )
})
