let trials = 0

/** Called once for each time that the refrigerant is followed round. */
export function countTrial(): void {
  trials += 1
}

/** How often that was, in all: the work between two calls is their difference, whatever the machine's speed. */
export const trialsSoFar = (): number => trials
