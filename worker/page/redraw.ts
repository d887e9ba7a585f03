/** The page is drawn anew as a whole; lit-html changes only what is another. */
let draw: () => void = () => {}

export function drawnBy(work: () => void): void {
  draw = work
}

export const redraw = (): void => draw()
