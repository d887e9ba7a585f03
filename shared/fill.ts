/** Puts words and figures into a sentence from data: `fill('within {band}', { band: '3 °F' })`. */
export function fill(sentence: string, words: Readonly<Record<string, string>>): string {
  return sentence.replace(/\{(\w+)\}/gu, (slot, name: string) => {
    const word = words[name]
    if (word === undefined) throw new Error(`Nothing fills ${slot} in: ${sentence}`)
    return word
  })
}
