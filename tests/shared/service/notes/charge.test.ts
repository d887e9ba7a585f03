import { notesOf } from '../../../support/notes.ts'

notesOf('charge', [
  {
    input: {
      refrigerant: 'R-134a',
      job: 'section-opened',
      sealed: true,
      labelCharge: '2 lb 6 oz',
      hoseSize: '#8',
      length: '9 ft ±0.5 ft',
      phase: 'liquid',
      temperature: '110 °F ±5 °F',
      ambient: '75 °F',
      serviceHoseBore: '1/4 in',
      serviceHoseLength: '72 in',
      serviceHoseHolds: 'liquid',
    },
    warns: '',
    assumes:
      'ambient hoseSize labelCharge sections chargeTolerance scaleTolerance serviceHoseStarts',
    shows:
      'Refrigerant in the section; Mass to add; Refrigerant that stays in the service hose; Mass to set on the scale',
    restsOn: 'shop-thermometers hose-sizes loader-charge shop-scale equation-r-134a',
  },
  {
    input: {
      refrigerant: 'R-134a',
      job: 'section-opened',
      hoseSize: '#8',
      length: '9 ft',
      phase: 'liquid',
      temperature: '110 °F',
    },
    warns: 'label-charge-missing no-band',
    assumes:
      'temperature hoseSize labelCharge sealed sections chargeTolerance scaleTolerance serviceHoseLength',
    shows: 'Refrigerant in the section; Mass to add',
    restsOn: 'shop-thermometers hose-sizes loader-charge shop-scale equation-r-134a',
  },
  {
    input: {
      refrigerant: 'R-410A',
      job: 'section-opened',
      sealed: true,
      labelCharge: '6 lb',
      tubeSize: '3/8',
      length: '10 ft',
      phase: 'liquid',
      temperature: '100 °F',
      recovered: '8 oz',
    },
    warns: 'recovered-more-than-held no-band',
    assumes:
      'temperature recovered tubeSize labelCharge sections chargeTolerance serviceHoseLength',
    shows:
      'Refrigerant in the section; Mass to add; Recovered mass beside what the opened part held',
    restsOn:
      'shop-thermometers shop-scale astm-b280 liquid-line-38c liquid-line-hr loader-charge tolerance-by-size equation-r-32 equation-r-125 mixing-10.1063/1.1649997',
  },
  {
    input: { refrigerant: 'R-134a', job: 'system-opened' },
    warns: 'label-gone',
    assumes: 'parts',
    shows: '',
    restsOn: 'full-charge-ways equation-r-134a',
  },
  {
    input: { refrigerant: 'R-407C', job: 'pressure-lost', labelCharge: '2 kg' },
    warns: 'blend-shifted',
    assumes: 'parts scaleTolerance serviceHoseLength',
    shows: 'Full charge',
    restsOn: 'shop-scale equation-r-32 equation-r-125 equation-r-134a mixing-10.1063/1.1649997',
  },
  {
    input: {
      refrigerant: 'R-134a',
      job: 'couplers-parted',
      labelCharge: '3 lb 8 oz',
      couplingType: 'two-valve',
      parted: ['liquid:18mm/4mm+2mm', 'suction:25mm/5mm+3mm'],
      coldest: '60 °F',
    },
    warns: '',
    assumes:
      'parted.0.mouthDiameter parted.0.partings suctionDry labelCharge sealed airInclusion chargeTolerance',
    shows:
      'Most that can be lost at the liquid coupling; Most that can be lost at the suction coupling',
    restsOn:
      'shop-caliper companion-valves coupler-catalogue loader-charge equation-r-134a iso-14541',
  },
  {
    input: { refrigerant: 'R-134a', job: 'couplers-parted', labelCharge: '3 lb 8 oz' },
    warns: '',
    assumes: 'labelCharge sealed',
    shows: '',
    restsOn: 'equation-r-134a',
  },
  {
    input: {
      refrigerant: 'R-134a',
      job: 'couplers-parted',
      labelCharge: '3 lb 8 oz',
      couplingType: 'two-valve',
      sealed: false,
    },
    warns: '',
    assumes: 'parts scaleTolerance serviceHoseLength',
    shows: 'Full charge',
    restsOn: 'shop-scale equation-r-134a',
  },
  {
    input: {
      refrigerant: 'R-134a',
      job: 'system-opened',
      labelCharge: '3 lb 8 oz',
      oldVolume: '100 mL',
      newVolume: '200 mL',
      phase: 'liquid',
      temperature: '100 °F',
      recovered: '4 lb',
    },
    warns: 'was-overcharged',
    assumes: 'temperature recovered serviceHoseLength',
    shows: 'Change of charge by the part; Full charge',
    restsOn: 'shop-thermometers shop-scale equation-r-134a',
  },
])
