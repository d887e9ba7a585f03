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
    warns: '',
    assumes: '',
    shows:
      'Oil for the condenser; Oil for the drier; Oil for the sudden leak; Oil that must go in, with what the new compressor holds of it',
    restsOn:
      'car-1995 car-1997 pickup-1994 car-1986-1993 small-car-1997 large-car-1995 off-road-car-2002 utility-sp10 car-1997-vane dump-truck pickup-2002 tractor-oil-type compressor-oils water-limits drier-takes-water',
  },
  {
    input: { refrigerant: 'R-134a', replaced: ['compressor'], compressorDrained: '4 fl oz' },
    warns: 'oil-total-missing drier-not-replaced',
    assumes: 'compressorHolds compressorRule leak',
    shows: 'Oil for the compressor; Oil that must go in, with what the new compressor holds of it',
    restsOn:
      'car-1995 pickup-2002 car-1986-1993 large-car-1995 off-road-car-2002 car-1997-vane utility-sp10 car-1997 tractor-oil',
  },
  {
    input: { refrigerant: 'R-134a', flushed: true, oilTotal: '9 fl oz', replaced: ['drier'] },
    warns: '',
    assumes: '',
    shows:
      'Oil for the whole system; Oil that must go in, with what the new compressor holds of it',
    restsOn: '',
  },
  {
    input: {
      refrigerant: 'R-134a',
      replaced: ['condenser'],
      newOil: 'PAG 46',
      existingOil: 'PAG 100',
    },
    warns: 'viscosity-differs drive-not-given oil-total-missing drier-not-replaced',
    assumes: 'leak',
    shows: 'Oil for the condenser; Oil that must go in, with what the new compressor holds of it',
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
    warns: 'wrong-oil-inside drier-not-replaced',
    assumes: 'leak',
    shows: 'Oil for the condenser; Oil that must go in, with what the new compressor holds of it',
    restsOn:
      'car-1995 car-1997 pickup-1994 car-1986-1993 small-car-1997 large-car-1995 off-road-car-2002 utility-sp10 car-1997-vane dump-truck water-limits drier-takes-water',
  },
])
