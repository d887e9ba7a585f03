import r12 from '../../data/refrigerants/R-12.json' with { type: 'json' }
import r22 from '../../data/refrigerants/R-22.json' with { type: 'json' }
import r32 from '../../data/refrigerants/R-32.json' with { type: 'json' }
import r134a from '../../data/refrigerants/R-134a.json' with { type: 'json' }
import r152a from '../../data/refrigerants/R-152a.json' with { type: 'json' }
import r290 from '../../data/refrigerants/R-290.json' with { type: 'json' }
import r401A from '../../data/refrigerants/R-401A.json' with { type: 'json' }
import r402A from '../../data/refrigerants/R-402A.json' with { type: 'json' }
import r404A from '../../data/refrigerants/R-404A.json' with { type: 'json' }
import r406A from '../../data/refrigerants/R-406A.json' with { type: 'json' }
import r407A from '../../data/refrigerants/R-407A.json' with { type: 'json' }
import r407C from '../../data/refrigerants/R-407C.json' with { type: 'json' }
import r407F from '../../data/refrigerants/R-407F.json' with { type: 'json' }
import r408A from '../../data/refrigerants/R-408A.json' with { type: 'json' }
import r409A from '../../data/refrigerants/R-409A.json' with { type: 'json' }
import r410A from '../../data/refrigerants/R-410A.json' with { type: 'json' }
import r413A from '../../data/refrigerants/R-413A.json' with { type: 'json' }
import r414B from '../../data/refrigerants/R-414B.json' with { type: 'json' }
import r416A from '../../data/refrigerants/R-416A.json' with { type: 'json' }
import r417A from '../../data/refrigerants/R-417A.json' with { type: 'json' }
import r422B from '../../data/refrigerants/R-422B.json' with { type: 'json' }
import r422D from '../../data/refrigerants/R-422D.json' with { type: 'json' }
import r427A from '../../data/refrigerants/R-427A.json' with { type: 'json' }
import r438A from '../../data/refrigerants/R-438A.json' with { type: 'json' }
import r448A from '../../data/refrigerants/R-448A.json' with { type: 'json' }
import r449A from '../../data/refrigerants/R-449A.json' with { type: 'json' }
import r450A from '../../data/refrigerants/R-450A.json' with { type: 'json' }
import r452A from '../../data/refrigerants/R-452A.json' with { type: 'json' }
import r452B from '../../data/refrigerants/R-452B.json' with { type: 'json' }
import r454A from '../../data/refrigerants/R-454A.json' with { type: 'json' }
import r454B from '../../data/refrigerants/R-454B.json' with { type: 'json' }
import r454C from '../../data/refrigerants/R-454C.json' with { type: 'json' }
import r455A from '../../data/refrigerants/R-455A.json' with { type: 'json' }
import r507A from '../../data/refrigerants/R-507A.json' with { type: 'json' }
import r513A from '../../data/refrigerants/R-513A.json' with { type: 'json' }
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
import r401ACurves from '../../data/saturation/R-401A.json' with { type: 'json' }
import r402ACurves from '../../data/saturation/R-402A.json' with { type: 'json' }
import r404ACurves from '../../data/saturation/R-404A.json' with { type: 'json' }
import r406ACurves from '../../data/saturation/R-406A.json' with { type: 'json' }
import r407ACurves from '../../data/saturation/R-407A.json' with { type: 'json' }
import r407CCurves from '../../data/saturation/R-407C.json' with { type: 'json' }
import r407FCurves from '../../data/saturation/R-407F.json' with { type: 'json' }
import r408ACurves from '../../data/saturation/R-408A.json' with { type: 'json' }
import r409ACurves from '../../data/saturation/R-409A.json' with { type: 'json' }
import r410ACurves from '../../data/saturation/R-410A.json' with { type: 'json' }
import r413ACurves from '../../data/saturation/R-413A.json' with { type: 'json' }
import r414BCurves from '../../data/saturation/R-414B.json' with { type: 'json' }
import r416ACurves from '../../data/saturation/R-416A.json' with { type: 'json' }
import r417ACurves from '../../data/saturation/R-417A.json' with { type: 'json' }
import r422BCurves from '../../data/saturation/R-422B.json' with { type: 'json' }
import r422DCurves from '../../data/saturation/R-422D.json' with { type: 'json' }
import r427ACurves from '../../data/saturation/R-427A.json' with { type: 'json' }
import r438ACurves from '../../data/saturation/R-438A.json' with { type: 'json' }
import r448ACurves from '../../data/saturation/R-448A.json' with { type: 'json' }
import r449ACurves from '../../data/saturation/R-449A.json' with { type: 'json' }
import r450ACurves from '../../data/saturation/R-450A.json' with { type: 'json' }
import r452ACurves from '../../data/saturation/R-452A.json' with { type: 'json' }
import r452BCurves from '../../data/saturation/R-452B.json' with { type: 'json' }
import r454ACurves from '../../data/saturation/R-454A.json' with { type: 'json' }
import r454BCurves from '../../data/saturation/R-454B.json' with { type: 'json' }
import r454CCurves from '../../data/saturation/R-454C.json' with { type: 'json' }
import r455ACurves from '../../data/saturation/R-455A.json' with { type: 'json' }
import r507ACurves from '../../data/saturation/R-507A.json' with { type: 'json' }
import r513ACurves from '../../data/saturation/R-513A.json' with { type: 'json' }
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

/** Every refrigerant a person can pick, in order of designation; `npm run data` writes list and imports. */
export const ENTRIES: readonly Entry[] = [
  entry(r12, r12Curves),
  entry(r22, r22Curves),
  entry(r32, r32Curves),
  entry(r134a, r134aCurves),
  entry(r152a, r152aCurves),
  entry(r290, r290Curves),
  entry(r401A, r401ACurves),
  entry(r402A, r402ACurves),
  entry(r404A, r404ACurves),
  entry(r406A, r406ACurves),
  entry(r407A, r407ACurves),
  entry(r407C, r407CCurves),
  entry(r407F, r407FCurves),
  entry(r408A, r408ACurves),
  entry(r409A, r409ACurves),
  entry(r410A, r410ACurves),
  entry(r413A, r413ACurves),
  entry(r414B, r414BCurves),
  entry(r416A, r416ACurves),
  entry(r417A, r417ACurves),
  entry(r422B, r422BCurves),
  entry(r422D, r422DCurves),
  entry(r427A, r427ACurves),
  entry(r438A, r438ACurves),
  entry(r448A, r448ACurves),
  entry(r449A, r449ACurves),
  entry(r450A, r450ACurves),
  entry(r452A, r452ACurves),
  entry(r452B, r452BCurves),
  entry(r454A, r454ACurves),
  entry(r454B, r454BCurves),
  entry(r454C, r454CCurves),
  entry(r455A, r455ACurves),
  entry(r507A, r507ACurves),
  entry(r513A, r513ACurves),
  entry(r600a, r600aCurves),
  entry(r744, r744Curves),
  entry(r1234yf, r1234yfCurves),
  entry(r1234zeE, r1234zeECurves),
]
