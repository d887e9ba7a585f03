import { Blank } from '../../answer/sentence.ts'
import { type Build, onPaper } from './built.ts'
import { task } from './lines.ts'

/** Couplings come apart under charge: the hiss, the caps, and what bounds the loss. */
export const part: Build = ({ couplings = [], charge }) => {
  const makers = charge?.makerCorrection !== undefined || charge?.spillVolume !== undefined
  const known =
    makers ||
    (couplings.length > 0 &&
      couplings.every(({ spillVolume, mouthDiameter }) => spillVolume ?? mouthDiameter))
  const blank = new Blank('length')
  return onPaper(
    task('fixed-half'),
    task('hiss'),
    task('capped'),
    ...(known ? [] : [task('caliper', { mouth: blank, first: blank, second: blank })]),
  )
}

export const cab: Build = () => onPaper(task('all-off'), task('on-blocks'))

export const rejoin: Build = () => onPaper(task('faces'), task('by-hand'))
