import { notesOf } from '../../../support/notes.ts'

notesOf('cooling-check', [
  {
    input: {
      refrigerant: 'R-134a',
      machine: 'off-road',
      engine: 'about-1000-rpm',
      ambient: '88 °F',
      relativeHumidity: '45 %',
      ventTemperature: '52 °F',
      suctionPressure: '24 psig',
      dischargePressure: '205 psig',
    },
    tells:
      'fine; high 205 ±4 psig; low 24 ±1 psig; vent 52 ±1 °F; condensing 44.1 ±1.7 °F; evaporating 27.4 ±1.4 °F; drop 36 ±1.5 °F; 1 to do',
    warns: 'conditions-move-the-high-side',
    assumes:
      'ambient returnAir dischargePressure suctionPressure ventTemperature relativeHumidity altitude altitude',
    computes: [
      'Published band, high side: 150 psig (1030 kPa g) to 280 psig (1930 kPa g)',
      'Published band, low side: 14 psig (96.5 kPa g) to 30 psig (207 kPa g)',
      'Condensing above ambient: 44.1 ±1.7 °F',
      'Dew point of the air going in: 64 ±4 °F',
      'Heat taken from the air: 13.8 ±1.9 Btu/lb',
    ],
    restsOn:
      'shop-thermometers shop-gauges shop-hygrometer us-standard-atmosphere-1976 weather tm-5-3805-291-23-1 large-sedan-2000 sports-car-2010 loader-cooling small-car-1994 blower-and-humidity-1987 equation-r-134a pure-equation-uncertainty curve-fit condensing-rise-2006 ashrae-psychrometrics',
  },
  {
    input: {
      refrigerant: 'R-1234yf',
      ambient: '88 °F',
      suctionPressure: '24 psig',
      dischargePressure: '205 psig',
    },
    tells:
      'check; high 205 ±4 psig; low 24 ±1 psig; condensing 45.6 ±1.8 °F; evaporating 23.2 ±1.5 °F; 2 to do',
    warns: 'no-table-for-refrigerant conditions-move-the-high-side',
    assumes: 'ambient dischargePressure suctionPressure altitude',
    computes: ['Condensing above ambient: 45.6 ±1.8 °F'],
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather blower-and-humidity-1987 equation-r-1234yf pure-equation-uncertainty curve-fit condensing-rise-2006',
  },
  {
    input: { refrigerant: 'R-134a', ambient: '75 °F', staticHigh: '79 psig', staticLow: '60 psig' },
    tells:
      'check; rest 60 ±1 psig; air 75 ±1 °F; saturation 78.7 psig; off -18.7 ±2 psi; least 70 psig; 2 to do',
    warns: 'sides-not-equal',
    assumes: 'ambient staticHigh staticLow altitude altitude',
    computes: [
      'Published band, high side: 130 psig (896 kPa g) to 280 psig (1930 kPa g)',
      'Published band, low side: 10 psig (68.9 kPa g) to 50 psig (345 kPa g)',
      'Published band, vent: 43.5 °F (6.4 °C) to 43.5 °F (6.4 °C)',
      'Pressures at rest: below; least 70 psig (483 kPa g)',
    ],
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather tm-5-3805-291-23-1 large-sedan-2000 sports-car-2010 loader-cooling small-car-1994 static-pressures-2001 equation-r-134a pure-equation-uncertainty curve-fit',
  },
  {
    input: { refrigerant: 'R-134a', ambient: '75 °F', staticHigh: '110 psig' },
    tells:
      'check; rest 110 ±1 psig; air 75 ±1 °F; saturation 78.7 psig; off 31.3 ±2 psi; least 70 psig; 2 to do',
    warns: '',
    assumes: 'ambient staticHigh altitude altitude',
    computes: [
      'Published band, high side: 130 psig (896 kPa g) to 280 psig (1930 kPa g)',
      'Published band, low side: 10 psig (68.9 kPa g) to 50 psig (345 kPa g)',
      'Published band, vent: 43.5 °F (6.4 °C) to 43.5 °F (6.4 °C)',
      'Pressures at rest: above; least 70 psig (483 kPa g)',
    ],
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather tm-5-3805-291-23-1 large-sedan-2000 sports-car-2010 loader-cooling small-car-1994 static-pressures-2001 equation-r-134a pure-equation-uncertainty curve-fit',
  },
  {
    input: {
      refrigerant: 'R-134a',
      ambient: '80 °F',
      cutOut: '25 psig',
      cutIn: '46 psig',
      cyclesPerMinute: 3,
    },
    tells: 'information; cutOut 25 ±1 psig; cutIn 46 ±1 psig; cycles 3; 1 to do',
    warns: '',
    assumes: 'ambient cutOut cutIn altitude altitude',
    computes: [
      'Published band, high side: 140 psig (965 kPa g) to 280 psig (1930 kPa g)',
      'Published band, low side: 10 psig (68.9 kPa g) to 50 psig (345 kPa g)',
      'Published band, vent: 45 °F (7.2 °C) to 61 °F (16.1 °C)',
    ],
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather tm-5-3805-291-23-1 large-sedan-2000 sports-car-2010 loader-cooling small-car-1994 cycling-switch-1993 cycling-clutch-1987 pressure-switches-1996 clutch-cycles-1983 fast-cycling',
  },
  {
    input: {
      refrigerant: 'R-134a',
      ambient: '80 °F',
      cutOut: '46 psig',
      cutIn: '25 psig',
      suctionPressure: '200 psig',
      dischargePressure: '40 psig',
    },
    tells:
      'check; high 40 ±4 psig; low 200 ±1 psig; condensing -35.1 ±4.1 °F; evaporating 130 ±0.5 °F; 1 to do',
    warns: 'high-below-low conditions-move-the-high-side cut-in-below-cut-out',
    assumes: 'ambient dischargePressure suctionPressure cutOut cutIn altitude altitude altitude',
    computes: [
      'Published band, high side: 140 psig (965 kPa g) to 280 psig (1930 kPa g)',
      'Published band, low side: 10 psig (68.9 kPa g) to 50 psig (345 kPa g)',
      'Published band, vent: 45 °F (7.2 °C) to 61 °F (16.1 °C)',
      'Condensing above ambient: -35.1 ±4.1 °F',
    ],
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather tm-5-3805-291-23-1 large-sedan-2000 sports-car-2010 loader-cooling small-car-1994 blower-and-humidity-1987 equation-r-134a pure-equation-uncertainty curve-fit condensing-rise-2006 cycling-switch-1993 cycling-clutch-1987 pressure-switches-1996',
  },
  {
    input: {
      refrigerant: 'R-134a',
      ambient: '120 °F',
      suctionPressure: '24 psig',
      dischargePressure: '205 psig',
      returnAir: '80 °F',
      ventTemperature: '90 °F',
    },
    tells:
      'check; high 205 ±4 psig; low 24 ±1 psig; vent 90 ±1 °F; condensing 12.1 ±1.7 °F; evaporating 27.4 ±1.4 °F; drop -10 ±1.5 °F; 2 to do',
    warns: 'no-table-fits conditions-move-the-high-side vent-warmer-than-inlet',
    assumes: 'ambient returnAir dischargePressure suctionPressure ventTemperature altitude',
    computes: ['Condensing above ambient: 12.1 ±1.7 °F'],
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather tm-5-3805-291-23-1 large-sedan-2000 sports-car-2010 loader-cooling small-car-1994 blower-and-humidity-1987 equation-r-134a pure-equation-uncertainty curve-fit condensing-rise-2006',
  },
  {
    input: {
      refrigerant: 'R-134a',
      ambient: '90 °F',
      suctionPressure: '30 psig',
      dischargePressure: '560 psig',
    },
    tells:
      'stop; danger 560 psig; cutOut 435 psig; condensing 122 ±1.3 °F; evaporating 34.6 ±1.3 °F; 3 to do',
    warns: 'above-cut-out conditions-move-the-high-side',
    assumes: 'ambient dischargePressure suctionPressure altitude altitude',
    computes: [
      'Published band, high side: 150 psig (1030 kPa g) to 280 psig (1930 kPa g)',
      'Published band, low side: 15 psig (103 kPa g) to 50 psig (345 kPa g)',
      'Published band, vent: 50 °F (10 °C) to 50 °F (10 °C)',
      'Condensing above ambient: 122 ±1.3 °F',
    ],
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather pressure-switch-1994 pressure-switch-2000 high-cut-out-1996 tm-5-3805-291-23-1 large-sedan-2000 sports-car-2010 loader-cooling small-car-1994 blower-and-humidity-1987 equation-r-134a pure-equation-uncertainty curve-fit condensing-rise-2006',
  },
])
