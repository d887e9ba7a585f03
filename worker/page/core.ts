/** What page and computing thread have in common, none of it drawn: it is one file for both. */
import '../../shared/form/index.ts'
import '../../shared/input/index.ts'
import './operations.ts'
