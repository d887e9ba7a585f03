/** What page and computing thread have in common, none of it drawn: it is one file for both. */
import '../../shared/about.ts'
import '../../shared/form/index.ts'
import '../../shared/input/index.ts'
import './compute/outcome.ts'
import './operations.ts'
