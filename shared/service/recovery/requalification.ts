import { CalcError } from '../../errors.ts'

const MONTH = /^(\d{4})-(0[1-9]|1[0-2])(?:-(?:0[1-9]|[12]\d|3[01]))?$/u

export type Requalification = 'in-date' | 'due-this-month' | 'overdue'

/**
 * Where a cylinder stands against its stamped requalification date.
 *
 * @param stamped - Month of the last requalification (or of manufacture), "YYYY-MM".
 * @param date - Day or month of the work, "YYYY-MM-DD" or "YYYY-MM": there is no clock in here.
 * @param years - Period, years.
 * @throws {CalcError} `bad-input` for text that is no date, or for a stamp after the work.
 */
export function requalification(
  stamped: string,
  date: string,
  years: number,
): { readonly status: Requalification; readonly due: string } {
  const stampedMonth = monthNumber(stamped, 'requalified')
  const workMonth = monthNumber(date, 'date')
  if (stampedMonth > workMonth) {
    throw new CalcError(
      'bad-input',
      `The stamp ${stamped} is later than the day of the work, ${date}.`,
      {
        hint: 'Read the collar again: the stamp gives the month and the year of the last test.',
        path: ['requalified'],
      },
    )
  }
  const dueMonth = stampedMonth + 12 * years
  const status =
    workMonth > dueMonth ? 'overdue' : workMonth === dueMonth ? 'due-this-month' : 'in-date'
  return { status, due: monthText(dueMonth) }
}

function monthNumber(text: string, path: string): number {
  const match = MONTH.exec(text.trim())
  if (!match) {
    throw new CalcError('bad-input', `"${text}" is not a date.`, {
      hint: 'Write year and month, such as 2023-04; for the day of the work also 2026-11-25.',
      path: [path],
    })
  }
  return 12 * Number(match[1]) + Number(match[2]) - 1
}

const monthText = (month: number) =>
  `${Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}`
