import { describe, expect, it } from 'vitest'
import {
  refrigerant,
  saturatedDensity,
  saturationPressure,
} from '../../shared/refrigerant/index.ts'

const PA_PER_PSI = 6894.757_293_168
const SEA_LEVEL_PA = 101_325

const kelvin = (fahrenheit: number) => (fahrenheit + 459.67) / 1.8
const psig = (id: string, fahrenheit: number) =>
  (saturationPressure(refrigerant(id), kelvin(fahrenheit), 'dew') - SEA_LEVEL_PA) / PA_PER_PSI

interface Printed {
  readonly maker: string
  readonly id: string
  /** Half a unit of the last digit, and what the maker's own rounding adds. */
  readonly tolerancePsi: number
  readonly rows: readonly (readonly [fahrenheit: number, psig: number])[]
}

const tables: readonly Printed[] = [
  {
    // AGCO, Challenger TerraGator 3244 service manual, R-134a table (zinref.ru copy, page 113).
    // Printed to 0.1 psi; three of its six cells lie 0.07 to 0.15 below the equation.
    maker: 'a spreader maker',
    id: 'R-134a',
    tolerancePsi: 0.15,
    rows: [
      [0, 6.4],
      [10, 11.9],
      [20, 18.4],
      [32, 27.7],
      [40, 34.9],
      [42, 36.9],
    ],
  },
  {
    // US vehicle service table of 1998 (Chevrolet P12, lemon-manuals.org.ua copy), whole psi.
    // The 110 °F cell is rounded up from 146.4.
    maker: 'a vehicle maker',
    id: 'R-134a',
    tolerancePsi: 0.65,
    rows: [
      [20, 18],
      [30, 26],
      [40, 35],
      [50, 45],
      [60, 57],
      [70, 71],
      [80, 87],
      [90, 104],
      [100, 124],
      [110, 147],
      [120, 171],
      [130, 199],
      [140, 229],
      [150, 263],
      [160, 300],
    ],
  },
  {
    // Carrier 38VTA installation guide, R-22 saturation pressures (manuals.online copy).
    maker: 'a split-system maker',
    id: 'R-22',
    tolerancePsi: 0.1,
    rows: [
      [35, 61.5],
      [37, 64.2],
      [39, 67.1],
      [41, 70],
      [43, 73],
      [45, 76],
      [47, 79.2],
      [49, 82.4],
      [51, 85.7],
    ],
  },
]

describe.each(tables)('$id against the printed table of $maker', (table) => {
  it.each(table.rows)('%d °F is %d psig', (fahrenheit, printed) => {
    expect(Math.abs(psig(table.id, fahrenheit) - printed)).toBeLessThan(table.tolerancePsi)
  })
})

describe('printed liquid density', () => {
  it('R-1234yf has 1106 kg/m³ at 21.1 °C', () => {
    // cold.world, R1234yf Refrigerant, technical specifications (2017), whole kg/m³, from an
    // equation older than the one used here: 0.2 %.
    const density = saturatedDensity(refrigerant('R-1234yf'), 273.15 + 21.1, 'liquid')
    expect(Math.abs(density / 1106 - 1)).toBeLessThan(2e-3)
  })
})
