import { diagramsOf } from '../../shared/diagram/index.ts'
import { DRAWING, type DrawingOptions } from '../../shared/diagram/options.ts'
import { CalcError } from '../../shared/errors.ts'
import { fieldsOf } from '../../shared/input/index.ts'
import { nearestNames } from '../../shared/nearest.ts'
import type { Operation } from '../../shared/operation.ts'
import { visible } from '../../shared/visible.ts'
import { readOptions } from '../input/options.ts'
import type { Output } from '../output.ts'
import type { Streams } from '../streams.ts'

/** Draws the answer to an input and puts the picture where `--svg` says. */
export type DrawPicture = (input: unknown) => Promise<void>

/**
 * What `--svg` asks for; undefined where it does not.
 *
 * @throws {CalcError} `unknown-name` for a picture that the step has not, `bad-input` for one without a file.
 */
export async function pictureOf(
  operation: Operation,
  given: Output & Record<string, unknown>,
  streams: Streams,
): Promise<DrawPicture | undefined> {
  const { svg: file, diagram: kind } = given
  if (file === undefined) {
    if (kind === undefined) return undefined
    throw new CalcError('bad-input', '--diagram names a picture, and --svg is not given.', {
      hint: `Say where to: --svg ${kind}.svg.`,
    })
  }
  const kinds = diagramsOf(operation.name)
  const entry = kind === undefined ? kinds[0] : kinds.find((each) => each.kind === kind)
  if (!entry) {
    const names = kinds.map((each) => each.kind)
    const near = nearestNames(kind ?? '', names)
    throw new CalcError('unknown-name', `${operation.name} has no picture "${kind}".`, {
      hint: `There are: ${(near.length > 0 ? near : names).join(', ')}.`,
    })
  }
  const options: DrawingOptions = await readOptions(fieldsOf(DRAWING), given, streams)
  return async (input) => {
    const { loadDiagram } = await import('../../shared/diagram/load.ts')
    const text = (await loadDiagram(entry.kind)).draw(input, options)
    if (file === '-') {
      await streams.out(`${text}\n`)
      return
    }
    await streams.writeFile(file, `${text}\n`)
    if (streams.isWatched) streams.err(`Drawn into ${visible(file)}: ${entry.kind}.\n`)
  }
}
