import { notesOf } from '../../../support/notes.ts'

notesOf('contamination', [
  {
    input: { refrigerant: 'R-134a', pressure: '108 psig', temperature: '80 °F' },
    warns: '',
    assumes: 'altitude pressure pressure temperature',
    shows: 'Distance from saturation; Share of R-290 that reads so',
    restsOn:
      'equation-r-134a mixing-10.1021/acs.jced.6b00257 mixing-10.1063/1.1649997 usual-suspects mixture-reading partial-pressures contamination-practice tm-5-3810-307 j2099-identifier shop-gauges shop-thermometers pure-equation-uncertainty curve-fit us-standard-atmosphere-1976 weather',
  },
  {
    input: {
      refrigerant: 'R-134a',
      pressure: '100 psig',
      temperature: '80 °F',
      suspects: ['R-12'],
    },
    warns: 'several-shares-fit',
    assumes: 'altitude pressure pressure temperature',
    shows: 'Distance from saturation; Share of R-12 that reads so',
    restsOn:
      'equation-r-134a mixing-10.1021/acs.jced.6b00257 usual-suspects mixture-reading partial-pressures contamination-practice tm-5-3810-307 j2099-identifier shop-gauges shop-thermometers pure-equation-uncertainty curve-fit us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-134a', pressure: '60 psig', temperature: '75 °F' },
    warns: '',
    assumes: 'altitude pressure pressure temperature',
    shows: 'Distance from saturation; Share of R-600a that reads so',
    restsOn:
      'equation-r-134a mixing-10.1021/acs.jced.6b00257 usual-suspects mixture-reading contamination-practice j2099-identifier shop-gauges shop-thermometers pure-equation-uncertainty curve-fit us-standard-atmosphere-1976 weather',
  },
  {
    input: { refrigerant: 'R-407C', pressure: '150 psig', temperature: '77 °F' },
    warns: '',
    assumes: 'altitude pressure pressure temperature',
    shows: 'Distance from saturation',
    restsOn:
      'equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997 usual-suspects mixture-reading j2099-identifier shop-gauges shop-thermometers lemmon-jacobsen-2004-uncertainty curve-fit us-standard-atmosphere-1976 weather',
  },
])
