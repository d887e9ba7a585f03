import { createRequire } from 'node:module'
import type * as z from 'zod'

const require = createRequire(import.meta.url)

/** zod itself, loaded where a schema is made. */
export const zod = (): typeof z => require('zod')
