import {
  type Budget,
  type Quantity,
  temperature,
  temperatureDifference,
} from '../../quantity/index.ts'

/** A figure as it was computed and as it is shown: one quantity, however often it stands in an answer. */
export type Shown<K extends 'temperature' | 'temperatureDifference'> = Budget & {
  readonly shown: Quantity<K>
}

export type Degree = Shown<'temperature'>
export type Difference = Shown<'temperatureDifference'>

export const degree = ({ si, plusMinus, parts }: Budget): Degree => ({
  si,
  plusMinus,
  parts,
  shown: temperature(si, plusMinus),
})

export const difference = ({ si, plusMinus, parts }: Budget): Difference => ({
  si,
  plusMinus,
  parts,
  shown: temperatureDifference(si, plusMinus),
})
