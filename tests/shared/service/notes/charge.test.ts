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
    tells:
      'check; setOnScale 11.6 ±0.6 oz; missing 9.16 ±0.52 oz; tolerance 1 oz; inHose 2.47 ±0.005 oz; labelCharge 2.38 lb; 2 to do',
    warns: '',
    assumes:
      'ambient hoseSize labelCharge sections chargeTolerance scaleTolerance serviceHoseStarts',
    computes: [
      'Refrigerant in the section: 9.16 ±0.52 oz',
      'Mass to add: 9.16 ±0.52 oz',
      'Refrigerant that stays in the service hose: 2.47 ±0.005 oz',
      'Mass to set on the scale: 11.6 ±0.6 oz',
    ],
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
    tells: 'check; setOnScale 9.16 ±0.027 oz; tolerance 1 oz; 2 to do',
    warns: 'label-charge-missing no-band',
    assumes:
      'temperature hoseSize labelCharge sealed sections chargeTolerance scaleTolerance serviceHoseLength',
    computes: ['Refrigerant in the section: 9.16 ±0.027 oz', 'Mass to add: 9.16 ±0.027 oz'],
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
    tells:
      'check; missing 8 ±0.53 oz; tolerance 1.5 oz; labelCharge 6 lb; recovered 8 ±0.53 oz; 2 to do',
    warns: 'recovered-more-than-held no-band',
    assumes:
      'temperature recovered tubeSize labelCharge sections chargeTolerance serviceHoseLength',
    computes: [
      'Refrigerant in the section: 5.34 ±0.021 oz',
      'Mass to add: 5.34 ±0.021 oz',
      'Recovered mass beside what the opened part held: -2.65 ±0.53 oz',
    ],
    restsOn:
      'shop-thermometers shop-scale astm-b280 liquid-line-38c liquid-line-hr loader-charge tolerance-by-size equation-r-32 equation-r-125 mixing-10.1063/1.1649997',
  },
  {
    input: { refrigerant: 'R-134a', job: 'system-opened' },
    tells: 'check; 3 to do',
    warns: 'label-gone',
    assumes: 'parts',
    computes: [],
    restsOn: 'full-charge-ways equation-r-134a',
  },
  {
    input: { refrigerant: 'R-407C', job: 'pressure-lost', labelCharge: '2 kg' },
    tells: 'check; setOnScale 4.41 lb; 3 to do',
    warns: 'blend-shifted',
    assumes: 'parts scaleTolerance serviceHoseLength',
    computes: ['Full charge: 4.41 lb'],
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
    tells:
      'fine; bound 0.257 oz; tolerance 1 oz; space 5.85 mL; likeParts 12 mL; labelCharge 3.5 lb; 2 to do',
    warns: '',
    assumes:
      'parted.0.mouthDiameter parted.0.partings suctionDry labelCharge sealed airInclusion chargeTolerance',
    computes: [
      'Most that can be lost at the liquid coupling: 0.0669 ±0.0035 oz',
      'Most that can be lost at the suction coupling: 0.172 ±0.007 oz',
    ],
    restsOn:
      'shop-caliper companion-valves coupler-catalogue loader-charge equation-r-134a iso-14541',
  },
  {
    input: { refrigerant: 'R-134a', job: 'couplers-parted', labelCharge: '3 lb 8 oz' },
    tells: 'check; labelCharge 3.5 lb; 3 to do',
    warns: '',
    assumes: 'labelCharge sealed',
    computes: [],
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
    tells: 'check; setOnScale 3.5 lb; 3 to do',
    warns: '',
    assumes: 'parts scaleTolerance serviceHoseLength',
    computes: ['Full charge: 3.5 lb'],
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
    tells:
      'check; setOnScale 3.75 ±0.0008 lb; labelCharge 3.5 lb; change 4.08 ±0.012 oz; recovered 4 ±0.04 lb; 3 to do',
    warns: 'was-overcharged',
    assumes: 'temperature recovered serviceHoseLength',
    computes: ['Change of charge by the part: 4.08 ±0.012 oz', 'Full charge: 3.75 ±0.0008 lb'],
    restsOn: 'shop-thermometers shop-scale equation-r-134a',
  },
  {
    input: {
      refrigerant: 'R-134a',
      job: 'section-opened',
      sealed: true,
      labelCharge: '3 lb',
      volume: '200 mL',
      phase: 'two-phase',
      temperature: '60 °F',
      quality: '30 %',
      makerCorrection: '5 oz',
    },
    tells: 'check; setOnScale 5 oz; tolerance 1 oz; labelCharge 3 lb; 2 to do',
    warns: '',
    assumes: 'temperature labelCharge sections chargeTolerance scaleTolerance serviceHoseLength',
    computes: ['Refrigerant in the section: 0.544 ±0.01 oz', 'Mass to add: 5 oz'],
    restsOn: 'shop-thermometers loader-charge shop-scale equation-r-134a',
  },
  {
    input: {
      refrigerant: 'R-134a',
      job: 'couplers-parted',
      labelCharge: '3 lb',
      hexSize: '1-1/16 in',
      couplingType: 'two-valve',
    },
    tells: 'check; labelCharge 3 lb; 3 to do',
    warns: '',
    assumes: 'hexSize labelCharge sealed',
    computes: [],
    restsOn: 'shop-caliper equation-r-134a',
  },
])
