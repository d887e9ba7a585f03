/** Whether a file is YAML by its name. */
export const isYaml = (name: string): boolean => /\.ya?ml$/iu.test(name)
