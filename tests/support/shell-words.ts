/** The words of a command line as a shell hands them over: quotation marks hold words together. */
export function shellWords(line: string): readonly string[] {
  return [...line.matchAll(/(?:[^\s"']+|"[^"]*"|'[^']*')+/gu)].map(([word]) =>
    word.replace(
      /"([^"]*)"|'([^']*)'/gu,
      (_, double?: string, single?: string) => double ?? single ?? '',
    ),
  )
}
