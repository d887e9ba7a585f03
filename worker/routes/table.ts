import type { Context } from 'hono'
import { accepts } from 'hono/accepts'
import { Hono } from 'hono/tiny'
import { CalcError } from '../../shared/errors.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import type { Answer, Operation } from '../../shared/operation.ts'
import { type TableResult, tableCsv, tableText } from '../../shared/service/table-render.ts'
import { jsonText } from '../../shared/visible.ts'
import { inputFromQuery } from '../query.ts'
import { reply } from '../reply.ts'
import type { Environment } from '../settings.ts'

export const TABLE_FORMATS = ['json', 'csv', 'text'] as const
type Format = (typeof TABLE_FORMATS)[number]

const TYPES: Readonly<Record<Format, string>> = {
  json: 'application/json',
  csv: 'text/csv; charset=utf-8; header=present',
  text: 'text/plain; charset=utf-8',
}

/** `GET /v1/table`: the table by query, as JSON, CSV or text by `format` or by what the caller accepts. */
export function tableRoutes(operations: readonly Operation[]): Hono<Environment> {
  const routes = new Hono<Environment>()
  const table = operations.find(({ name }) => name === 'table')
  if (table) {
    routes.get('/', (context) => {
      const { format: asked, ...query } = context.req.queries()
      const format = formatOf(asked, context)
      const answer = table.run(inputFromQuery(fieldsOf(table), query))
      return reply(rendered(answer, format), TYPES[format])
    })
  }
  return routes
}

function rendered(answer: Answer, format: Format): string {
  if (format === 'json') return jsonText(answer)
  const result = answer.result as TableResult
  return format === 'csv' ? tableCsv(result) : tableText(result)
}

function formatOf(asked: readonly string[] | undefined, context: Context): Format {
  if (asked === undefined) {
    const accepted = accepts(context, {
      header: 'Accept',
      supports: ['application/json', 'text/csv', 'text/plain'],
      default: 'application/json',
    })
    return TABLE_FORMATS.find((format) => TYPES[format].startsWith(accepted)) ?? 'json'
  }
  const format = TABLE_FORMATS.find((entry) => entry === asked.at(-1))
  if (!format) {
    throw new CalcError('bad-input', 'There is no such format of a table.', {
      path: ['format'],
      hint: `There are: ${TABLE_FORMATS.join(', ')}.`,
    })
  }
  return format
}
