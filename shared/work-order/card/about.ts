import { type Sentence, sentence } from '../../answer/sentence.ts'
import { refrigerant } from '../../refrigerant/index.ts'
import type { WorkOrderInput } from '../input.ts'
import { jobName, plainly, shortened, written } from './lines.ts'

const LONGEST_STORY = 100

const joined = (parts: readonly (string | undefined)[]) =>
  parts.filter((part) => part !== undefined).join(' · ')

/** What is in the machine, where it stands and who works on it, and the job. */
export function aboutOf(input: WorkOrderInput): readonly Sentence[] {
  const { machine, place = {}, person = {}, existingOil, oilTotal, job, story } = input
  const labelCharge = input.labelCharge ?? input.charge?.labelCharge
  const { id, safetyClass } = refrigerant(input.refrigerant).info
  return [
    sentence(
      joined([
        '{refrigerant}',
        labelCharge ? '{labelCharge}' : 'label charge {labelCharge}',
        existingOil && (oilTotal ? '{oil}, {oilTotal}' : '{oil}'),
        machine.meteringDevice?.replace('-', ' '),
        machine.compressorDrive && `${machine.compressorDrive} drive`,
      ]),
      {
        refrigerant: `${id} (${safetyClass.value})`,
        labelCharge: written(labelCharge, 'mass'),
        oil: existingOil,
        oilTotal,
      },
    ),
    sentence(
      joined([
        place.barometer ? '{barometer}' : place.altitude ? '{altitude}' : 'sea level assumed',
        person.name && '{person}',
      ]),
      { altitude: place.altitude, barometer: place.barometer, person: person.name },
    ),
    plainly(joined([jobName(job), story && firstOf(story)]).replace(' · ', ': ')),
  ]
}

const firstOf = (story: string) =>
  shortened(/^.*?\.(?=\s|$)/su.exec(story)?.[0] ?? story, LONGEST_STORY)
