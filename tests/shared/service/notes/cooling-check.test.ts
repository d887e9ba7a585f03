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
    warns: 'conditions-move-the-high-side',
    assumes:
      'ambient returnAir dischargePressure suctionPressure ventTemperature relativeHumidity altitude altitude',
    shows:
      'Published band, high side; Published band, low side; Condensing above ambient; Dew point of the air going in; Heat taken from the air',
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
    warns: 'no-table-for-refrigerant conditions-move-the-high-side',
    assumes: 'ambient dischargePressure suctionPressure altitude',
    shows: 'Condensing above ambient',
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather blower-and-humidity-1987 equation-r-1234yf pure-equation-uncertainty curve-fit condensing-rise-2006',
  },
  {
    input: { refrigerant: 'R-134a', ambient: '75 °F', staticHigh: '79 psig', staticLow: '60 psig' },
    warns: 'sides-not-equal',
    assumes: 'ambient staticHigh staticLow altitude altitude',
    shows:
      'Published band, high side; Published band, low side; Published band, vent; Pressures at rest',
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather tm-5-3805-291-23-1 large-sedan-2000 sports-car-2010 loader-cooling small-car-1994 static-pressures-2001 equation-r-134a pure-equation-uncertainty curve-fit',
  },
  {
    input: { refrigerant: 'R-134a', ambient: '75 °F', staticHigh: '110 psig' },
    warns: '',
    assumes: 'ambient staticHigh altitude altitude',
    shows:
      'Published band, high side; Published band, low side; Published band, vent; Pressures at rest',
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
    warns: '',
    assumes: 'ambient cutOut cutIn altitude altitude',
    shows: 'Published band, high side; Published band, low side; Published band, vent',
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
    warns: 'high-below-low conditions-move-the-high-side cut-in-below-cut-out',
    assumes: 'ambient dischargePressure suctionPressure cutOut cutIn altitude altitude altitude',
    shows:
      'Published band, high side; Published band, low side; Published band, vent; Condensing above ambient',
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
    warns: 'no-table-fits conditions-move-the-high-side vent-warmer-than-inlet',
    assumes: 'ambient returnAir dischargePressure suctionPressure ventTemperature altitude',
    shows: 'Condensing above ambient',
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
    warns: 'above-cut-out conditions-move-the-high-side',
    assumes: 'ambient dischargePressure suctionPressure altitude altitude',
    shows:
      'Published band, high side; Published band, low side; Published band, vent; Condensing above ambient',
    restsOn:
      'shop-thermometers shop-gauges us-standard-atmosphere-1976 weather pressure-switch-1994 pressure-switch-2000 high-cut-out-1996 tm-5-3805-291-23-1 large-sedan-2000 sports-car-2010 loader-cooling small-car-1994 blower-and-humidity-1987 equation-r-134a pure-equation-uncertainty curve-fit condensing-rise-2006',
  },
])
