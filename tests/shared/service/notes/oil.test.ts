import { notesOf } from '../../../support/notes.ts'

notesOf('oil', [
  {
    input: {
      refrigerant: 'R-134a',
      replaced: ['condenser', 'drier'],
      oilTotal: '8 fl oz',
      leak: 'sudden',
      newOil: 'PAG 46',
      existingOil: 'PAG 46',
      compressorDrive: 'open',
    },
    tells:
      'check; pourIn 4.5 fl oz; oil PAG 46; part0 1 fl oz; part1 1 fl oz; addFrom 1 fl oz; addTo 7.85 fl oz; 1 to do',
    warns: '',
    assumes: '',
    computes: [
      'Oil for the condenser: 1 fl oz',
      'Oil for the drier: 1 fl oz',
      'Oil for the sudden leak: 2.5 fl oz',
      'Oil that must go in, with what the new compressor holds of it: 4.5 fl oz',
    ],
    restsOn:
      'car-1995 car-1997 pickup-1994 car-1986-1993 small-car-1997 large-car-1995 off-road-car-2002 utility-sp10 car-1997-vane dump-truck pickup-2002 tractor-oil-type compressor-oils water-limits drier-takes-water',
  },
  {
    input: { refrigerant: 'R-134a', replaced: ['compressor'], compressorDrained: '4 fl oz' },
    tells: 'check; pourIn 4 fl oz; part0 4 fl oz; addFrom 4 fl oz; addTo 5 fl oz; 3 to do',
    warns: 'oil-total-missing drier-not-replaced',
    assumes: 'compressorHolds compressorRule leak',
    computes: [
      'Oil for the compressor: 4 fl oz',
      'Oil that must go in, with what the new compressor holds of it: 4 fl oz',
    ],
    restsOn:
      'car-1995 pickup-2002 car-1986-1993 large-car-1995 off-road-car-2002 car-1997-vane utility-sp10 car-1997 tractor-oil',
  },
  {
    input: { refrigerant: 'R-134a', flushed: true, oilTotal: '9 fl oz', replaced: ['drier'] },
    tells: 'check; pourIn 9 fl oz; part0 9 fl oz; 1 to do',
    warns: '',
    assumes: '',
    computes: [
      'Oil for the whole system: 9 fl oz',
      'Oil that must go in, with what the new compressor holds of it: 9 fl oz',
    ],
    restsOn: '',
  },
  {
    input: {
      refrigerant: 'R-134a',
      replaced: ['condenser'],
      newOil: 'PAG 46',
      existingOil: 'PAG 100',
    },
    tells:
      'check; pourIn 1 fl oz; oil PAG 46; part0 1 fl oz; addFrom 0 fl oz; addTo 1.35 fl oz; 3 to do',
    warns: 'viscosity-differs drive-not-given oil-total-missing drier-not-replaced',
    assumes: 'leak',
    computes: [
      'Oil for the condenser: 1 fl oz',
      'Oil that must go in, with what the new compressor holds of it: 1 fl oz',
    ],
    restsOn:
      'car-1995 car-1997 pickup-1994 car-1986-1993 small-car-1997 large-car-1995 off-road-car-2002 utility-sp10 car-1997-vane dump-truck tractor-oil tractor-oil-type compressor-oils water-limits drier-takes-water',
  },
  {
    input: {
      refrigerant: 'R-1234yf',
      replaced: ['condenser'],
      existingOil: 'SP-10',
      compressorDrive: 'open',
      oilTotal: '1 fl oz',
    },
    tells: 'check; pourIn 1 fl oz; part0 1 fl oz; addFrom 0 fl oz; addTo 1 fl oz; 2 to do',
    warns: 'wrong-oil-inside drier-not-replaced',
    assumes: 'leak',
    computes: [
      'Oil for the condenser: 1 fl oz',
      'Oil that must go in, with what the new compressor holds of it: 1 fl oz',
    ],
    restsOn:
      'car-1995 car-1997 pickup-1994 car-1986-1993 small-car-1997 large-car-1995 off-road-car-2002 utility-sp10 car-1997-vane dump-truck water-limits drier-takes-water',
  },
  {
    input: {
      refrigerant: 'R-134a',
      longHose: 'total-by-charge-seven-cylinder',
      labelCharge: '1.1 kg',
    },
    tells: 'fine; 1 to do',
    warns: '',
    assumes: 'leak',
    computes: ['Oil that must go in, with what the new compressor holds of it: 0 fl oz'],
    restsOn: 'long-hose drop-in-sheet',
  },
  {
    input: {
      refrigerant: 'R-134a',
      replaced: ['compressor', 'drier'],
      compressorDrained: '2.5 fl oz',
      compressorHolds: '7 fl oz',
      oilTotal: '8 fl oz',
    },
    tells:
      'check; pourIn 1 fl oz; part0 2.5 fl oz; part1 1 fl oz; addFrom 2.5 fl oz; addTo 7 fl oz; 1 to do',
    warns: '',
    assumes: 'compressorRule leak',
    computes: [
      'Oil for the compressor: 2.5 fl oz',
      'Oil for the drier: 1 fl oz',
      'Oil that must go in, with what the new compressor holds of it: 3.5 fl oz',
      'Oil to pour in: 1 fl oz',
    ],
    restsOn:
      'car-1995 pickup-2002 car-1986-1993 large-car-1995 off-road-car-2002 car-1997-vane utility-sp10 pickup-1994 dump-truck',
  },
])
