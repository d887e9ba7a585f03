import type { Answer } from '../../shared/operation.ts'
import type { TableResult } from '../../shared/service/table-render.ts'
import type { WorkOrderAnswer } from '../../shared/work-order/sheet.ts'
import type { ExitStatus } from '../exit.ts'
import type { ResultLines } from '../render/answer.ts'
import type { Ask } from '../streams.ts'

/** What it takes to go on from question to question at a terminal. */
export interface Play {
  readonly ask: Ask
  readonly options: Readonly<Record<string, unknown>>
  answer(input: unknown): Answer
  write(answer: Answer): Promise<ExitStatus>
}

/** What a command has of its own, besides what every operation gets from its schema. */
export interface Own {
  /** Renders the whole answer as Markdown. */
  readonly markdown?: () => Promise<(answer: Answer) => string>
  /** Renders the customer's copy as Markdown. */
  readonly customerMarkdown?: () => Promise<(answer: Answer) => string>
  /** Renders a single answer as CSV. */
  readonly csv?: () => Promise<(answer: Answer) => string>
  /** Renders the result for people. */
  readonly resultLines?: () => Promise<ResultLines>
  /** Rows that belong on the screen. */
  readonly rowLines?: () => Promise<ResultLines>
  /** Goes on from question to question where somebody sits at a terminal and the options leave room. */
  readonly play?: () => Promise<{
    isOpen(options: Readonly<Record<string, unknown>>): boolean
    play(play: Play): Promise<ExitStatus>
  }>
  /** Renders the whole answer for people, where the step has a form of its own. */
  readonly answerLines?: () => Promise<ResultLines>
}

/** Loaded only when the command runs and asks for it. */
export const own: Readonly<Record<string, Own>> = {
  readings: {
    resultLines: async () => (await import('../render/readings.ts')).readingsLines,
  },
  saturation: {
    resultLines: async () => (await import('../render/saturation.ts')).saturationLines,
  },
  table: {
    csv: async () => {
      const { tableCsv } = await import('../../shared/service/table-render.ts')
      return ({ result }) => tableCsv(result as TableResult)
    },
    resultLines: async () => (await import('../render/table.ts')).tableLines,
    rowLines: async () => (await import('../render/table.ts')).firstTableLines,
  },
  lesson: {
    play: async () => import('./play-lesson.ts'),
    resultLines: async () => (await import('../render/lesson.ts')).lessonLines,
    rowLines: async () => (await import('../render/lesson.ts')).screenLesson,
  },
  simulate: {
    resultLines: async () => (await import('../render/simulate.ts')).simulateLines,
    rowLines: async () => (await import('../render/simulate.ts')).screenSweep,
  },
  'work-order': {
    markdown: async () => {
      const { workOrderMarkdown } = await import('../../shared/work-order/markdown.ts')
      return (answer) => workOrderMarkdown(answer as WorkOrderAnswer)
    },
    customerMarkdown: async () => {
      const { customerMarkdown } = await import('../../shared/work-order/markdown.ts')
      return (answer) => customerMarkdown(answer as WorkOrderAnswer)
    },
    answerLines: async () => (await import('../render/work-order.ts')).workOrderLines,
  },
}
