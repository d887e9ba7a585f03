import r12 from '../../data/refrigerants/R-12.json' with { type: 'json' }
import r22 from '../../data/refrigerants/R-22.json' with { type: 'json' }
import r32 from '../../data/refrigerants/R-32.json' with { type: 'json' }
import r134a from '../../data/refrigerants/R-134a.json' with { type: 'json' }
import r152a from '../../data/refrigerants/R-152a.json' with { type: 'json' }
import r290 from '../../data/refrigerants/R-290.json' with { type: 'json' }
import r600a from '../../data/refrigerants/R-600a.json' with { type: 'json' }
import r744 from '../../data/refrigerants/R-744.json' with { type: 'json' }
import r1234yf from '../../data/refrigerants/R-1234yf.json' with { type: 'json' }
import r1234zeE from '../../data/refrigerants/R-1234ze(E).json' with { type: 'json' }
import r12Curves from '../../data/saturation/R-12.json' with { type: 'json' }
import r22Curves from '../../data/saturation/R-22.json' with { type: 'json' }
import r32Curves from '../../data/saturation/R-32.json' with { type: 'json' }
import r134aCurves from '../../data/saturation/R-134a.json' with { type: 'json' }
import r152aCurves from '../../data/saturation/R-152a.json' with { type: 'json' }
import r290Curves from '../../data/saturation/R-290.json' with { type: 'json' }
import r600aCurves from '../../data/saturation/R-600a.json' with { type: 'json' }
import r744Curves from '../../data/saturation/R-744.json' with { type: 'json' }
import r1234yfCurves from '../../data/saturation/R-1234yf.json' with { type: 'json' }
import r1234zeECurves from '../../data/saturation/R-1234ze(E).json' with { type: 'json' }
import type { CurveFile } from '../substance/curve.ts'
import type { RefrigerantInfo } from './info.ts'

/** A refrigerant as stored: what it is, and its fitted saturation curves. */
export interface Entry {
  readonly info: RefrigerantInfo
  readonly file: CurveFile
}

// JSON modules widen literals to string; tests/data checks every file against the strict schema.
const entry = (info: unknown, file: CurveFile): Entry => ({ info: info as RefrigerantInfo, file })

/** Every refrigerant a person can pick, in order of designation. */
export const ENTRIES: readonly Entry[] = [
  entry(r12, r12Curves),
  entry(r22, r22Curves),
  entry(r32, r32Curves),
  entry(r134a, r134aCurves),
  entry(r152a, r152aCurves),
  entry(r290, r290Curves),
  entry(r600a, r600aCurves),
  entry(r744, r744Curves),
  entry(r1234yf, r1234yfCurves),
  entry(r1234zeE, r1234zeECurves),
]
