/** Folder of the documents among the files of the edge; nobody asks for them there but the program. */
export const DOCUMENTS = '/documents/'

export const addressOf = (name: string): string => `${DOCUMENTS}${name}.txt`
